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

  // Half of the room goes to what stands before, less when the line ends soon.
  const shown = startOf(marked, width - 2);
  const room = width - 2 - cells(shown);
  const right = after && room > 0 ? startOf(after, Math.max(1, Math.ceil(room / 2))).trimEnd() : '';
  const left = endOf(before, Math.max(0, room - cells(right)));
  const more = shown + right;
  const all = left.length < before.length || begin > line.from ? `…${left}` : left;
  const goesOn = cells(shown) < cells(marked) || right.length < after.trimEnd().length || end < line.to;
  return marks(all, shown, all + more + (goesOn ? '…' : ''));
}

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
