import type { Span, TextChange } from '../grammar/index.js';

export type { Span };

/** What can be wrong with the meaning of a text, apart from what the house itself is. Each code has a page. */
export const inputCodes = {
  'input/unknown-block': 'error',
  'input/unknown-property': 'error',
  'input/misplaced-block': 'error',
  'input/misplaced-instruction': 'error',
  'input/missing-property': 'error',
  'input/wrong-kind': 'error',
  'input/wrong-dimension': 'error',
  'input/unknown-unit': 'error',
  'input/unknown-choice': 'error',
  'input/unit-slip': 'warning',
  'input/implausible': 'warning',
  'input/impossible': 'error',
  'input/currency': 'error',
  'input/tolerance': 'error',
  'input/unknown-name': 'error',
  'input/ambiguous-name': 'error',
  'input/not-alive': 'error',
  'input/wrong-block': 'error',
  'input/duplicate-name': 'error',
  'input/duplicate-property': 'error',
  'input/duplicate-block': 'error',
  'input/reserved-name': 'error',
  'input/hidden-name': 'info',
  'input/header': 'error',
  'input/needs-parent': 'error',
  'input/unknown-column': 'error',
  'input/missing-column': 'error',
  'input/ragged-row': 'error',
  'input/bad-cell': 'error',
  'input/too-few-rows': 'error',
  'input/file-missing': 'error',
  'input/file-outside': 'error',
  'input/bad-csv': 'error',
  'input/import-cycle': 'error',
  'input/like-cycle': 'error',
  'input/stage-cycle': 'error',
  'input/unknown-result': 'error',
  'input/withheld': 'info',
  'accept/no-reason': 'error',
  'accept/unknown-code': 'error',
  'accept/unused': 'warning',
  'accept/expired': 'error',
  'expect/broken': 'error',
} as const satisfies Record<string, 'error' | 'warning' | 'info'>;
export type InputCode = keyof typeof inputCodes;

/** A change of one or several places that mends a problem. */
export interface Mending {
  readonly title: string;
  readonly changes: readonly (TextChange & { readonly uri: string })[];
  readonly preferred?: true;
}

/** A problem at its place. Offsets are UTF-16 units in the text of `uri`. */
export interface Problem {
  readonly code: InputCode;
  readonly message: string;
  readonly uri: string;
  readonly from: number;
  readonly to: number;
  readonly related?: readonly {
    readonly uri: string;
    readonly from: number;
    readonly to: number;
    readonly message: string;
  }[];
  /** Computed when somebody asks. */
  readonly mend?: () => readonly Mending[];
}

/** So many problems of a code are told of one file: nobody reads more, and a broken file must not flood the reader. */
const MOST = 200;

/** Takes problems of one file. */
export class Report {
  readonly problems: Problem[] = [];
  private readonly counts = new Map<InputCode, number>();
  constructor(readonly uri: string) {}

  add(
    code: InputCode,
    span: Span,
    message: string,
    more: {
      replace?: readonly (readonly [title: string, text: string])[];
      related?: Problem['related'];
      mend?: Problem['mend'];
    } = {},
  ): void {
    const told = (this.counts.get(code) ?? 0) + 1;
    this.counts.set(code, told);
    if (told > MOST) return;
    if (told === MOST) message = `${message}; further ones of this kind are told when these are mended`;
    const { replace, related } = more;
    const { uri } = this;
    const mend =
      more.mend ??
      (replace?.length
        ? () => replace.map(([title, text]) => ({ title, changes: [{ uri, from: span.from, to: span.to, text }] }))
        : undefined);
    this.problems.push({
      code,
      message,
      uri: this.uri,
      from: span.from,
      to: span.to,
      ...(related?.length ? { related } : {}),
      ...(mend ? { mend } : {}),
    });
  }
}
