import type { Layout } from './layout.js';
import type { Span } from './problem.js';

/*
 * What one file says, block by block, with values judged against the vocabulary but names not yet followed. Plain data: the
 * built-in library is shipped in this form.
 */

export interface Name {
  readonly name: string;
  readonly span: Span;
}

/** A value that names blocks; followed when a house is assembled. */
export interface Reference {
  readonly ref: readonly Name[];
  readonly many: boolean;
}

export type Evaluated =
  | { readonly is: 'value'; readonly value: unknown; readonly halfWidth?: number; readonly currency?: string }
  | { readonly is: 'reference'; readonly reference: Reference }
  /** `none` in a change: the property is unset. */
  | { readonly is: 'none' }
  /** A bound or range of a named result; its dimension is judged where results are known. */
  | { readonly is: 'bounds'; readonly low?: Limit; readonly high?: Limit }
  /** Damaged text or a wrong meaning: there is no value, and results that rest on it are withheld. */
  | { readonly is: 'damaged'; readonly reason: string };

export interface Limit {
  readonly value: number;
  readonly vector: readonly number[];
  readonly point?: true;
  readonly span: Span;
}

export interface DeclaredProperty {
  readonly key: string;
  readonly uri: string;
  /** From the key to the end of the value. */
  readonly span: Span;
  readonly keySpan: Span;
  /** The value, or the key while there is none. */
  readonly valueSpan: Span;
  readonly origin: Name | undefined;
  readonly value: Evaluated;
}

export interface Declared {
  readonly uri: string;
  readonly kind: string;
  /** The kind, where the block has no name. */
  readonly name: string;
  readonly named: boolean;
  readonly title: string | undefined;
  readonly doc: string | undefined;
  readonly span: Span;
  /** The word that names the kind; the name where there is one. */
  readonly head: Span;
  readonly kindSpan: Span;
  /** Between the braces, both left out; undefined without a body. */
  readonly body: Span | undefined;
  readonly layout: Layout | undefined;
  /** A section that the house does not write. */
  readonly implicit?: true;
  readonly like: Name | undefined;
  readonly origin: Name | undefined;
  /** The parent named by `in`, for a block that a stage adds. */
  readonly inside: Name | undefined;
  readonly properties: ReadonlyMap<string, DeclaredProperty>;
  readonly children: readonly Declared[];
  readonly instructions: readonly Instruction[];
  /** Properties that damaged or misspelt text may have held: they have no value unless they are given elsewhere. */
  readonly lost: readonly string[] | 'all';
  /** Kinds of children that a misspelt block may have been. */
  readonly lostKinds: readonly string[];
}

/** `add`, `change`, `remove` or `accept`, with what stands behind it as far as it is written. */
export interface Instruction {
  readonly does: 'add' | 'change' | 'remove' | 'accept';
  readonly span: Span;
  /** The block that `add` brings. */
  readonly block?: Declared;
  /** What `change` and `remove` name. */
  readonly target?: Name;
  /** What `change` sets; judged by the kind of its target. */
  readonly properties?: ReadonlyMap<string, DeclaredProperty>;
  readonly body?: Span;
  readonly lost?: Declared['lost'];
  readonly code?: Name;
  readonly reason?: string;
  readonly until?: string;
  readonly untilSpan?: Span;
}

/** One file in this form. */
export interface DeclaredFile {
  readonly uri: string;
  readonly imports: readonly (Name & { readonly target: string | undefined })[];
  readonly blocks: readonly Declared[];
}
