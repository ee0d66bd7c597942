import type { Syntax } from '../parse.js';
import { endOf, INSTRUCTIONS, kindOf, opensLine, type Token } from '../tokens.js';

/** What stands around a piece of text, as far as its layout depends on it. */
export interface Piece {
  readonly token: Token;
  readonly kind: string;
  readonly from: number;
  readonly to: number;
  readonly line: number;
  /** Levels that a line which begins with this piece is set in by. */
  readonly level: number;
  /** The innermost bracket around the piece; for a bracket, the one it opens or closes. */
  readonly inside: Inside;
  /** The word that opened the statement. */
  readonly statement: string;
  /** Counts the tables of the text; 0 outside of rows. */
  readonly table: number;
}

export type Inside = 'block' | 'group' | 'list' | 'rows';

/** The written tokens and comments of a text in their order, each with what its layout depends on. */
export function pieces(syntax: Syntax): Piece[] {
  const out: Piece[] = [];
  const inside: Inside[] = [];
  let depth = 0;
  let statement = '';
  let tables = 0;
  let previous: Token | undefined;
  let comment = 0;

  const push = (token: Token, kind: string, level: number): void => {
    const line = token.startLine ?? 1;
    const around = inside.at(-1) ?? 'block';
    const table = around === 'rows' ? tables : 0;
    out.push({ token, kind, from: token.startOffset, to: endOf(token), line, level, inside: around, statement, table });
  };
  const commentsBefore = (offset: number): void => {
    for (let next = syntax.comments[comment]; next && next.startOffset < offset; next = syntax.comments[++comment]) {
      push(next, 'COMMENT', depth + inside.length);
    }
  };
  for (const [i, token] of syntax.marked.entries()) {
    const kind = kindOf(token);
    const written = !Number.isNaN(token.endOffset);
    if (written) commentsBefore(token.startOffset);
    const closes = kind === ')' || kind === ']';
    const opensMember = kind === 'HEAD' || kind === 'KEY' || INSTRUCTIONS.has(kind);
    if (opensMember) statement = kind;
    if (kind === '}') depth--;
    if (kind === '(' || kind === '[') {
      const rows =
        kind === '[' && (isMark(syntax.marked[i + 1], 'ROW') || previous?.image === ')' || previous?.image === 'table');
      if (rows) tables++;
      inside.push(rows ? 'rows' : kind === '[' ? 'list' : 'group');
    }
    if (written) {
      const goesOn = !inside.length && !opensMember && kind !== '}' && kind !== '{' && opensLine(token, previous);
      const nested = inside.length - (closes || kind === '(' || kind === '[' ? 1 : 0);
      push(token, kind, depth + nested + (goesOn ? 1 : 0));
      previous = token;
    }
    if (closes) inside.pop();
    if (kind === '{') depth++;
  }
  commentsBefore(Infinity);
  return out;
}

const isMark = (token: Token | undefined, kind: string): boolean => token !== undefined && kindOf(token) === kind;
