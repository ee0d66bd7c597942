import type { Problems } from './problems.js';
import { endOf, kindOf, mark, opensLine, type Token, type TokenTypes } from './tokens.js';

/** What stands in the header of a block. */
export const HEADER_PARTS: ReadonlySet<string> = new Set(['ID', 'STRING', 'like', 'from', 'in']);
/** Blocks deeper than this are not read. */
export const DEEPEST_BLOCK = 40;
/** A header longer than this many tokens is none. */
const LONGEST_HEADER = 40;

export interface Braced {
  readonly tokens: Token[];
  /** The tokens that open a block whose body follows; also where a line break is missing before them. */
  readonly heads: ReadonlySet<Token>;
}

/**
 * Mends braces before anything else is read. A brace that opens nothing is left out. Where braces do not balance, the
 * indentation tells which one is missing or too many: so one slip costs one line instead of the rest of the file.
 */
export function mendBraces(raw: readonly Token[], types: TokenTypes, problems: Problems): Braced {
  const heads = new Set<Token>();
  const tokens = withoutStrayOpenings(raw, heads, problems);
  let balance = 0;
  let lowest = 0;
  for (const token of tokens) {
    if (kindOf(token) === '{') balance++;
    else if (kindOf(token) === '}') lowest = Math.min(lowest, --balance);
  }
  const extra = -lowest;
  const missing = balance + extra;
  if (extra || missing) return { tokens: new Mender(tokens, types, problems, heads, extra, missing).run(), heads };
  return { tokens, heads };
}

/** Leaves out every opening brace that no header precedes, and gathers the heads of the others. */
function withoutStrayOpenings(raw: readonly Token[], heads: Set<Token>, problems: Problems): Token[] {
  const tokens: Token[] = [];
  for (const [i, token] of raw.entries()) {
    if (kindOf(token) !== '{') {
      tokens.push(token);
      continue;
    }
    const head = headBefore(raw, i);
    if (head) {
      heads.add(head);
      tokens.push(token);
    } else tellStray(problems, token, raw[i - 1], raw[i + 1]);
  }
  return tokens;
}

/** The token that opens the block whose brace stands at `at`: walked back to, over the parts of a header. */
function headBefore(tokens: readonly Token[], at: number): Token | undefined {
  let i = at - 1;
  if (i > 0 && kindOf(tokens[i]!) === ':') i -= 2; // `ducts: {`, a slip with the colon
  for (; i >= 0 && i > at - LONGEST_HEADER; i--) {
    const token = tokens[i]!;
    const kind = kindOf(token);
    const before = tokens[i - 1];
    if (kind === 'add' || kind === 'change') return token;
    if (kind === 'UNIT' && i + 1 < at)
      return isName(tokens[i + 1]) && /^[a-z-]+$/.test(token.image) ? token : undefined;
    if (kind === ':') return isName(tokens[i + 2]) && i + 2 < at ? tokens[i + 2] : undefined;
    if (!HEADER_PARTS.has(kind)) return undefined;
    if (kind === 'ID' && opensMember(token, before)) return token;
  }
  if (i < 0 && at > 0) return headOfColon(tokens, at);
  return headOfColon(tokens, at);
}

function headOfColon(tokens: readonly Token[], at: number): Token | undefined {
  const key = tokens[at - 2];
  return key && kindOf(tokens[at - 1]!) === ':' && kindOf(key) === 'KEY' && opensMember(key, tokens[at - 3])
    ? key
    : undefined;
}

const isName = (token: Token | undefined): boolean => token !== undefined && kindOf(token) === 'ID';

function opensMember(token: Token, before: Token | undefined): boolean {
  return opensLine(token, before) || ['{', '}', ','].includes(kindOf(before!));
}

function tellStray(problems: Problems, token: Token, before: Token | undefined, next: Token | undefined): void {
  const sameLine = before !== undefined && !opensLine(token, before);
  const damage = { from: sameLine ? before.startOffset : token.startOffset, to: endOf(token) };
  if (next && !opensLine(next, token)) damage.to = kindOf(next) === '}' ? damage.to : endOf(next);
  const message = 'This { opens nothing: a block begins with its kind and name.';
  problems.add({ code: 'syntax/unexpected', message, from: token.startOffset, to: endOf(token) }, damage);
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
    private readonly heads: Set<Token>,
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
    if (!head || this.heads.has(head)) return;
    const last = this.tokens[i - 1]!;
    this.heads.add(head);
    this.extra--;
    const brace = mark(this.types['{']!, '', last);
    this.out.push(brace);
    this.stack.push({ token: brace, indent: this.indent });
    const replace = [{ title: 'Open the block', from: endOf(last), to: endOf(last), text: ' {' }];
    const message = 'A { is missing behind the header of this block.';
    this.problems.add({ code: 'syntax/missing', message, from: head.startOffset, to: endOf(last), replace }, 'none');
  }

  private close(): void {
    const { token } = this.stack.pop()!;
    this.out.push(mark(this.types['}']!, '', this.out.at(-1)));
    const message = 'The block that opens here is not closed: a } is missing.';
    this.problems.add({ code: 'syntax/not-closed', message, from: token.startOffset, to: endOf(token) }, 'none');
  }

  private closesNothing(i: number, token: Token, previous: Token | undefined): boolean {
    const top = this.stack.at(-1);
    if (top && !(this.extra && this.isDoubtful(i, token, previous, top))) return false;
    if (this.extra) this.extra--;
    const next = this.tokens[i + 1];
    const damage = {
      from: previous && !opensLine(token, previous) ? previous.startOffset : token.startOffset,
      to: next && !opensLine(next, token) ? endOf(next) : endOf(token),
    };
    const remove = { title: 'Remove the }', from: token.startOffset, to: endOf(token), text: '' };
    const message = 'This } closes nothing.';
    const place = { from: token.startOffset, to: endOf(token) };
    this.problems.add({ code: 'syntax/closes-nothing', message, ...place, replace: [remove] }, damage);
    return true;
  }

  /** Where there is one brace too many: it is one with more of the line behind it, or one that indentation does not expect. */
  private isDoubtful(i: number, token: Token, previous: Token | undefined, top: OpenBlock): boolean {
    const next = this.tokens[i + 1];
    if (next && !opensLine(next, token) && kindOf(next) !== '}' && kindOf(next) !== ',') return true;
    if (opensLine(token, previous)) return this.indent > top.indent;
    return top.token.startLine !== token.startLine && kindOf(previous!) !== '}';
  }
}

/** The head of a header without brace that ends right before the token at `i`. */
function headerBefore(tokens: readonly Token[], i: number): Token | undefined {
  for (let k = i - 1; k >= 0 && k > i - LONGEST_HEADER; k--) {
    const token = tokens[k]!;
    const kind = kindOf(token);
    if (kind === 'add' || kind === 'change') return token;
    if (!HEADER_PARTS.has(kind)) return undefined;
    if (kind === 'ID' && opensMember(token, tokens[k - 1])) return token;
  }
  return undefined;
}
