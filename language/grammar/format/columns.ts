import type { Piece } from './piece.js';

/** The cell of a row: its text without the blank that may stand between sign and digits, and where it begins. */
interface Cell {
  readonly first: Piece;
  readonly text: string;
  readonly isNumber: boolean;
}

interface Column {
  readonly before: number;
  readonly behind: number;
  readonly isText: boolean;
}

/** Blanks between two columns. */
const BETWEEN = 3;

/**
 * The blanks before each cell of the tables in a text: numbers stand with their decimal points under each other, names and
 * dates flush left. Only rows on lines of their own are aligned. The key is the first piece of the cell.
 */
export function alignedCells(lines: readonly (readonly Piece[])[]): Map<Piece, number> {
  const tables = new Map<number, Cell[][]>();
  for (const line of lines) {
    const table = line[0]?.table;
    if (!table || line[0].kind === ']' || line[0].kind === 'COMMENT') continue;
    const rows = tables.get(table) ?? [];
    rows.push(cellsOf(line.filter(piece => piece.table === table && piece.kind !== 'COMMENT' && piece.kind !== ']')));
    tables.set(table, rows);
  }
  const blanks = new Map<Piece, number>();
  for (const rows of tables.values()) align(rows, blanks);
  return blanks;
}

function cellsOf(row: readonly Piece[]): Cell[] {
  const cells: Cell[] = [];
  for (let i = 0; i < row.length; i++) {
    const first = row[i];
    const signed = first.kind === 'MINUS' && row[i + 1] !== undefined;
    const text = signed ? first.token.image + row[++i].token.image : first.token.image;
    cells.push({ first, text, isNumber: signed || first.kind === 'NUMBER' || first.kind === 'UNKNOWN' });
  }
  return cells;
}

function align(rows: readonly Cell[][], blanks: Map<Piece, number>): void {
  const count = Math.max(...rows.map(row => row.length));
  const columns = Array.from({ length: count }, (_, i) => columnOf(rows.flatMap(row => row[i] ?? [])));
  for (const row of rows) {
    let owed = 0;
    for (const [i, cell] of row.entries()) {
      const { before, behind, isText } = columns[i];
      const lead = isText ? 0 : before - beforePoint(cell.text);
      blanks.set(cell.first, owed + lead + (i ? BETWEEN : 0));
      owed = isText ? before - cell.text.length : behind - (cell.text.length - beforePoint(cell.text));
    }
  }
}

function columnOf(cells: readonly Cell[]): Column {
  const isText = cells.every(cell => !cell.isNumber || cell.text === '-') && cells.some(cell => !cell.isNumber);
  const before = Math.max(...cells.map(({ text }) => (isText ? text.length : beforePoint(text))));
  const behind = isText ? 0 : Math.max(...cells.map(({ text }) => text.length - beforePoint(text)));
  return { before, behind, isText };
}

/** Characters before the decimal point of a number; of any other cell all of them. */
function beforePoint(text: string): number {
  const point = /^[-\u2212]?\d*(?=\.\d)/.exec(text)?.[0].length;
  return point ?? text.length;
}
