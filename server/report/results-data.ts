import type { Named } from '../../language/index.js';
import type { Step } from '../../language/engine/worksheet.js';
import { printed } from '../../language/units/index.js';
import { say, type HouseResults, type StageResults } from './results.js';

/** Counts up with each change that a reader of this form could stumble over. */
const VERSION = 1;

/**
 * Results for other programs: `si` is in coherent SI units, temperatures in °C; a withheld one has its reason instead. With
 * `stepsOf` each has the lines of its worksheet.
 */
export function resultsJson(
  houses: readonly HouseResults[],
  date: string,
  stepsOf?: (named: Named, view: StageResults['view']) => readonly Step[],
): string {
  const out = {
    version: VERSION,
    date,
    houses: houses.map(house => ({
      path: house.path,
      name: house.name,
      title: house.title ?? null,
      currency: house.currency ?? null,
      stages: house.stages.map(({ name, title, results, view }) => ({
        name,
        title: title ?? null,
        results: results.map(named => {
          const { name, outcome } = named;
          const { dimension } = named.result;
          if ('withheld' in outcome) return { name, dimension, withheld: outcome.withheld };
          const number = { name, dimension, si: outcome.value, text: say(outcome.value, dimension, house) };
          return stepsOf ? { ...number, worksheet: stepsOf(named, view) } : number;
        }),
      })),
    })),
  };
  return `${JSON.stringify(out, undefined, 2)}\n`;
}

const FIGURES = 6;

/** The same as lines of a table for a spreadsheet (RFC 4180). */
export function resultsCsv(houses: readonly HouseResults[]): string {
  const rows = houses.flatMap(house =>
    house.stages.flatMap(stage =>
      stage.results.map(({ name, result: { dimension }, outcome }) => {
        const at = [house.path, house.name, stage.name, name];
        if ('withheld' in outcome) return [...at, '', '', '', outcome.withheld];
        const { currency, system } = house;
        const { text, unit } = printed(outcome.value, dimension, {
          system,
          figures: FIGURES,
          ...(currency ? { currency } : {}),
        });
        // Programs that read numbers know the hyphen alone as a minus.
        return [...at, text.replace('−', '-'), unit, String(outcome.value), ''];
      }),
    ),
  );
  const head = ['file', 'house', 'stage', 'result', 'value', 'unit', 'si', 'withheld'];
  return [head, ...rows].map(row => `${row.map(field).join(',')}\r\n`).join('');
}

const field = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
