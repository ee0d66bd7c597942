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
  /** The house as it stands, with the title of the house, then its stages in order. */
  readonly stages: readonly StageSummary[];
  readonly findings: FindingCount;
}

export interface StageSummary {
  readonly name: string;
  readonly title: string;
  readonly results: readonly HeadlineResult[];
}

export interface HeadlineResult {
  readonly name: string;
  /** The value with its unit; empty where it is withheld. */
  readonly text: string;
  /** How it moved against the stage before; empty where it did not. */
  readonly move: string;
  /** Why there is no value. */
  readonly withheld?: string;
}

export interface FindingCount {
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
}
