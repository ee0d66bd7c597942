import type { Block, House } from '../model/index.js';
import type { Tier } from '../results/define.js';
import type { Dimension } from '../units/index.js';
import type { Kind } from '../vocabulary/index.js';

export type Severity = 'error' | 'warning' | 'info';

/**
 * A house as it stands after one stage (or today, when `stage` is undefined), seen by a rule. A rule reads numbers from the
 * model and from named results alone, so that what it says and what a reader can look up are one thing.
 */
export interface View {
  readonly house: House;
  readonly stage: Block<'stage'> | undefined;
  /** The stage (or today) upon which this one builds. */
  readonly before: View | undefined;
  /** All stages that build on this one, directly or not, nearest first. */
  readonly later: readonly View[];
  /** Whether no stage builds on this one. */
  readonly last: boolean;
  /** Today, as YYYY-MM-DD. */
  readonly today: string;
  /** A named result in SI; undefined when it is withheld. `result('spaces-left', panel)` for that of a block. */
  result(name: string, subject?: Block): number | undefined;
  /** The same block in another view (by its address), or undefined when it is not alive there. */
  same<B extends Block>(block: B, there: View): B | undefined;
  /** Whether the text gives the property (here or in what the block is like), rather than the vocabulary's default. */
  says(block: Block, property: string): boolean;
  /** A name that no block has yet. */
  freshName(wish: string): string;
}

/** A place in the text, told by what it means: a property's value when it is written (else the block's head), or the head. */
export interface Spot {
  readonly block: Block;
  /** Kebab-case name of the property. */
  readonly property?: string;
}
export const at = (block: Block, property?: string): Spot => (property ? { block, property } : { block });

/** What a finding says: numbers on both sides and the shortfall, in a sentence without a period. */
export interface Telling {
  readonly at: Spot;
  readonly message: string;
  /** Other places that matter, each with a short reason. */
  readonly related?: readonly { readonly at: Spot; readonly message: string }[];
  /** Marks text that no longer does anything. */
  readonly unnecessary?: true;
}

/** One change of the text in terms of the model. Several stand or fall together in a fix. */
export type Change =
  /** Writes a property's value: in its place when it is written, else as a new line of the block. */
  | { readonly set: Spot; readonly to: string }
  /**
   * Adds a block to a parent. It stands beside `near`: in the stage that adds `near` as an `add`, otherwise in the body of
   * the parent. `body` is the text between the braces.
   */
  | {
      readonly add: { readonly kind: Kind; readonly name: string; readonly in: Block; readonly body: string };
      readonly near: Block;
    };

export interface Fix {
  /** What it does, as an order: "Set the breaker to 50 A with 6 AWG copper". */
  readonly title: string;
  readonly changes: readonly Change[];
  /** The one to take when all of a kind are mended at once. */
  readonly preferred?: true;
}

/** Prints a value in SI in the reader's units: `say(9600, 'heat-flow')` is "9.6 kW". */
export type Say = (si: number, dimension: Dimension) => string;

/**
 * A rule in three functions. `find` looks at one subject at a time (the house, or each block of a kind), so that damage to
 * one block hides nothing of another; a fact it yields holds all numbers that telling and mending need.
 */
export interface Rule<K extends Kind = Kind, F = unknown> {
  readonly code: `${string}/${string}`;
  readonly severity: Severity;
  /** A few words for lists. */
  readonly title: string;
  readonly of: K;
  readonly tier: Tier;
  readonly find: (subject: Block<K>, view: View) => Iterable<F>;
  readonly tell: (fact: F, say: Say, view: View) => Telling;
  readonly mend?: (fact: F, view: View) => readonly Fix[];
}

/** `rule({ ... })` checks the three functions against each other and forgets their fact's type. */
export const rule = <const K extends Kind, F>(r: Rule<K, F>): Rule => r as unknown as Rule;
