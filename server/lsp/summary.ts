import type { Summary } from '../protocol/summary.js';
import type { Seen } from './feature.js';
import { headlinesOf } from './headlines.js';

/** Headline results of the first house of a document, for the page beside it; null when it holds none. */
export function summary({ analysis, houses }: Seen): Summary | null {
  const [house] = analysis.houses;
  if (!house) return null;
  const count = (severity: string) =>
    analysis.findings.filter(f => f.uri === analysis.uri && f.severity === severity).length;
  return {
    uri: houses.shown(analysis.uri),
    stages: house.views.map(view => {
      const block = view.built.declared ?? house.built.declared;
      return {
        name: view.name,
        title: block.title ?? block.name,
        results: headlinesOf(view, house, analysis.settings.units, houses.fault),
      };
    }),
    findings: { errors: count('error'), warnings: count('warning'), infos: count('info') },
  };
}
