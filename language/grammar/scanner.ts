import { NUMBER_RUN } from './number.js';
import type { Problems } from './problems.js';
import * as slips from './slips.js';
import { CommentOpenings, endOfLine, hasOddQuotes, stringReach } from './text-token.js';
import { endOf, type Kind, kindOf, type Token, type TokenTypes } from './tokens.js';
import { unitAt } from './unit-token.js';

/** What a text consists of before any structure is seen in it. */
export interface Scan {
  readonly tokens: Token[];
  readonly comments: Token[];
}

/** More tokens than this are not read: a house of 10,000 lines has fewer. */
const MOST_TOKENS = 120_000;

/** Letters beyond the alphabet of names are taken with the word, which is then judged as a whole. */
const LETTER =
  'A-Za-z_\\u00c0-\\u00d6\\u00d8-\\u00f6\\u00f8-\\u024f\\u0370-\\u065f\\u066a-\\u06ef\\u06fa-\\u0965\\u0970-\\u1fff\\u2c00-\\ud7ff';
const WORD = new RegExp(`[${LETTER}][${LETTER}0-9-]*(?:\\.[A-Za-z][\\w-]*)*`, 'y');
const KEY_COLON = /[ \t]*:/y;
const BOUND = /at[ \t]+(?:least|most)(?![\w-])/y;
const COLUMN_END = /[ \t]*(?:[,)\r\n]|\/\/|$)/y;
const DATE = /\d{4}-\d{2}-\d{2}(?![\w-])/y;
const TIME = /\d{1,2}:\d{2}(?!\d)/y;
/** A dash of another length counts as a minus where a digit follows; it is told. */
const MINUS = /[-\u2212]|[\u2010-\u2014](?=[ \t]?[\d.])/y;
const SIGN = /\.\.(?!\.)|[{}[\](),:+*/±]/y;
const SPACE = /[ \t\v\f\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000\ufeff]+/y;
const JUNK = /[\0-\x08\x0e-\x1f\x7f-\x9f\ufff0-\uffff\ud800-\udfff]+|([^])\1*/y;

/**
 * Cuts a text into tokens in one pass. It is written by hand because the place decides what a word is: a unit stands behind
 * a number or a column's name only, a key has a colon behind it, and a slip must become one token that is judged whole.
 */
export function scan(text: string, types: TokenTypes, problems: Problems): Scan {
  return new Scanner(text, types, problems).run();
}

class Scanner {
  private readonly tokens: Token[] = [];
  private readonly comments: Token[] = [];
  private readonly openings: CommentOpenings;
  private offset = 0;
  private line = 1;
  private lineStart = 0;
  /** Inside the brackets that name the columns of a table or of a file. */
  private inHead = false;
  /** Whether the quotation marks of the present line pair up, as far as they are not read yet. */
  private quotes = { line: 0, odd: false };

  constructor(
    private readonly text: string,
    private readonly types: TokenTypes,
    private readonly problems: Problems,
  ) {
    this.openings = new CommentOpenings(text);
  }

  run(): Scan {
    const { text, tokens, comments } = this;
    while (this.offset < text.length && tokens.length < MOST_TOKENS) this.step(text[this.offset]);
    if (this.offset < text.length) slips.tooLong(this.problems, this.offset, text.length);
    return { tokens, comments };
  }

  private step(c: string): void {
    if (c === ' ' || c === '\t') this.offset++;
    else if (c === '\n') this.newLine(1);
    else if (c === '\r') this.newLine(this.text[this.offset + 1] === '\n' ? 2 : 1);
    else if (c === '"') this.string();
    else if (c === '/' && this.text[this.offset + 1] === '/') this.lineComment();
    else if (c === '/' && this.text[this.offset + 1] === '*') this.blockComment();
    else if (!this.unit() && !this.word() && !this.number()) this.sign();
  }

  private string(): void {
    if (this.quotes.line !== this.line) this.quotes = { line: this.line, odd: hasOddQuotes(this.text, this.offset) };
    const glued = /[\w-]/.test(this.text.charAt(this.offset - 1));
    const opens = this.tokens.at(-1)?.endLine !== this.line;
    const reach = stringReach(this.text, this.offset, this.quotes.odd, glued || opens);
    const token = this.push('STRING', reach.end - this.offset);
    if (reach.closed) return;
    this.quotes.odd = false;
    slips.openString(this.problems, token);
  }

  private lineComment(): void {
    this.comments.push(this.take('COMMENT', endOfLine(this.text, this.offset) - this.offset));
  }

  private blockComment(): void {
    const reach = this.openings.reach(this.offset);
    const comment = this.take('COMMENT', reach.end - this.offset);
    for (const end of comment.image.matchAll(/\r\n|\n|\r/g)) {
      this.line++;
      this.lineStart = comment.startOffset + end.index + end[0].length;
    }
    comment.endLine = this.line;
    comment.endColumn = this.offset - this.lineStart;
    this.comments.push(comment);
    if (!reach.closed) slips.openComment(this.problems, comment);
  }

  /** A unit stands behind a number, or behind the name or header of a column, on the same line. */
  private unit(): boolean {
    const last = this.tokens.at(-1);
    if (last?.endLine !== this.line) return false;
    const kind = kindOf(last);
    if (kind !== 'NUMBER' && !(this.inHead && (kind === 'STRING' || (kind === 'ID' && this.opensColumn(-2)))))
      return false;
    const unit = unitAt(this.text, this.offset);
    if (!unit || (kind !== 'NUMBER' && !this.endsColumn(unit.length))) return false;
    this.push('UNIT', unit.length);
    return true;
  }

  private endsColumn(length: number): boolean {
    COLUMN_END.lastIndex = this.offset + length;
    return COLUMN_END.test(this.text);
  }

  private opensColumn(at: number): boolean {
    const before = this.tokens.at(at)?.image;
    return before === '(' || before === ',';
  }

  private word(): boolean {
    const word = this.match(WORD);
    if (!word) return false;
    KEY_COLON.lastIndex = this.offset + word.length;
    if (KEY_COLON.test(this.text)) {
      this.inHead = false;
      slips.name(this.problems, this.push('KEY', word.length));
      return true;
    }
    const bound = word === 'at' ? this.match(BOUND) : undefined;
    const isColumn = this.inHead && this.opensColumn(-1) && this.tokens.at(-1)?.endLine === this.line;
    const keyword = KEYWORDS.has(word) && !isColumn;
    if (bound) this.push('BOUND', bound.length);
    else if (keyword) this.push(word, word.length);
    else slips.name(this.problems, this.push('ID', word.length));
    return true;
  }

  private number(): boolean {
    const date = this.match(DATE);
    const time = date ? undefined : this.match(TIME);
    const number = date ?? time ?? this.match(NUMBER_RUN);
    if (!number) return false;
    const token = this.push(date ? 'DATE' : time ? 'TIME' : 'NUMBER', number.length);
    slips.number(this.problems, token);
    return true;
  }

  private sign(): void {
    const minus = this.match(MINUS);
    if (minus) return slips.dash(this.problems, this.push('MINUS', 1));
    const sign = this.match(SIGN);
    if (sign) {
      if (sign === '(') this.inHead = opensHead(this.tokens);
      else if (sign !== ',') this.inHead = false;
      this.push(sign, sign.length);
      return;
    }
    const space = this.match(SPACE);
    if (space) this.offset += space.length;
    else this.push('JUNK', this.match(JUNK)!.length);
  }

  private newLine(length: number): void {
    this.offset += length;
    this.line++;
    this.lineStart = this.offset;
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.offset;
    return pattern.exec(this.text)?.[0];
  }

  private push(name: Kind | (string & {}), length: number): Token {
    const token = this.take(name, length);
    this.tokens.push(token);
    return token;
  }

  private take(name: string, length: number): Token {
    const tokenType = this.types[name];
    const startColumn = this.offset - this.lineStart + 1;
    const token: Token = {
      image: this.text.substring(this.offset, this.offset + length),
      startOffset: this.offset,
      endOffset: this.offset + length - 1,
      startLine: this.line,
      endLine: this.line,
      startColumn,
      endColumn: startColumn + length - 1,
      tokenType,
      tokenTypeIdx: tokenType.tokenTypeIdx ?? 0,
    };
    this.offset = endOf(token);
    return token;
  }
}

const KEYWORDS: ReadonlySet<string> = new Set([
  ...['import', 'add', 'change', 'remove', 'accept'],
  ...['because', 'until', 'like', 'from', 'in', 'table'],
]);

/** A bracket opens the head of a table behind `table`, and the columns of a file behind a name and a string. */
function opensHead(tokens: readonly Token[]): boolean {
  const last = tokens.at(-1);
  if (!last) return false;
  if (last.image === 'table') return true;
  const before = tokens.at(-2);
  return kindOf(last) === 'STRING' && before !== undefined && kindOf(before) === 'ID';
}
