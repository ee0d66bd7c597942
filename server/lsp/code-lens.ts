import type { CodeLens } from 'vscode-languageserver';
import type { Seen } from './feature.js';
import { headlinesOf } from './headlines.js';

/** A line of headline results above the house and each of its stages; what is withheld is left out. */
export function codeLenses({ analysis, lines, houses }: Seen): CodeLens[] {
  return analysis.houses.flatMap(house =>
    house.views.flatMap(view => {
      const block = view.built.declared ?? house.built.declared;
      const shown = headlinesOf(view, house, analysis.settings.units, houses.fault).filter(
        h => h.withheld === undefined,
      );
      if (!shown.length) return [];
      const title = shown.map(h => `${worded(h.name)} ${h.text}${h.move && ` (${h.move})`}`).join('  ·  ');
      return [{ range: lines.range(block.head), command: { title, command: '' } }];
    }),
  );
}

/** `heating.design-load` as a reader says it: the domain is left out where the rest speaks for itself. */
function worded(name: string): string {
  const [domain, ...rest] = name.split('.');
  const short = rest.join(' ').replaceAll('-', ' ');
  return short.includes(' ') ? short : `${domain} ${short}`;
}
