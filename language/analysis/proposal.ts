import type { FileChange } from '../build/index.js';

export type ProposalKind =
  'block' | 'property' | 'name' | 'choice' | 'value' | 'unit' | 'result' | 'code' | 'word' | 'source' | 'file';

/** Something that may be written at the cursor. */
export interface Proposal {
  readonly label: string;
  readonly kind: ProposalKind;
  readonly detail?: string;
  /** Markdown. */
  readonly doc?: string;
  readonly insert: string;
  /** The same with places to fill in, in the notation of the protocol, for editors that can. */
  readonly snippet?: string;
  /** Other words by which it is found. */
  readonly also?: readonly string[];
  /** Lower comes first. */
  readonly rank: number;
  /** Changes elsewhere that it needs, such as the import of a file. */
  readonly extra?: readonly FileChange[];
}

/** Text inside a place of a snippet. */
export const inSnippet = (text: string): string => text.replace(/[\\$}]/g, c => `\\${c}`);
/** One of the words of a list of choices in a snippet. */
export const inChoice = (text: string): string => text.replace(/[\\$},|]/g, c => `\\${c}`);
