import type { Tier } from '../results/index.js';

/** What is asked of an analysis. */
export interface Asked {
  /** How far to compute; what costs more is left out. */
  readonly upto: Tier;
  /** Today, as YYYY-MM-DD: acceptances run out by it. */
  readonly today: string;
  readonly signal?: { readonly aborted: boolean };
}
