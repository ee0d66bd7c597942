/** A place in a text as people count: lines and columns from 1, columns in UTF-16 units as editors do. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** The lines of one text. A line ends with `\n`, `\r\n` or `\r`. */
export class Lines {
  private readonly starts: number[] = [0];

  constructor(private readonly text: string) {
    for (let i = 0; i < text.length; i++) {
      const c = text.charCodeAt(i);
      if (c !== 10 && c !== 13) continue;
      if (c === 13 && text.charCodeAt(i + 1) === 10) i++;
      this.starts.push(i + 1);
    }
  }

  at(offset: number): Position {
    let [low, high] = [0, this.starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle] <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: Math.max(0, offset - this.starts[low]) + 1 };
  }

  /** Where a line lies, its ending left out. */
  span(line: number): { readonly from: number; readonly to: number } {
    const from = this.starts[line - 1];
    let to = this.starts[line] ?? this.text.length;
    while (to > from && (this.text[to - 1] === '\n' || this.text[to - 1] === '\r')) to--;
    return { from, to };
  }
}
