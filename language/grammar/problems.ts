/** A change of the text: what stands from `from` to `to` is replaced by `text`. Offsets count UTF-16 units from 0. */
export interface TextChange {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** A change that mends a problem, with the words an editor shows for it. */
export interface Replacement extends TextChange {
  readonly title: string;
}

export type SyntaxCode =
  | 'syntax/unexpected'
  | 'syntax/missing'
  | 'syntax/separator'
  | 'syntax/not-closed'
  | 'syntax/closes-nothing'
  | 'syntax/number'
  | 'syntax/name'
  | 'syntax/unit-place'
  | 'syntax/string'
  | 'syntax/comment'
  | 'syntax/character'
  | 'syntax/import-place'
  | 'syntax/too-deep'
  | 'syntax/too-long'
  | 'syntax/too-large'
  | 'syntax/too-many'
  | 'syntax/internal';

/** What is wrong with the writing, where, and how it could be mended. */
export interface SyntaxProblem {
  readonly code: SyntaxCode;
  readonly message: string;
  readonly from: number;
  readonly to: number;
  readonly replace?: readonly Replacement[];
}

/** The stretch of text whose meaning a problem makes doubtful; often a little more than the place that is underlined. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** So many problems of a kind are told one by one; a file with more is no text of this language, or was cut in the middle. */
const TOLD = 100;

/** Gathers the problems of one parse. What lies beyond the limit still counts as damage. */
export class Problems {
  readonly list: SyntaxProblem[] = [];
  readonly damage: Span[] = [];
  readonly #told = new Map<SyntaxCode, number>();
  #untold = 0;

  /** Tells a problem. `damage` is the text that loses its meaning by it; left out, it is the place of the problem. */
  add(problem: SyntaxProblem, damage: Span | 'none' = problem): void {
    if (damage !== 'none') this.damage.push({ from: damage.from, to: damage.to });
    const told = this.#told.get(problem.code) ?? 0;
    this.#told.set(problem.code, told + 1);
    if (told < TOLD) this.list.push(problem);
    else this.#untold++;
  }

  /** All problems in the order of the text. */
  sorted(): SyntaxProblem[] {
    const sorted = this.list.toSorted((a, b) => a.from - b.from || a.to - b.to);
    const last = sorted.at(-1);
    if (!this.#untold || !last) return sorted;
    const message = `${this.#untold} further syntax problems are not listed one by one.`;
    return [...sorted, { code: 'syntax/too-many', message, from: last.from, to: last.to }];
  }
}
