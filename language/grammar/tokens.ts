import type { Lexer, LexerResult } from 'langium';

/** A token as the parser reads it. Lines and columns count from 1, offsets from 0; `endOffset` is that of the last character. */
export type Token = LexerResult['tokens'][number];
/** All token types by name. */
export type TokenTypes = Lexer['definition'];
export type TokenType = TokenTypes[string];

/** The names of all token types that are not written as themselves. */
export type Kind =
  | 'DATE'
  | 'TIME'
  | 'NUMBER'
  | 'BOUND'
  | 'STRING'
  | 'KEY'
  | 'UNIT'
  | 'MINUS'
  | 'ID'
  | 'HEAD'
  | 'END'
  | 'ROW'
  | 'UNKNOWN'
  | 'COMMENT'
  | 'JUNK';

/** Offset behind the last character of a token. */
export const endOf = (token: Token): number => token.startOffset + token.image.length;

export const kindOf = (token: Token): string => token.tokenType.name;

/** A token as it is shown in a message. */
export const shown = ({ image }: Token): string => (image.length > 40 ? `${image.slice(0, 40)}…` : image);

/** Words that open an instruction. */
export const INSTRUCTIONS: ReadonlySet<string> = new Set(['import', 'add', 'change', 'remove', 'accept']);

/** True when `token` is the first of its line, seen from the token before it. */
export function opensLine(token: Token, previous: Token | undefined): boolean {
  return !previous || (previous.endLine ?? 0) < (token.startLine ?? 0);
}

/** Gives a token another type, in place: the image and the place stay. */
export function retype(token: Token, type: TokenType): Token {
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx ?? 0;
  return token;
}

/**
 * A token that does not stand in the text, put in so that one slip costs one line. It has no end, which tells the parser to
 * keep it out of the syntax tree: ranges of nodes are those of the written tokens.
 */
export function mark(type: TokenType, image: string, at: Token | undefined): Token {
  return {
    image,
    startOffset: at ? endOf(at) : 0,
    endOffset: NaN,
    startLine: at?.endLine ?? 1,
    endLine: at?.endLine ?? 1,
    startColumn: (at?.endColumn ?? 0) + 1,
    endColumn: at?.endColumn ?? 0,
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx ?? 0,
  };
}
