import type { Problems, Span } from './problems.js';
import { endOf, INSTRUCTIONS, kindOf, mark, opensLine, retype, type Token, type TokenTypes } from './tokens.js';

/** What stands in the header of a block. */
export const HEADER_PARTS: ReadonlySet<string> = new Set(['ID', 'STRING', 'like', 'from', 'in']);
/** Blocks deeper than this are not read. */
export const DEEPEST_BLOCK = 40;
/** A header longer than this many tokens is none. */
const LONGEST_HEADER = 40;
/** So many tokens of a line are looked at. */
const LINE = 200;

export interface Braced {
  readonly tokens: readonly Token[];
  /** The tokens that open a block whose body follows; also where a line break is missing before them. */
  readonly heads: ReadonlySet<Token>;
}

/**
 * Mends braces before anything else is read. A brace that opens nothing is left out. Where braces do not balance, the
 * indentation tells which one is missing or too many: so one slip costs one line instead of the rest of the file.
 */
export function mendBraces(tokens: readonly Token[], types: TokenTypes, problems: Problems): Braced {
  for (const [i, token] of tokens.entries()) {
    if (kindOf(token) === '{' && !headBefore(tokens, i)) retype(token, types['JUNK']);
  }
  let balance = 0;
  let lowest = 0;
  for (const token of tokens) {
    if (kindOf(token) === '{') balance++;
    else if (kindOf(token) === '}') lowest = Math.min(lowest, --balance);
  }
  const extra = -lowest;
  const missing = balance + extra;
  const mended = extra || missing ? new Mender(tokens, types, problems, extra, missing).run() : tokens;
  const heads = new Set<Token>();
  for (const [i, token] of mended.entries()) {
    const head = kindOf(token) === '{' ? headBefore(mended, i) : undefined;
    if (head) heads.add(head);
  }
  return { tokens: mended, heads };
}

/** A brace that is left out makes doubtful what stands beside it on its line. */
function around(tokens: readonly Token[], at: number): Span {
  const token = tokens[at];
  const [before, next] = [tokens[at - 1], tokens[at + 1]];
  return {
    from: before && !opensLine(token, before) ? before.startOffset : token.startOffset,
    to: next && !opensLine(next, token) && !ENDS.has(kindOf(next)) ? endOf(next) : endOf(token),
  };
}

const ENDS: ReadonlySet<string> = new Set(['}', ',']);

/**
 * The token that opens the block whose brace stands at `at`. A header may hold anything, as it does while one types; what
 * counts is that its statement begins like a block. A value is followed by no brace, unless a line break is missing.
 */
function headBefore(tokens: readonly Token[], at: number): Token | undefined {
  if (at === 0 || isClosedBefore(tokens, at) || isPartOfWord(tokens, at) || splitsHeader(tokens, at)) return undefined;
  const start = statementBefore(tokens, at);
  if (at - start >= LONGEST_HEADER) return undefined;
  const head = headFrom(tokens, start, at);
  if (head || start === 0) return head;
  return isTornFrom(tokens, start) ? headFrom(tokens, statementBefore(tokens, start - 1), at) : undefined;
}

/** True when the token before is a brace, so that no header can end here: a closing one on the same line may be a slip. */
function isClosedBefore(tokens: readonly Token[], at: number): boolean {
  const kind = kindOf(tokens[at - 1]);
  return kind === '{' || (kind === '}' && opensLine(tokens[at], tokens[at - 1]));
}

/** True when the statement at `start` is a header's rest, torn off by a stray brace, comma or line break. */
function isTornFrom(tokens: readonly Token[], start: number): boolean {
  const [token, before] = [tokens[start], tokens[start - 1]];
  if (!opensLine(token, before)) return kindOf(before) === '}' || kindOf(before) === ',';
  return headerBefore(tokens, start) !== undefined;
}

function headFrom(tokens: readonly Token[], start: number, at: number): Token | undefined {
  for (let i = start; i < at; i++) {
    const kind = kindOf(tokens[i]);
    if (kind === 'ID' || kind === 'add' || kind === 'change') return tokens[i];
    if (kind === 'KEY') return headBehindValue(tokens, i, at);
    if (kind === 'UNIT' && NAME.test(tokens[i].image)) return tokens[i];
    if (INSTRUCTIONS.has(kind)) return undefined;
  }
  return undefined;
}

/** Index of the token that opens the statement which ends before `at`. */
function statementBefore(tokens: readonly Token[], at: number): number {
  let i = at - 1;
  if (i > 0 && kindOf(tokens[i]) === '}') i--;
  for (const last = Math.max(0, at - LONGEST_HEADER); i > last; i--) {
    const token = tokens[i];
    const before = tokens[i - 1];
    if (OPENERS.has(kindOf(before)) || (opensLine(token, before) && !goesOn(token))) break;
  }
  return Math.max(0, i);
}

const CONTINUES: ReadonlySet<string> = new Set(['STRING', 'like', 'from', 'in']);
const CLOSES_VALUE: ReadonlySet<string> = new Set([')', ']']);
/** A quotation mark alone is a slip and goes on with nothing. */
const goesOn = (token: Token): boolean =>
  CLOSES_VALUE.has(kindOf(token)) || (CONTINUES.has(kindOf(token)) && token.image.length > 1);
const OPENERS: ReadonlySet<string> = new Set(['{', '}', ',']);

/** `con{ductor: awg-8` and `breaker{: 60 A`: a brace in the middle of a member. */
function isPartOfWord(tokens: readonly Token[], at: number): boolean {
  const [before, next] = [tokens[at - 1], tokens[at + 1]];
  if (endOf(before) !== tokens[at].startOffset || !next) return false;
  return (
    next.startOffset === endOf(tokens[at]) &&
    [':', ',', ')', ']', 'KEY', 'ID', 'UNIT', 'NUMBER', 'MINUS'].includes(kindOf(next))
  );
}

/** `wall south {like wall-1971 {`: the header goes on behind this brace, and its own brace follows. */
function splitsHeader(tokens: readonly Token[], at: number): boolean {
  const next = tokens[at + 1];
  if (next && kindOf(next) === '{' && !opensLine(next, tokens[at])) return true;
  if (!next || opensLine(next, tokens[at]) || !CONTINUES.has(kindOf(next))) return false;
  for (let i = at + 2; i < tokens.length && i < at + LONGEST_HEADER; i++) {
    const kind = kindOf(tokens[i]);
    if (opensLine(tokens[i], tokens[i - 1]) || kind === 'KEY') return false;
    if (kind === '{') return true;
  }
  return false;
}

/** The head of a block in a statement that began as the property at `key`: `ducts: {`, or a missing line break before it. */
function headBehindValue(tokens: readonly Token[], key: number, at: number): Token | undefined {
  if (opensLine(tokens[at], tokens[at - 1])) return undefined;
  const head = hasBodyBehind(tokens, at) ? tokens[key] : undefined;
  for (let i = at - 1; i > key; i--) {
    const kind = kindOf(tokens[i]);
    if (kind === 'add' || kind === 'change') return tokens[i];
    if (kind === 'UNIT') return opensLikeBlock(tokens, i, at) ? tokens[i] : undefined;
    if (kind === ':') return i + 2 < at && kindOf(tokens[i + 2]) === 'ID' ? tokens[i + 2] : head;
    if (!HEADER_PARTS.has(kind))
      return i + 1 < at && kindOf(tokens[i + 1]) === 'ID' && kind !== '±' ? tokens[i + 1] : undefined;
  }
  return undefined;
}

/** A word that is rather the kind of a block than a unit. */
const NAME = /^[a-z][a-z-]{2,}$/;

/** A word behind a number is its unit, unless a name and a brace follow, or a brace and a body. */
function opensLikeBlock(tokens: readonly Token[], i: number, at: number): boolean {
  if (!NAME.test(tokens[i].image)) return false;
  return i + 1 < at ? kindOf(tokens[i + 1]) === 'ID' : hasBodyBehind(tokens, at);
}

/** True when what follows the brace at `at` is the body of a block: a member, or a line further in. */
function hasBodyBehind(tokens: readonly Token[], at: number): boolean {
  const [brace, next] = [tokens[at], tokens[at + 1]];
  if (!next) return false;
  if (!opensLine(next, brace)) {
    let end = at + 2;
    while (end < tokens.length && HEADER_PARTS.has(kindOf(tokens[end]))) end++;
    const opens = kindOf(next) === 'ID' && end < tokens.length && kindOf(tokens[end]) === '{';
    return opens || ['KEY', '}', 'add', 'change'].includes(kindOf(next));
  }
  let first = at;
  while (first > 0 && !opensLine(tokens[first], tokens[first - 1])) first--;
  return next.startColumn! > tokens[first].startColumn!;
}

interface OpenBlock {
  readonly token: Token;
  /** Column of the first token on the line of the brace. */
  readonly indent: number;
}

class Mender {
  private readonly out: Token[] = [];
  private readonly stack: OpenBlock[] = [];
  private indent = 1;

  constructor(
    private readonly tokens: readonly Token[],
    private readonly types: TokenTypes,
    private readonly problems: Problems,
    private extra: number,
    private missing: number,
  ) {}

  run(): Token[] {
    for (const [i, token] of this.tokens.entries()) this.step(i, token, this.tokens[i - 1]);
    while (this.stack.length) this.close();
    return this.out;
  }

  private step(i: number, token: Token, previous: Token | undefined): void {
    const kind = kindOf(token);
    if (opensLine(token, previous)) {
      const indent = token.startColumn ?? 1;
      if (this.extra && indent > this.indent && previous) this.openHeader(i);
      this.indent = indent;
      while (this.missing && this.stack.length && this.endsBlock(kind)) {
        this.missing--;
        this.close();
      }
    } else if (kind === 'KEY' && this.extra) this.openHeader(i);
    if (kind === '{') this.stack.push({ token, indent: this.indent });
    else if (kind === '}') {
      if (this.closesNothing(i, token, previous)) return;
      this.stack.pop();
    }
    this.out.push(token);
  }

  private endsBlock(kind: string): boolean {
    const { indent } = this.stack.at(-1)!;
    return kind === '}' ? this.indent < indent : this.indent <= indent;
  }

  /** Puts in the brace that a header before a deeper line, or before a key on its own line, must have had. */
  private openHeader(i: number): void {
    const head = headerBefore(this.tokens, i);
    if (!head) return;
    const last = this.tokens[i - 1];
    this.extra--;
    const brace = mark(this.types['{'], '', last);
    this.out.push(brace);
    this.stack.push({ token: brace, indent: this.indent });
    const replace = [{ title: 'Open the block', from: endOf(last), to: endOf(last), text: ' {' }];
    const message = 'A { is missing behind the header of this block.';
    this.problems.add({ code: 'syntax/missing', message, from: head.startOffset, to: endOf(last), replace }, 'none');
  }

  private close(): void {
    const { token } = this.stack.pop()!;
    this.out.push(mark(this.types['}'], '', this.out.at(-1)));
    const message = 'The block that opens here is not closed: a } is missing.';
    this.problems.add({ code: 'syntax/not-closed', message, from: token.startOffset, to: endOf(token) }, 'none');
  }

  private closesNothing(i: number, token: Token, previous: Token | undefined): boolean {
    const top = this.stack.at(-1);
    if (top && !(this.extra && this.isDoubtful(i, token, previous, top))) return false;
    if (this.extra) this.extra--;
    const remove = { title: 'Remove the }', from: token.startOffset, to: endOf(token), text: '' };
    const message = 'This } closes nothing.';
    const place = { from: token.startOffset, to: endOf(token) };
    this.problems.add({ code: 'syntax/closes-nothing', message, ...place, replace: [remove] }, around(this.tokens, i));
    return true;
  }

  /** Where there is one brace too many: it is one with more of the line behind it, or one that indentation does not expect. */
  private isDoubtful(i: number, token: Token, previous: Token | undefined, top: OpenBlock): boolean {
    const next = this.tokens[i + 1];
    const behind = next && !opensLine(next, token) ? kindOf(next) : '';
    if (behind && behind !== '}') return behind !== ',' || this.isSurplus(i, token);
    if (opensLine(token, previous)) return this.indent > top.indent;
    const within = top.token.startLine === token.startLine ? this.indent : top.indent;
    return !behind && next !== undefined && next.startColumn! > within;
  }

  /** True when this line has more braces that close than blocks that it opened. */
  private isSurplus(i: number, token: Token): boolean {
    const opened = this.stack.filter(block => block.token.startLine === token.startLine).length;
    let closing = 1;
    for (let k = i + 1; k < this.tokens.length && k < i + LINE && !opensLine(this.tokens[k], this.tokens[k - 1]); k++) {
      const kind = kindOf(this.tokens[k]);
      if (kind === '}') closing++;
      else if (kind === '{') closing--;
    }
    return closing > opened;
  }
}

/** The head of a header without brace that ends right before the token at `i`. */
function headerBefore(tokens: readonly Token[], i: number): Token | undefined {
  const start = statementBefore(tokens, i);
  const head = tokens[start];
  const isHeader = tokens.slice(start + 1, i).every(token => HEADER_PARTS.has(kindOf(token)));
  return isHeader && ['ID', 'add', 'change'].includes(kindOf(head)) ? head : undefined;
}
