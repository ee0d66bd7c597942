import type { Position, Range } from 'vscode-languageserver';

/** Offsets of a text as line and column, both in UTF-16 units, as the protocol counts them. */
export class Lines {
  private readonly starts: readonly number[];

  constructor(readonly text: string) {
    this.starts = startsOf(text);
  }

  position(offset: number): Position {
    const at = Math.max(0, Math.min(offset, this.text.length));
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle] <= at) low = middle;
      else high = middle - 1;
    }
    return { line: low, character: at - this.starts[low] };
  }

  /** A column beyond the end of its line is the end of that line. */
  offset({ line, character }: Position): number {
    if (line < 0) return 0;
    if (line >= this.starts.length) return this.text.length;
    const start = this.starts[line];
    let end = line + 1 < this.starts.length ? this.starts[line + 1] : this.text.length;
    while (end > start && isBreak(this.text.charCodeAt(end - 1))) end--;
    return Math.min(start + Math.max(0, character), end);
  }

  range({ from, to }: { readonly from: number; readonly to: number }): Range {
    return { start: this.position(from), end: this.position(to) };
  }

  span({ start, end }: Range): { from: number; to: number } {
    return { from: this.offset(start), to: this.offset(end) };
  }
}

/** Offset of the first character of each line. */
function startsOf(text: string): number[] {
  const starts = [0];
  if (!text.includes('\r'))
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  else for (const end of text.matchAll(/\r\n|\n|\r/g)) starts.push(end.index + end[0].length);
  return starts;
}

const LF = 10;
const CR = 13;
const isBreak = (c: number): boolean => c === LF || c === CR;
