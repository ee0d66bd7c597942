import { namedResults, type Analysis, type AnalyzedHouse, type StageView } from '../../language/index.js';
import { print, type PrintOptions, type UnitSystem } from '../../language/units/index.js';

/** What a reader of a pull request sees change: findings in the order of the text, and results stage by stage. */
export interface Baseline {
  readonly findings: readonly string[];
  readonly houses: Readonly<Record<string, Readonly<Record<string, Results>>>>;
}
type Results = Readonly<Record<string, string>>;

export function baselineOf(analysis: Analysis): Baseline {
  return {
    findings: analysis.findings.map(f => {
      const line = lineOf(analysis, f.uri, f.from);
      const stages = f.stages.length ? ` [${f.stages.join(', ')}]` : '';
      return `${line} ${f.severity} ${f.code}${stages}: ${f.message}`;
    }),
    houses: Object.fromEntries(
      analysis.houses.map(house => [house.built.declared.name, stagesOf(house, analysis.settings.units)]),
    ),
  };
}

/** Results of each stage; those that are as in the stage before are left out, so that a stage shows what it does. */
function stagesOf({ views, currency }: AnalyzedHouse, system: UnitSystem): Readonly<Record<string, Results>> {
  const all = new Map(
    views.map(view => [view as unknown, resultsOf(view, { system, figures: 4, ...(currency ? { currency } : {}) })]),
  );
  return Object.fromEntries(
    views.map(view => {
      const now = all.get(view)!;
      const before = all.get(view.before) ?? {};
      const names = [...new Set([...Object.keys(now), ...Object.keys(before)])];
      return [
        view.name,
        Object.fromEntries(names.filter(n => now[n] !== before[n]).map(n => [n, now[n] ?? 'no longer there'])),
      ];
    }),
  );
}

function resultsOf(view: StageView, options: PrintOptions): Results {
  const fault = (error: unknown, what: string): never => {
    throw new Error(`${what} in ${view.name}: ${String(error)}`);
  };
  return Object.fromEntries(
    namedResults(view, 'design', fault).map(({ name, result, outcome }) => [
      name,
      'withheld' in outcome ? `withheld: ${outcome.withheld}` : print(outcome.value, result.dimension, options),
    ]),
  );
}

function lineOf(analysis: Analysis, uri: string, offset: number): string {
  const text = analysis.files.get(uri)?.syntax.text ?? '';
  const line = text.slice(0, offset).split('\n').length;
  return uri === analysis.uri ? `${line}` : `${uri.slice(uri.lastIndexOf('/') + 1)}:${line}`;
}
