import { worksheet as sheetOf, type Named } from '../../language/index.js';
import { results } from '../../language/results/index.js';
import { nearest, type UnitSystem } from '../../language/units/index.js';
import { amount } from '../report/findings-text.js';
import { plain } from '../report/paint.js';
import { resultsCsv, resultsJson } from '../report/results-data.js';
import { resultsTable } from '../report/results-table.js';
import { resultsOfHouse, type HouseResults } from '../report/results.js';
import { analyzed, shownPaths, type Analyzed } from './analyses.js';
import { EXIT, WrongUse } from './exit.js';
import { Faults } from './faults.js';
import { readInputs } from './inputs.js';
import type { CALC_FORMATS } from './options.js';
import { complainOfUnread, deliver, type Delivery } from './output.js';
import type { Terminal } from './terminal.js';

export interface CalcOptions extends Delivery {
  readonly format: (typeof CALC_FORMATS)[number];
  readonly units?: UnitSystem;
  readonly stage?: readonly string[];
  readonly result?: readonly string[];
  readonly all?: true;
  readonly worksheet?: true;
  readonly date?: string;
  readonly stdinFilename?: string;
}

/** The named results of the houses named, stage by stage. */
export async function calc(paths: readonly string[], options: CalcOptions, terminal: Terminal): Promise<number> {
  const faults = new Faults(terminal);
  const today = options.date ?? terminal.today;
  const { inputs, unread } = await readInputs(paths, terminal, options);
  complainOfUnread(unread, terminal);
  const all = await analyzed(inputs, terminal, { upto: 'design', today, fault: faults.add });
  const shown = shownPaths(all, terminal);
  const { stage, result } = options;
  const houses = all.flatMap(({ analysis }) =>
    analysis.houses.map(house =>
      resultsOfHouse(shown(analysis.uri), house, {
        upto: 'design',
        system: options.units ?? analysis.settings.units,
        stages: stage && new Set(stage),
        wanted: wantedBy(options),
        fault: faults.add,
      }),
    ),
  );
  if (!unread.length && !faults.told.length) {
    if (!houses.length) throw new WrongUse(`there is no house in ${all.map(a => a.input.shown).join(', ')}`);
    requireStages(stage ?? [], all);
    if (result && !houses.some(h => h.stages.some(s => s.results.length))) throw new WrongUse(noResult(result, all));
  }
  const asked = houses.filter(h => h.stages.length);
  const text = await written(asked, options, today, terminal, faults);
  await deliver(text, `results of ${amount(asked.length, 'house')} are in ${options.output}\n`, options, terminal);
  complainOfErrors(all, terminal);
  return faults.close(unread.length ? EXIT.wrongUse : EXIT.clean);
}

async function written(
  houses: readonly HouseResults[],
  { format, output, worksheet }: CalcOptions,
  today: string,
  { paint, columns }: Terminal,
  faults: Faults,
): Promise<string> {
  const look = { paint: output === undefined ? paint : plain, columns };
  if (format === 'json')
    return resultsJson(houses, today, worksheet && ((named, view) => sheetOf(named, view, faults.add).steps));
  if (format === 'csv') return resultsCsv(houses);
  const table = resultsTable(houses, look);
  if (!worksheet) return table;
  const { worksheetsText } = await import('../report/worksheets.js');
  return `${table}\n${worksheetsText(houses, look, faults.add)}`;
}

/** Headline results unless some are named or all are wanted; a name is that of a result, or a pattern with `*`. */
function wantedBy({ result, all }: CalcOptions): (named: Named) => boolean {
  if (result) {
    const patterns = result.map(patternOf);
    return named => patterns.some(p => p.test(named.name) || p.test(named.result.name));
  }
  return all ? () => true : named => Boolean(named.result.headline);
}

const patternOf = (glob: string): RegExp =>
  new RegExp(
    `^${glob
      .split('*')
      .map(part => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'))
      .join('.*')}$`,
  );

function requireStages(asked: readonly string[], all: readonly Analyzed[]): void {
  const known = new Set(all.flatMap(a => a.analysis.houses.flatMap(h => h.views.map(v => v.name))));
  for (const name of asked) {
    if (known.has(name)) continue;
    const near = nearest(name, known);
    throw new WrongUse(
      `there is no stage ${name}; ${near ? `the nearest is ${near}` : `the stages are ${[...known].join(', ')}`}`,
    );
  }
}

function noResult(asked: readonly string[], all: readonly Analyzed[]): string {
  const names = new Set(all.flatMap(a => a.analysis.houses.flatMap(() => results.map(r => r.name))));
  const near = nearest(asked[0], names);
  return `there is no result ${asked[0]}${near ? `; the nearest is ${near}` : ''}: calc --all shows every one`;
}

/** Numbers beside damage are not the whole story, and what rests on it is withheld: it is said where it cannot be missed. */
function complainOfErrors(all: readonly Analyzed[], terminal: Terminal): void {
  for (const { input, analysis } of all) {
    const errors = analysis.findings.filter(f => f.severity === 'error').length;
    if (errors)
      terminal.complain(`${input.shown}: ${amount(errors, 'error')}; wattwright check ${input.shown} tells them\n`);
  }
}
