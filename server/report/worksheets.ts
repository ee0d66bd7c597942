import { worksheet } from '../../language/index.js';
import type { Paint } from './paint.js';
import { say, type HouseResults } from './results.js';
import { cells, padEnd, visible, wrap } from './width.js';
import { worksheetText } from './worksheet.js';

interface Look {
  readonly paint: Paint;
  readonly columns: number;
}

/** The worksheets of all results, one below the other. One that an earlier stage has already is only pointed at. */
export function worksheetsText(
  houses: readonly HouseResults[],
  look: Look,
  fault: (error: unknown, what: string) => void,
): string {
  return houses.flatMap(house => houseSheets(house, look, fault)).join('\n');
}

function houseSheets(
  house: HouseResults,
  { paint, columns }: Look,
  fault: (error: unknown, what: string) => void,
): string[] {
  const shown = new Map<string, string>();
  const { system, currency } = house;
  return house.stages.flatMap(stage =>
    stage.results.flatMap(named => {
      const { steps, outcome } = worksheet(named, stage.view, fault);
      const title = `${named.name}  ${house.name}, ${stage.name === 'today' ? 'today' : `stage ${stage.name}`}`;
      if ('withheld' in outcome) return [];
      const value = say(outcome.value, named.result.dimension, house);
      const head = `${paint('bold', visible(title))}\n${wrap(named.result.doc, columns).join('\n')}\n`;
      const text = worksheetText(steps, { system, currency, width: columns });
      const before = shown.get(`${named.name}\n${text}`);
      if (before !== undefined)
        return [`${paint('bold', visible(title))}\n${padEnd('', 2)}${value}, as in ${before}\n`];
      shown.set(`${named.name}\n${text}`, stage.name === 'today' ? 'the house today' : `stage ${stage.name}`);
      return [`${head}${rule(columns, title)}\n${visibleLines(text)}\n`];
    }),
  );
}

const rule = (columns: number, title: string): string => '─'.repeat(Math.min(columns, Math.max(20, cells(title))));
const visibleLines = (text: string): string => text.split('\n').map(visible).join('\n');
