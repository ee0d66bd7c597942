import type { Dimension } from '../units/index.js';

/*
 * How the vocabulary says what a property is. A table of blocks written with these functions is read twice: by the
 * programs (completion, hover, validation, reference manual) and by the compiler, which infers the model from it.
 */

export type Presence = 'required' | 'optional' | 'default';

interface Common {
  /** One sentence or two: what the value means and how it is found. Ends with a period. */
  readonly doc: string;
  /** Where the default or the limits come from. */
  readonly source?: string;
  readonly presence: Presence;
  /** A typical value for completion, as it would be written. */
  readonly typical?: readonly string[];
}

export type Property =
  | (Common & {
      readonly is: 'quantity';
      readonly dimension: Dimension;
      readonly within?: Limits;
      readonly default?: string;
    })
  | (Common & { readonly is: 'quantities'; readonly dimension: Dimension; readonly within?: Limits })
  | (Common & { readonly is: 'count'; readonly within?: readonly [number, number]; readonly default?: number })
  | (Common & { readonly is: 'choice'; readonly of: readonly string[]; readonly default?: string })
  | (Common & { readonly is: 'choices'; readonly of: readonly string[] })
  | (Common & {
      readonly is: 'statement';
      readonly of: readonly string[];
      readonly citing: readonly string[];
      readonly default?: string;
    })
  | (Common & { readonly is: 'flag'; readonly default?: boolean })
  | (Common & { readonly is: 'text' | 'date' | 'time' | 'month-day' | 'currency' })
  | (Common & { readonly is: 'months' | 'hours' })
  | (Common & {
      readonly is: 'reference';
      readonly to: readonly string[];
      readonly or: readonly string[];
      readonly default?: string;
    })
  | (Common & { readonly is: 'references'; readonly to: readonly string[] })
  | (Common & { readonly is: 'file'; readonly formats: readonly string[]; readonly or: readonly string[] })
  | (Common & { readonly is: 'table'; readonly columns: Columns; readonly minimum: number });

/** Plausible limits, both included, as they would be written. */
export type Limits = readonly [low: string, high: string];

/** A column: a dimension, or one of the other things that a cell can hold. A cell of an optional column may be `-`. */
export type Cell = Dimension | 'text' | 'date' | 'time' | 'month' | 'count';
export type Columns = Readonly<Record<string, Cell | { readonly optional: Cell }>>;

type Usual = {
  readonly doc: string;
  readonly source?: string;
  readonly typical?: readonly string[];
  readonly required?: true;
};
type PresenceOf<O> = O extends { readonly required: true }
  ? 'required'
  : O extends { readonly default: unknown }
    ? 'default'
    : 'optional';
const presence = <O extends object>(o: O) =>
  ('required' in o ? 'required' : 'default' in o ? 'default' : 'optional') as PresenceOf<O>;

export const quantity = <
  const D extends Dimension,
  const O extends Usual & { readonly within?: Limits; readonly default?: string },
>(
  dimension: D,
  o: O,
) => ({ ...o, is: 'quantity', dimension, presence: presence(o) }) as const;

/** One quantity or a list of them: `temporary-heat: [1440 W, 1440 W]`. */
export const quantities = <const D extends Dimension, const O extends Usual & { readonly within?: Limits }>(
  dimension: D,
  o: O,
) => ({ ...o, is: 'quantities', dimension, presence: presence(o) }) as const;

export const count = <
  const O extends Usual & { readonly within?: readonly [number, number]; readonly default?: number },
>(
  o: O,
) => ({ ...o, is: 'count', presence: presence(o) }) as const;

export const choice = <
  const C extends readonly string[],
  const O extends Usual & { readonly default?: NoInfer<C[number]> },
>(
  of: C,
  o: O,
) => ({ ...o, is: 'choice', of, presence: presence(o) }) as const;

/** One choice or a list of them: `days: [sat, sun]`. */
export const choices = <const C extends readonly string[], const O extends Usual>(of: C, o: O) =>
  ({ ...o, is: 'choices', of, presence: presence(o) }) as const;

/** A choice, some of which cite a text: `credit: authority-accepts "letter of 3 March"`. */
export const statement = <
  const C extends readonly string[],
  const T extends readonly string[],
  const O extends Usual & { readonly default?: NoInfer<C[number]> },
>(
  of: C,
  citing: T,
  o: O,
) => ({ ...o, is: 'statement', of, citing, presence: presence(o) }) as const;

export const flag = <const O extends Usual & { readonly default?: boolean }>(o: O) =>
  ({ ...o, is: 'flag', presence: presence(o) }) as const;

const plain =
  <const I extends 'text' | 'date' | 'time' | 'month-day' | 'currency' | 'months' | 'hours'>(is: I) =>
  <const O extends Usual>(o: O) =>
    ({ ...o, is, presence: presence(o) }) as const;
export const text = plain('text');
export const date = plain('date');
export const time = plain('time');
export const monthDay = plain('month-day');
/** A code of ISO 4217. */
export const currency = plain('currency');
/** `nov .. apr`, `oct`, or a list of both. */
export const months = plain('months');
/** `07:00 .. 11:00` or a list of such. */
export const hours = plain('hours');

/** The name of one block of the given kinds; `or` adds words that stand for themselves. */
export const reference = <
  const K extends readonly string[],
  const O extends Usual & { readonly or?: readonly string[]; readonly default?: string },
>(
  to: K,
  o: O,
) =>
  ({ ...o, or: (o.or ?? []) as unknown as OrOf<O>, is: 'reference', to, presence: presence(o) }) as Omit<O, 'or'> & {
    readonly is: 'reference';
    readonly to: K;
    readonly or: OrOf<O>;
    readonly presence: PresenceOf<O>;
  };
type OrOf<O> = O extends { readonly or: infer C extends readonly string[] } ? C : readonly [];

/** One name or a list of names; none when left out. */
export const references = <const K extends readonly string[], const O extends Usual>(to: K, o: O) =>
  ({ ...o, is: 'references', to, presence: 'default' }) as const;

/** A file beside the house (`tmy3 "weather/plains.csv"`), or the name of a block of a kind in `or`. */
export const file = <const F extends readonly string[], const O extends Usual & { readonly or?: readonly string[] }>(
  formats: F,
  o: O,
) =>
  ({ ...o, or: (o.or ?? []) as unknown as OrOf<O>, is: 'file', formats, presence: presence(o) }) as Omit<O, 'or'> & {
    readonly is: 'file';
    readonly formats: F;
    readonly or: OrOf<O>;
    readonly presence: PresenceOf<O>;
  };

/** Rows under named columns, written in the file or taken from a csv beside it. */
export const table = <const C extends Columns, const O extends Usual & { readonly minimum?: number }>(
  columns: C,
  o: O,
) =>
  ({ ...o, minimum: o.minimum ?? 1, is: 'table', columns, presence: presence(o) }) as Omit<O, 'minimum'> & {
    readonly is: 'table';
    readonly columns: C;
    readonly minimum: number;
    readonly presence: PresenceOf<O>;
  };

export interface BlockType {
  readonly kind: string;
  /** What the block stands for, in one paragraph. */
  readonly doc: string;
  /** Other words that people use for it: completion and explain find it by them. */
  readonly also?: readonly string[];
  /** A part of every house that stands even when it is not written, and has no name. */
  readonly section?: true;
  /** At most one in its parent. */
  readonly once?: true;
  /** The names it may have, when they are not free. */
  readonly names?: readonly string[];
  /** Belongs to a stage itself, and is no change upon the house. */
  readonly ofStage?: true;
  /** Properties are named results with a bound each, and not listed here. */
  readonly bounds?: true;
  readonly holds?: readonly string[];
  readonly properties: Readonly<Record<string, Property>>;
}
export const block = <const K extends string, const B extends Omit<BlockType, 'kind'>>(kind: K, b: B) =>
  ({ kind, ...b }) as const;

type Kinds<T extends readonly BlockType[]> = T[number]['kind'];
type Mentioned<B> =
  | (B extends { readonly holds: readonly (infer H)[] } ? H : never)
  | (B extends { readonly properties: infer P }
      ? { [N in keyof P]: P[N] extends { readonly to: readonly (infer K)[] } ? K : never }[keyof P]
      : never);
type Complete<T extends readonly BlockType[]> = [Exclude<Mentioned<T[number]>, Kinds<T>>] extends [never]
  ? unknown
  : { readonly undeclaredKind: Exclude<Mentioned<T[number]>, Kinds<T>> };

/** All blocks, keyed by kind; a child or a reference of a kind that no table declares does not compile. */
export const vocabularyOf = <const T extends readonly BlockType[]>(blocks: T & Complete<T>) =>
  Object.fromEntries((blocks as readonly BlockType[]).map(b => [b.kind, b])) as unknown as {
    readonly [B in T[number] as B['kind']]: B;
  };

export type Camel<S extends string> = S extends `${infer A}-${infer B}` ? `${A}${Capitalize<Camel<B>>}` : S;

/** Kebab-case to the camelCase of the model. */
export const camel = (name: string): string => name.replace(/-([a-z0-9])/g, (_, c: string) => c.toUpperCase());
