import type { Paint } from './paint.js';
import { namesOf, say, type HouseResults, type StageResults } from './results.js';
import { cells, cut, padEnd, padStart, visible, wrap } from './width.js';

interface Look {
  readonly paint: Paint;
  readonly columns: number;
}

const GAP = 2;
/** A name that takes more than this share of the line is cut, so that numbers stand beside it. */
const NAMES_AT_MOST = 0.5;
const WITHHELD = '–';
const ABSENT = '';

/** Results as rows and stages as columns; where not all stages fit, the rows are repeated for the next ones. */
export function resultsTable(houses: readonly HouseResults[], look: Look): string {
  return houses.map(house => houseTable(house, look)).join('\n');
}

function houseTable(house: HouseResults, { paint, columns }: Look): string {
  const names = namesOf(house);
  const title = visible([house.name, house.title].filter(Boolean).join(' '));
  const path = visible(house.path);
  const apart = cells(title) + GAP + cells(path) <= columns ? ' '.repeat(GAP) : '\n';
  const heading = `${paint('bold', cut(title, columns))}${apart}${paint('dim', path)}`;
  if (!names.length) return `${heading}\n  no result of these names\n`;
  const left = Math.min(Math.max(...names.map(cells)), Math.floor(columns * NAMES_AT_MOST));
  const drawn = house.stages.map(stage => column(stage, names, house));
  const parts = fitting(drawn, columns - left).map(some =>
    [
      paint('dim', [padEnd('', left), ...some.map(c => padStart(c.name, c.width + GAP))].join('').trimEnd()),
      ...names.flatMap((name, i) => {
        if (some.every(c => c.texts[i] === ABSENT)) return [];
        return [padEnd(cut(name, left), left) + some.map(c => padStart(c.texts[i], c.width + GAP)).join('')];
      }),
    ].join('\n'),
  );
  return `${[heading, ...parts, ...reasons(house, columns)].join('\n\n')}\n`;
}

interface Column {
  readonly name: string;
  readonly texts: readonly string[];
  readonly width: number;
}

function column(stage: StageResults, names: readonly string[], house: HouseResults): Column {
  const byName = new Map(stage.results.map(named => [named.name, named]));
  const texts = names.map(name => {
    const named = byName.get(name);
    if (!named) return ABSENT;
    return 'value' in named.outcome ? say(named.outcome.value, named.result.dimension, house) : WITHHELD;
  });
  return { name: stage.name, texts, width: Math.max(...[stage.name, ...texts].map(cells)) };
}

/** As many columns to a part as fit; at least one. */
function fitting(columns: readonly Column[], width: number): Column[][] {
  const parts: Column[][] = [];
  let room = 0;
  for (const c of columns) {
    if (!parts.length || room < c.width + GAP) {
      parts.push([]);
      room = width;
    }
    parts.at(-1)!.push(c);
    room -= c.width + GAP;
  }
  return parts;
}

/** Why numbers are missing: one entry for each reason, with the results and stages that it holds for. */
function reasons(house: HouseResults, columns: number): string[] {
  const byReason = new Map<string, { names: Set<string>; stages: Set<string> }>();
  for (const stage of house.stages)
    for (const { name, outcome } of stage.results) {
      if (!('withheld' in outcome)) continue;
      const entry = byReason.get(outcome.withheld) ?? { names: new Set(), stages: new Set() };
      entry.names.add(name);
      entry.stages.add(stage.name);
      byReason.set(outcome.withheld, entry);
    }
  const lines = [...byReason].map(([reason, { names, stages }]) => {
    const where = stages.size === house.stages.length ? '' : ` (${[...stages].join(', ')})`;
    const [first, ...rest] = wrap(visible(`${reason}: ${[...names].join(', ')}${where}`), columns - 2 * GAP);
    return [`${WITHHELD} ${first}`, ...rest.map(line => `  ${line}`)].join('\n');
  });
  return lines.length ? [lines.join('\n')] : [];
}
