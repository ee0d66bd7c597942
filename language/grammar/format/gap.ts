import type { Piece } from './piece.js';

/** The blanks between two pieces of one line. `written` is what the author put there. */
export function gap(before: Piece, next: Piece, beforeThat: Piece | undefined, written: string): string {
  if (next.kind === 'COMMENT') return next.token.image.startsWith('//') ? written.replace(/\s/g, ' ') || ' ' : ' ';
  if (before.kind === 'COMMENT') return ' ';
  if (isGlued(before, next) || isSign(before, beforeThat)) return '';
  if (before.kind === '/' || next.kind === '/') return before.statement === 'accept' ? '' : ' ';
  return ' ';
}

function isGlued(before: Piece, next: Piece): boolean {
  if (next.kind === ',' || next.kind === ':' || next.kind === ')') return true;
  if (before.kind === '(' || (before.kind === '{' && next.kind === '}')) return true;
  const list = (piece: Piece) => piece.inside === 'list';
  return (before.kind === '[' && (list(before) || next.kind === ']')) || (next.kind === ']' && list(next));
}

/** A minus belongs to its number where no value stands before it, and in the rows of a table. */
function isSign(minus: Piece, before: Piece | undefined): boolean {
  if (minus.kind !== 'MINUS') return false;
  return minus.inside === 'rows' || !before || !VALUE_ENDS.has(before.kind);
}

const VALUE_ENDS: ReadonlySet<string> = new Set(['NUMBER', 'UNIT', ')', 'ID', 'DATE', 'TIME']);
