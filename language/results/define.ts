import type { Sheet } from '../engine/worksheet.js';
import type { Block, House } from '../model/index.js';
import type { Dimension } from '../units/index.js';
import type { Kind } from '../vocabulary/index.js';

/** What it costs to know: what the text means, the design conditions, or the hourly year. */
export type Tier = 'meaning' | 'design' | 'year';

/**
 * A named number of a house or of one of its blocks. The name of a house's result is `domain.name`; that of a block's
 * result is the name alone, and the block's own name stands before it where it is used: `main.spaces-left`.
 */
export interface Result<K extends Kind = Kind> {
  readonly name: string;
  readonly of: K;
  readonly dimension: Dimension;
  readonly tier: Tier;
  readonly doc: string;
  /** Among the few that a first look shows. */
  readonly headline?: true;
  /** Whether more is better, for the colour of a change. */
  readonly better?: 'more' | 'less';
  /** SI (°C for temperatures). Throws Withheld when the house does not say enough. */
  readonly compute: (subject: Block<K>, house: House, sheet?: Sheet) => number;
}

/** One row of the table of results: `result('heating.design-load', 'house', { ... })`. */
export const result = <const K extends Kind>(name: string, of: K, row: Omit<Result<K>, 'name' | 'of'>): Result =>
  ({ name, of, ...row }) as unknown as Result;
