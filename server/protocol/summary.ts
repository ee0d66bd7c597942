/**
 * What the server tells its own client beyond the standard protocol. Types and names only: both sides import this file,
 * and neither imports the other.
 */

/** Request of the client; the answer is `null` when the document is not open or holds no house. */
export const SUMMARY = 'wattwright/summary';

export interface SummaryParams {
  /** Document as the editor names it. */
  readonly uri: string;
}

/** Headline results of one house, printed as everywhere else: the client shows them and computes nothing. */
export interface Summary {
  readonly uri: string;
  /** The house as it stands, then its stages in order. */
  readonly stages: readonly StageSummary[];
  readonly findings: FindingCount;
}

export interface StageSummary {
  readonly name: string;
  readonly title: string;
  readonly results: readonly { readonly name: string; readonly text: string }[];
}

export interface FindingCount {
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
}
