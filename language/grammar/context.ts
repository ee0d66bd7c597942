import { JOINS } from './lines.js';
import { parse, type Syntax } from './parse.js';
import { INSTRUCTIONS, kindOf, type Token } from './tokens.js';

export type Place =
  | 'member-head'
  | 'header'
  | 'value'
  | 'unit'
  | 'after-value'
  | 'list'
  | 'table-head'
  | 'table-cell'
  | 'import-path'
  | 'string'
  | 'comment';

/** A block around the cursor. `kind` and `name` are missing where they are not written yet, and for `change` the kind is. */
export interface Enclosing {
  readonly kind?: string;
  readonly name?: string;
  readonly instruction?: 'add' | 'change';
  readonly from: number;
}

/** The part of a header before the cursor. */
export interface HeaderSoFar {
  readonly instruction?: string;
  readonly kind?: string;
  readonly name?: string;
  /** The keyword right before the cursor: what stands there is its name. */
  readonly keyword?: string;
}

/** Where in the language a cursor stands, seen from the tokens before it; so it works in the middle of broken text. */
export interface Context {
  readonly place: Place;
  /** The blocks around the cursor, from the outermost to the innermost. */
  readonly enclosing: readonly Enclosing[];
  /** The key of the property in whose value the cursor stands. */
  readonly property?: string;
  readonly header?: HeaderSoFar;
  /** What is already written of the word at the cursor, and where that word begins. */
  readonly prefix: string;
  readonly from: number;
  /** The number whose unit is asked for. */
  readonly number?: string;
  /** The names of the columns so far, in the head of a table or of a file; in a row, those of its table. */
  readonly columns?: readonly string[];
  /** Which cell of its row the cursor is in, from 0. */
  readonly cell?: number;
}

export function contextAt(source: string | Syntax, offset: number): Context {
  const syntax = typeof source === 'string' ? parse(source) : source;
  const replay = new Replay();
  const word = wordAt(syntax, offset);
  const from = word?.startOffset ?? offset;
  const before = tokensBefore(syntax, from);
  for (const [i, token] of before.entries()) replay.read(token, before[i - 1]);
  const prefix = syntax.text.slice(from, offset);
  return { ...replay.context(lineAt(syntax, from), placeInToken(syntax, offset)), prefix, from };
}

/** The mended tokens that begin before `offset`. What was put in only because the text stops here is left out. */
function tokensBefore({ marked }: Syntax, offset: number): Token[] {
  const last = marked.findLastIndex(token => !Number.isNaN(token.endOffset) && token.startOffset < offset);
  return marked.slice(0, last + 1);
}

/** The word that is being written: it begins before the cursor and goes on to it at least. */
function wordAt(syntax: Syntax, offset: number): Token | undefined {
  const token = syntax.tokens.find(
    ({ startOffset, image }) => startOffset < offset && offset <= startOffset + image.length,
  );
  const isWord =
    token && (/^[\p{L}_°%¢$]/u.test(token.image) || kindOf(token) === 'UNIT' || kindOf(token) === 'STRING');
  return isWord ? token : undefined;
}

function placeInToken({ comments, text, tokens }: Syntax, offset: number): 'comment' | 'string' | undefined {
  const within = ({ startOffset, image }: Token, closed: boolean) => {
    const end = startOffset + image.length;
    return startOffset < offset && (offset < end || (!closed && /^[ \t]*$/.test(text.slice(end, offset))));
  };
  if (comments.some(comment => within(comment, comment.image.endsWith('*/')))) return 'comment';
  const isOpenString = (image: string) => image.length < 2 || !image.endsWith('"');
  return tokens.some(token => kindOf(token) === 'STRING' && within(token, !isOpenString(token.image)))
    ? 'string'
    : undefined;
}

/** Line of an offset, counted from 1. */
const lineAt = ({ text }: Syntax, offset: number): number =>
  (text.slice(0, offset).match(/\r\n|\n|\r/g)?.length ?? 0) + 1;

type Inside = 'list' | 'group' | 'head' | 'rows';

/** Follows the tokens up to the cursor and knows, at each, what may come next. */
class Replay {
  private readonly blocks: Enclosing[] = [];
  private readonly brackets: Inside[] = [];
  private statement: Token[] = [];
  private columns: string[] = [];
  private cells = 0;
  private last: Token | undefined;

  read(token: Token, previous: Token | undefined): void {
    const kind = kindOf(token);
    if (kind === '{') this.openBlock();
    else if (kind === '}') {
      this.blocks.pop();
      this.statement = [];
    } else if (kind === 'END') this.endStatement();
    else if (kind === '(' || kind === '[') this.openBracket(kind, previous);
    else if (kind === ')' || kind === ']') this.brackets.pop();
    else if (kind === 'ROW') this.cells = 0;
    else this.part(token, kind);
    if (Number.isNaN(token.endOffset)) return;
    this.last = token;
  }

  context(line: number, inToken: 'comment' | 'string' | undefined): Omit<Context, 'prefix' | 'from'> {
    const enclosing = [...this.blocks];
    if (inToken === 'comment') return { place: 'comment', enclosing };
    const property = this.property();
    const about = { enclosing, ...(property === undefined ? {} : { property }) };
    if (inToken === 'string')
      return { place: this.opener() === 'import' ? 'import-path' : 'string', ...about, ...this.heading() };
    const inside = this.brackets.at(-1);
    if (inside === 'rows')
      return { place: 'table-cell', ...about, columns: this.columns, cell: this.isNewLine(line) ? 0 : this.cells };
    if (inside === 'head') return { ...about, ...this.inHead(line) };
    if (!inside && this.opensMember(line)) return { place: 'member-head', enclosing };
    if (!inside && property === undefined)
      return { place: this.opener() === 'import' ? 'import-path' : 'header', enclosing, ...this.heading() };
    return { ...about, ...this.inValue(line, inside) };
  }

  private part(token: Token, kind: string): void {
    const opens = kind === 'HEAD' || kind === 'KEY' || INSTRUCTIONS.has(kind);
    if (opens || kind === ',') {
      if (!this.brackets.length) this.statement = [];
    }
    if (this.brackets.at(-1) === 'head' && kind === 'ID') this.columns.push(token.image);
    if (this.brackets.at(-1) === 'rows' && kind !== 'MINUS') this.cells++;
    if (kind !== ',' || this.brackets.length) this.statement.push(token);
    if (opens) this.columns = [];
  }

  private openBlock(): void {
    const { instruction, kind, name } = this.header();
    const isChange = instruction === 'add' || instruction === 'change';
    this.blocks.push({
      ...(kind === undefined ? {} : { kind }),
      ...(name === undefined ? {} : { name }),
      ...(isChange ? { instruction } : {}),
      from: this.statement[0]?.startOffset ?? 0,
    });
    this.statement = [];
  }

  private endStatement(): void {
    this.brackets.length = 0;
    this.statement = [];
  }

  private openBracket(kind: string, previous: Token | undefined): void {
    const before = previous ? kindOf(previous) : '';
    if (kind === '(') {
      const opensHead = before === 'table' || before === 'STRING';
      if (opensHead) this.columns = [];
      this.brackets.push(opensHead ? 'head' : 'group');
    } else this.brackets.push(before === 'table' || before === ')' ? 'rows' : 'list');
  }

  private opener(): string {
    return this.statement[0] ? kindOf(this.statement[0]) : '';
  }

  private property(): string | undefined {
    return this.opener() === 'KEY' ? this.statement[0].image : undefined;
  }

  private isNewLine(line: number): boolean {
    return this.last === undefined || this.last.endLine! < line;
  }

  private opensMember(line: number): boolean {
    if (!this.statement.length) return true;
    return this.isNewLine(line) && !JOINS.has(kindOf(this.last!));
  }

  private heading(): { header?: HeaderSoFar } {
    return this.property() === undefined && this.statement.length ? { header: this.header() } : {};
  }

  private header(): HeaderSoFar {
    const [first, ...rest] = this.statement;
    if (!first) return {};
    const instruction = INSTRUCTIONS.has(kindOf(first)) ? first.image : undefined;
    const names: string[] = [];
    for (const token of rest) {
      if (kindOf(token) !== 'ID') break;
      names.push(token.image);
    }
    const kind = instruction === undefined ? first.image : instruction === 'add' ? names.shift() : undefined;
    const name = names[0];
    const last = this.statement.at(-1)!;
    const keyword = KEYWORDS.has(kindOf(last)) ? last.image : undefined;
    return {
      ...(instruction === undefined ? {} : { instruction }),
      ...(kind === undefined ? {} : { kind }),
      ...(name === undefined ? {} : { name }),
      ...(keyword === undefined ? {} : { keyword }),
    };
  }

  private inHead(line: number): Pick<Context, 'place' | 'columns'> {
    const kind = this.last ? kindOf(this.last) : '';
    const wantsUnit = !this.isNewLine(line) && (kind === 'ID' || kind === 'STRING');
    return { place: wantsUnit ? 'unit' : 'table-head', columns: this.columns };
  }

  private inValue(line: number, inside: Inside | undefined): Pick<Context, 'place' | 'number' | 'header'> {
    const kind = this.last ? kindOf(this.last) : '';
    if (kind === 'NUMBER' && !this.isNewLine(line)) return { place: 'unit', number: this.last!.image };
    if (kind === 'from') return { place: 'after-value', header: { keyword: 'from' } };
    if (kind === ',' || kind === '[') return { place: inside === 'list' ? 'list' : 'value' };
    return { place: JOINS.has(kind) || kind === '(' ? 'value' : 'after-value' };
  }
}

const KEYWORDS: ReadonlySet<string> = new Set(['like', 'from', 'in', 'because', 'until', ...INSTRUCTIONS]);
