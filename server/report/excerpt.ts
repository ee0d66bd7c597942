import type { Lines } from './position.js';
import { cells, startOf, visible } from './width.js';

/** More of a line than this on either side of the place is never looked at: a line may have millions of characters. */
const NEAR = 400;

export interface Excerpt {
  /** The source line, cut around the place where it is too long. */
  readonly source: string;
  /** The marks below it: spaces and `^`. */
  readonly marks: string;
}

/** The source line of a place with its squiggle, in at most `width` cells. */
export function excerpt(text: string, lines: Lines, from: number, to: number, width: number): Excerpt {
  const line = lines.span(lines.at(from).line);
  const start = Math.min(from, line.to);
  const stop = Math.max(start, Math.min(to, line.to, start + NEAR));
  const [begin, end] = [Math.max(line.from, start - NEAR), Math.min(line.to, stop + NEAR)];
  const before = visible(text.slice(begin, start));
  const marked = visible(text.slice(start, stop));
  const after = visible(text.slice(stop, end));
  if (begin === line.from && end === line.to && cells(before + marked + after) <= width)
    return marks(before, marked, before + marked + after);

  // Half of the room goes to either side; what one does not need goes to the other.
  const shown = startOf(marked, width - 2);
  const room = Math.max(0, width - 2 - cells(shown));
  const half = Math.floor(room / 2);
  const right = within(after, Math.max(half, room - cells(before))).trimEnd();
  const left = endOf(before, room - cells(right));
  const cutBefore = left.length < before.length || begin > line.from;
  const cutAfter = shown.length < marked.length || right.length < after.trimEnd().length || end < line.to;
  const head = cutBefore ? `…${left}` : left;
  return marks(head, shown, `${head}${shown}${right}${cutAfter ? '…' : ''}`);
}

const within = (text: string, width: number): string => (text && width > 0 ? startOf(text, width) : '');

const marks = (before: string, marked: string, source: string): Excerpt => ({
  source,
  marks: `${' '.repeat(cells(before))}${'^'.repeat(Math.max(1, cells(marked)))}`,
});

function endOf(text: string, width: number): string {
  let tail = '';
  let taken = 0;
  for (const c of [...text].reverse()) {
    taken += cells(c);
    if (taken > width) break;
    tail = c + tail;
  }
  return tail;
}
