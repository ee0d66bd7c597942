import { readFileSync } from 'node:fs';

/** The sample that grows, and the stages of it that count: with today, five stages build one upon another. */
const SAMPLE = 'samples/tamarack/tamarack.house';
const FIRST_STAGE_LEFT_OUT = '\n  stage solar-roof ';

/**
 * A house of five stages with at least so many lines: the sample with its walls, windows, circuits and loads over and over,
 * each time under new names, the windows replaced and the circuits fed from a panel of their own.
 */
export function largeHouse(lines: number): string {
  const sample = readFileSync(SAMPLE, 'utf8');
  const end = sample.indexOf(FIRST_STAGE_LEFT_OUT);
  let text = `${sample.slice(0, end).trimEnd()}\n}\n`;
  const parts: readonly Part[] = [wallsOf(text), circuitsOf(text)];
  for (let copy = 2; lineCount(text) < lines; copy++)
    for (const part of parts) if (lineCount(text) < lines) text = part(text, copy);
  return text;
}

const lineCount = (text: string): number => text.split('\n').length - 1;

/** Puts one more copy into a text. */
type Part = (text: string, copy: number) => string;

function wallsOf(sample: string): Part {
  const walls = between(sample, '    wall south {', '    wall kneewalls');
  const changes = between(sample, '    change living', '    add blower-door-test after-sealing');
  return (text, copy) => {
    const withWalls = before(text, '    wall kneewalls', renamed(walls, copy));
    return before(withWalls, '    add blower-door-test after-sealing', renamed(changes, copy));
  };
}

function circuitsOf(sample: string): Part {
  const circuits = between(sample, '      circuit c-dishwasher', '      circuit c-lights');
  const loads = between(sample, '    load dishwasher', '    load general');
  return (text, copy) => {
    const fed = before(
      text,
      '      circuit c-dishwasher {',
      `      circuit c-panel-${copy} { breaker: 60 A, poles: 2, conductor: awg-6, length: 12 m }\n`,
    );
    const panel = `    panel panel-${copy} {\n      fed-by: c-panel-${copy}, bus: 60 A, spaces: 12\n${renamed(circuits, copy)}    }\n`;
    return before(before(fed, '    load range {', panel), '    load general', renamed(loads, copy));
  };
}

function between(text: string, from: string, to: string): string {
  return text.slice(found(text, from), found(text, to));
}

function before(text: string, place: string, more: string): string {
  const at = found(text, place);
  return text.slice(0, at) + more + text.slice(at);
}

function found(text: string, piece: string): number {
  const at = text.indexOf(piece);
  if (at < 0) throw new Error(`${SAMPLE} no longer holds "${piece}"`);
  return at;
}

/** The same lines with other names for what they declare and for what they name of it. */
function renamed(lines: string, copy: number): string {
  return lines.replace(/(^ *(?:wall|window|door|circuit|load|change) |on: )([\w-]+)/gm, `$1$2-${copy}`);
}
