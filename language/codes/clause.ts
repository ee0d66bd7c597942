/**
 * How well a clause or figure is known. No code book was at hand: even `quoted` means that a page which quotes or
 * reproduces the clause was read, so that every figure is to be confirmed in the book before work begins.
 */
export type Standing = 'quoted' | 'in-part' | 'memory' | 'doubtful';

/** The clause a figure rests on, with its book and edition. */
export interface Clause {
  readonly text: string;
  readonly standing: Standing;
  readonly note?: string;
}

export type ClauseOf = (number: string, standing?: Standing, note?: string) => Clause;

/** Clauses of one book: `inBook('NEC 2023')('220.82(B)')`. */
export const inBook =
  (book: string): ClauseOf =>
  (number, standing = 'quoted', note) => ({ text: `${book} ${number}`, standing, note });

const MARKS: Record<Standing, string> = {
  quoted: '',
  'in-part': ' (seen in part)',
  memory: ' (from memory, confirm)',
  doubtful: ' (doubtful, confirm with the authority)',
};

/** The clause as it stands on a line of a worksheet, with a mark when its wording was not seen in full. */
export const cite = ({ text, standing }: Clause): string => text + MARKS[standing];
