import type { Dimension, Si } from '../units/index.js';
import type { Camel, Columns } from '../vocabulary/define.js';

/** A file named in the house, with the columns that a csv was said to have. */
export interface FileValue {
  readonly format: string;
  readonly path: string;
  readonly columns: readonly { readonly name: string; readonly header: string; readonly unit: string | undefined }[];
}

/** Months 1 to 12. */
export type Months = readonly number[];
/** Spans of a day in seconds from midnight; one that ends before it begins passes midnight. */
export type Hours = readonly { readonly from: number; readonly to: number }[];

type CellValue<C> = C extends Dimension ? Si<C> : C extends 'month' | 'count' | 'time' ? number : string;
type Row<C extends Columns> = {
  readonly [N in keyof C & string as Camel<N>]: C[N] extends { readonly optional: infer O }
    ? CellValue<O> | undefined
    : CellValue<C[N]>;
};

type Value<V, P> = P extends { is: 'quantity'; dimension: infer D extends Dimension }
  ? Si<D>
  : P extends { is: 'quantities'; dimension: infer D extends Dimension }
    ? readonly Si<D>[]
    : P extends { is: 'count' }
      ? number
      : P extends { is: 'choice'; of: readonly (infer C)[] }
        ? C
        : P extends { is: 'choices'; of: readonly (infer C)[] }
          ? readonly C[]
          : P extends { is: 'statement'; of: readonly (infer C)[]; citing: readonly (infer T)[] }
            ? { readonly says: C | T; readonly text: string | undefined }
            : P extends { is: 'flag' }
              ? boolean
              : P extends { is: 'months' }
                ? Months
                : P extends { is: 'hours' }
                  ? Hours
                  : P extends { is: 'time' }
                    ? number
                    : P extends { is: 'month-day' }
                      ? { readonly month: number; readonly day: number }
                      : P extends { is: 'reference'; to: readonly (infer K)[]; or: readonly (infer C)[] }
                        ? Model<V, K> | C
                        : P extends { is: 'references'; to: readonly (infer K)[] }
                          ? readonly Model<V, K>[]
                          : P extends { is: 'file'; or: readonly (infer K)[] }
                            ? FileValue | Model<V, K>
                            : P extends { is: 'table'; columns: infer C extends Columns }
                              ? readonly Row<C>[]
                              : string;

type Properties<B> = B extends { readonly properties: infer P } ? P : never;
type Children<B> = B extends { readonly holds: readonly (infer H extends string)[] } ? H : never;

/** The typed model of one kind of block, distributed over a union of kinds. */
export type Model<V, K> = K extends keyof V
  ? {
      /** The kind of block; a property of the block may itself be called `kind`. */
      readonly is: K;
      /** The kind stands for the name of a block that has none. */
      readonly name: string;
      readonly title: string | undefined;
    } & {
      readonly [N in keyof Properties<V[K]> & string as Camel<N>]: Properties<V[K]>[N] extends { presence: 'optional' }
        ? Value<V, Properties<V[K]>[N]> | undefined
        : Value<V, Properties<V[K]>[N]>;
    } & {
      readonly [H in Children<V[K]> as Camel<H>]: H extends keyof V
        ? V[H] extends { section: true }
          ? Model<V, H>
          : V[H] extends { once: true }
            ? Model<V, H> | undefined
            : readonly Model<V, H>[]
        : never;
    }
  : never;
