import { DEEPEST_BLOCK, HEADER_PARTS, mendBraces } from './braces.js';
import { closesOnLine, continuesValue, lineHasMember, OPERATORS } from './lines.js';
import type { Problems, Replacement, Span, SyntaxCode } from './problems.js';
import { compound, junk } from './slips.js';
import { endOf, INSTRUCTIONS, kindOf, mark, opensLine, retype, shown, type Token, type TokenTypes } from './tokens.js';

/** Brackets deeper than this, and statements with more operators than this, are not read. */
const DEEPEST_BRACKET = 40;
const MOST_OPERATORS = 200;

type Role = 'group' | 'list' | 'rows' | 'head' | 'file-head';
interface Bracket {
  readonly token: Token;
  readonly role: Role;
}
type State = 'between' | 'header' | 'value' | 'instruction' | 'skipped';

/**
 * Sees the members in a list of tokens, so that no slip reaches beyond its own member: marks what opens a block, where each
 * property and instruction ends and where each row of a table begins; closes brackets that stay open; leaves out what can
 * stand nowhere. Everything mended or left out is told.
 */
export function markMembers(raw: readonly Token[], types: TokenTypes, problems: Problems): Token[] {
  const { tokens, heads } = mendBraces(raw, types, problems);
  return new MemberPass(tokens, heads, types, problems).run();
}

class MemberPass {
  private readonly out: Token[] = [];
  private readonly brackets: Bracket[] = [];
  private state: State = 'between';
  /** The blocks around the present place; one whose brace was left out takes its closing brace along. */
  private readonly levels: ('block' | 'left out')[] = [];
  private operators = 0;
  /** The token that opened the present statement. */
  private head: Token | undefined;
  private closedHead = false;

  constructor(
    private readonly tokens: readonly Token[],
    private readonly heads: ReadonlySet<Token>,
    private readonly types: TokenTypes,
    private readonly problems: Problems,
  ) {}

  run(): Token[] {
    for (const [i, token] of this.tokens.entries()) {
      if (!this.step(i, token)) break;
    }
    this.finish();
    for (const level of this.levels) if (level === 'block') this.out.push(mark(this.types['}'], '', this.out.at(-1)));
    return this.out;
  }

  /** Reads one token; false where the file is nested too deeply to read on. */
  private step(i: number, token: Token): boolean {
    const kind = kindOf(token);
    if (this.opens(i, token, kind)) this.begin(i, token, kind);
    else if (kind === '}') this.closeBlock(i, token);
    else if (kind === '{') return this.openBlock(i, token);
    else if (this.awaitsBrace()) this.part(i, token, kind);
    else if (kind === ',' && !this.brackets.length) {
      this.finish();
      this.out.push(token);
    } else this.part(i, token, kind);
    return true;
  }

  private opens(i: number, token: Token, kind: string): boolean {
    const previous = this.tokens[i - 1];
    const newLine = opensLine(token, previous);
    if (this.heads.has(token)) return true;
    if (this.awaitsBrace()) return false;
    if (kind === 'KEY') return !(this.brackets.length && !newLine && closesOnLine(this.tokens, i));
    if (INSTRUCTIONS.has(kind)) return newLine || !this.brackets.length;
    if (kind !== 'ID') return false;
    if (this.brackets.length) return newLine && lineHasMember(this.tokens, i);
    return newLine || ['{', '}', ','].includes(kindOf(previous));
  }

  private begin(i: number, token: Token, kind: string): void {
    const previous = this.tokens[i - 1];
    const glued = previous && !opensLine(token, previous) && !['{', '}', ','].includes(kindOf(previous));
    if (glued && this.state !== 'skipped' && this.state !== 'between') this.tellSeparator(token, previous);
    this.finish();
    this.head = token;
    this.operators = 0;
    if (kind === 'KEY' && this.heads.has(token)) kind = 'ID';
    if (kind === 'KEY') this.state = 'value';
    else if (kind === 'import' && this.levels.length) return this.nestedImport(token);
    else this.state = kind === 'add' || kind === 'change' || !INSTRUCTIONS.has(kind) ? 'header' : 'instruction';
    this.out.push(this.state === 'header' && !INSTRUCTIONS.has(kind) ? retype(token, this.types['HEAD']) : token);
    this.want(i, token, kind);
  }

  /** Inside a header whose brace is known to follow: nothing before that brace opens another member. */
  private awaitsBrace(): boolean {
    return this.state === 'header' && this.head !== undefined && this.heads.has(this.head);
  }

  private closeBlock(i: number, token: Token): void {
    this.finish();
    const level = this.levels.pop();
    if (level === 'block') this.out.push(token);
    else if (!level)
      this.drop(i, 'This } closes nothing.', { title: 'Remove the }', text: '' }, 'syntax/closes-nothing');
  }

  private openBlock(i: number, token: Token): boolean {
    if (this.state !== 'header') {
      this.levels.push('left out');
      this.drop(i, 'This { opens nothing: a block begins with its kind and name.');
      return true;
    }
    if (this.levels.length >= DEEPEST_BLOCK) {
      const rest = { from: token.startOffset, to: endOf(this.tokens.at(-1)!) };
      const message = `Blocks stand at most ${DEEPEST_BLOCK} deep in one another; what follows is not read.`;
      this.problems.add({ code: 'syntax/too-deep', message, from: token.startOffset, to: endOf(token) }, rest);
      return false;
    }
    this.levels.push('block');
    this.out.push(token);
    this.state = 'between';
    return true;
  }

  /** A token inside a statement, or one that stands outside of all. */
  private part(i: number, token: Token, kind: string): void {
    if (this.state === 'skipped') return;
    if (kind === 'JUNK' && !(token.image === '=' && this.mendColon(i, token)))
      return junk(this.problems, token, this.reach(i));
    if (kind === 'JUNK') return;
    if (this.brackets.length) return this.inBrackets(i, token, kind);
    if (this.state === 'value' && opensLine(token, this.tokens[i - 1]) && !continuesValue(this.tokens, i))
      this.finish();
    if (this.state === 'value') this.inValue(i, token, kind);
    else if (this.state === 'header') this.inHeader(i, token, kind);
    else if (this.state === 'instruction' && INSTRUCTION_PARTS.has(kind)) this.keep(i, token, kind);
    else this.drop(i, this.misplaced(token, kind));
  }

  private inHeader(i: number, token: Token, kind: string): void {
    const isNamed = this.out.at(-1) !== this.head;
    if (kindOf(this.head!) === 'change' && (isNamed || kind !== 'ID') && kind !== 'KEY')
      this.drop(i, this.misplaced(token, kind));
    else if (HEADER_PARTS.has(kind)) this.keep(i, token, kind);
    else if (kind === ':')
      this.drop(i, 'A block is opened by {, without a colon.', { title: 'Remove the colon', text: '' });
    else if (kind === 'KEY') this.inHeader(i, retype(token, this.types['ID']), 'ID');
    else if (VALUE_OPENERS.has(kind) && this.mendColon(i, token)) this.inValue(i, token, kind);
    else this.drop(i, this.misplaced(token, kind));
  }

  /** `area 34 m2` and `area = 34 m2` are a property whose colon is missing. */
  private mendColon(i: number, token: Token): boolean {
    const { head } = this;
    const last = this.out.at(-1);
    if (this.state !== 'header' || !head || last !== head || kindOf(head) !== 'HEAD' || this.heads.has(head))
      return false;
    const equals = token.image === '=';
    const text = equals ? ': ' : ':';
    const from = endOf(head);
    const to = equals ? endOf(token) : from;
    const message = `A colon is missing behind ${shown(head)}.`;
    const replace = [{ title: 'Write a colon', from, to: equals ? this.blanksBehind(i) : to, text }];
    this.problems.add({ code: 'syntax/missing', message, from: head.startOffset, to: endOf(head), replace });
    retype(head, this.types['KEY']);
    this.out.push(mark(this.types[':'], '', head));
    this.state = 'value';
    return true;
  }

  private blanksBehind(i: number): number {
    const token = this.tokens[i];
    const next = this.tokens[i + 1];
    return next && !opensLine(next, token) ? next.startOffset : endOf(token);
  }

  private inValue(i: number, token: Token, kind: string): void {
    if (kind === '(' || kind === '[') return this.openBracket(i, token, kind);
    if (kind === ')' || kind === ']') return this.closeBracket(i, token, kind);
    if (kind === 'NUMBER' && kindOf(this.out.at(-1)!) === 'UNIT') {
      compound(this.problems, [this.out.at(-2), this.out.at(-1), token, this.tokens[i + 1]]);
    }
    if (OPERATORS.has(kind) && ++this.operators > MOST_OPERATORS) return this.tooLong(token);
    this.keep(i, token, kind);
  }

  private inBrackets(i: number, token: Token, kind: string): void {
    const role = this.brackets.at(-1)!.role;
    if (kind === ')' || kind === ']') return this.closeBracket(i, token, kind);
    if (kind === ':') return this.drop(i, 'A colon stands behind the name of a property only.');
    if (kind === 'KEY') kind = kindOf(retype(token, this.types['ID']));
    if (role === 'rows') return this.inRow(i, token, kind);
    if (role === 'head' || role === 'file-head') return this.inHead(i, token, kind);
    this.inValue(i, token, kind);
  }

  private inHead(i: number, token: Token, kind: string): void {
    const before = kindOf(this.out.at(-1)!);
    const begins = before === '(' || before === ',';
    const fits =
      (kind === 'ID' && begins) ||
      (kind === 'STRING' && before === 'ID') ||
      (kind === 'UNIT' && (before === 'ID' || before === 'STRING')) ||
      kind === ',';
    if (fits) this.out.push(token);
    else this.drop(i, 'Here stand the names of the columns, each with its unit, separated by commas.');
  }

  private inRow(i: number, token: Token, kind: string): void {
    const previous = this.tokens[i - 1];
    if (opensLine(token, previous) || this.out.at(-1) === this.brackets.at(-1)!.token) {
      this.out.push(mark(this.types['ROW'], '', previous));
    }
    const isWord = /^[A-Za-z][A-Za-z0-9-]*$/.test(token.image);
    if (CELLS.has(kind)) this.out.push(token);
    else if (kind === 'MINUS') this.out.push(this.isSign(i, token) ? token : retype(token, this.types['UNKNOWN']));
    else if (kind === ',')
      this.drop(i, 'The cells of a row are separated by blanks.', { title: 'Write a blank', text: ' ' });
    else if (isWord && kind !== 'BOUND') this.out.push(retype(token, this.types['ID']));
    else if (kind === 'UNIT')
      this.drop(i, 'A unit stands once, in the head of its column.', undefined, 'syntax/unit-place');
    else this.drop(i, 'In a table stand numbers, dates, times, texts and names, or - for what is not known.');
  }

  private isSign(i: number, token: Token): boolean {
    const next = this.tokens[i + 1];
    return next !== undefined && kindOf(next) === 'NUMBER' && next.startOffset === endOf(token);
  }

  private openBracket(i: number, token: Token, kind: string): void {
    if (this.brackets.length >= DEEPEST_BRACKET) {
      const message = `Brackets stand at most ${DEEPEST_BRACKET} deep in one another.`;
      return this.skip(token, 'syntax/too-deep', message);
    }
    this.brackets.push({ token, role: this.roleOf(i, kind) });
    this.out.push(token);
  }

  private roleOf(i: number, kind: string): Role {
    const before = this.out.at(-1);
    const beforeKind = before ? kindOf(before) : '';
    if (kind === '[') return beforeKind === 'table' || (beforeKind === ')' && this.closedHead) ? 'rows' : 'list';
    if (beforeKind === 'table') return 'head';
    return beforeKind === 'STRING' && i > 1 && kindOf(this.tokens[i - 2]) === 'ID' ? 'file-head' : 'group';
  }

  private closeBracket(i: number, token: Token, kind: string): void {
    const opening = kind === ')' ? '(' : '[';
    const at = this.brackets.findLastIndex(bracket => kindOf(bracket.token) === opening);
    if (at < 0)
      return this.drop(
        i,
        `This ${kind} closes nothing.`,
        { title: `Remove the ${kind}`, text: '' },
        'syntax/closes-nothing',
      );
    this.closeTo(at + 1);
    this.closedHead = this.brackets.pop()!.role === 'head';
    this.out.push(token);
  }

  /** Closes all brackets but the first `count`. */
  private closeTo(count: number): void {
    while (this.brackets.length > count) {
      const { token, role } = this.brackets.pop()!;
      const last = this.out.at(-1)!;
      const closing = kindOf(token) === '(' ? ')' : ']';
      this.out.push(mark(this.types[closing], '', last));
      const replace = [{ title: `Write ${closing}`, from: endOf(last), to: endOf(last), text: closing }];
      const message = `This ${kindOf(token)} is not closed: a ${closing} is missing.`;
      this.problems.add({ code: 'syntax/not-closed', message, from: token.startOffset, to: endOf(token), replace });
      this.closedHead = role === 'head';
    }
  }

  /** Ends the present statement: closes its brackets and marks its end. */
  private finish(): void {
    if (this.state === 'between') return;
    this.closeTo(0);
    const last = this.out.at(-1)!;
    if (this.state === 'value' && kindOf(last) === ':' && this.head) this.tellMissingValue(this.head, last);
    if (this.state !== 'skipped' || this.head) this.out.push(mark(this.types['END'], '', last));
    this.state = 'between';
    this.head = undefined;
  }

  private keep(i: number, token: Token, kind: string): void {
    this.out.push(token);
    this.want(i, token, kind);
  }

  /** Tells a keyword that lacks what must stand behind it. */
  private want(i: number, token: Token, kind: string): void {
    const wanted = WANTED[kind];
    if (!wanted || this.brackets.length) return;
    const next = this.tokens[i + 1];
    if (next && kindOf(next) === wanted.kind && !(wanted.kind === 'ID' && opensLine(next, token))) return;
    const place = { from: token.startOffset, to: endOf(token) };
    this.problems.add({
      code: 'syntax/missing',
      message: `Behind ${token.image} ${wanted.what} is missing.`,
      ...place,
    });
  }

  private drop(
    i: number,
    message: string,
    mend?: { title: string; text: string },
    code: SyntaxCode = 'syntax/unexpected',
  ): void {
    const token = this.tokens[i];
    const place = { from: token.startOffset, to: endOf(token) };
    const replace: Replacement[] = mend ? [{ ...mend, ...place }] : [];
    this.problems.add({ code, message, ...place, ...(mend ? { replace } : {}) }, this.reach(i));
  }

  /** A token that is left out makes doubtful what it touches: the token before it on its line, else the one behind it. */
  private reach(i: number): Span {
    const token = this.tokens[i];
    const previous = this.tokens[i - 1];
    const next = this.tokens[i + 1];
    if (previous && !opensLine(token, previous)) return { from: previous.startOffset, to: endOf(token) };
    return { from: token.startOffset, to: next && !opensLine(next, token) ? endOf(next) : endOf(token) };
  }

  private tooLong(token: Token): void {
    this.skip(
      token,
      'syntax/too-long',
      `A calculation has at most ${MOST_OPERATORS} operators; divide it into several properties.`,
    );
  }

  /** Leaves out the rest of the present statement. */
  private skip(token: Token, code: SyntaxCode, message: string): void {
    this.problems.add(
      { code, message, from: token.startOffset, to: endOf(token) },
      { from: this.head!.startOffset, to: endOf(token) },
    );
    this.brackets.length = 0;
    this.state = 'skipped';
  }

  private nestedImport(token: Token): void {
    const message = 'An import stands at the top of the file, outside of all blocks.';
    this.problems.add({ code: 'syntax/import-place', message, from: token.startOffset, to: endOf(token) });
    this.state = 'skipped';
    this.head = undefined;
  }

  private tellSeparator(token: Token, previous: Token): void {
    const replace = [{ title: 'Write a comma', from: endOf(previous), to: endOf(previous), text: ',' }];
    const message = `A comma or a new line is missing before ${shown(token)}.`;
    this.problems.add(
      { code: 'syntax/separator', message, from: token.startOffset, to: endOf(token), replace },
      'none',
    );
  }

  private tellMissingValue(key: Token, colon: Token): void {
    const to = colon.image ? endOf(colon) : endOf(key);
    this.problems.add({
      code: 'syntax/missing',
      message: `${shown(key)} has no value yet.`,
      from: key.startOffset,
      to,
    });
  }

  private misplaced(token: Token, kind: string): string {
    if (kind === 'STRING') return 'This text does not belong here.';
    if (this.state === 'between') return `${shown(token)} does not belong here: a member begins with a name.`;
    return `${shown(token)} does not belong here.`;
  }
}

const CELLS: ReadonlySet<string> = new Set(['NUMBER', 'DATE', 'TIME', 'STRING', 'ID']);
const INSTRUCTION_PARTS: ReadonlySet<string> = new Set(['ID', '/', 'STRING', 'DATE', 'because', 'until']);
const VALUE_OPENERS: ReadonlySet<string> = new Set(['NUMBER', 'TIME', 'DATE', 'BOUND', 'MINUS', '[', '(', 'table']);

const NAME = { kind: 'ID', what: 'a name' };
/** What must stand behind a keyword. */
const WANTED: Readonly<Record<string, { readonly kind: string; readonly what: string }>> = {
  like: NAME,
  from: NAME,
  in: NAME,
  change: NAME,
  remove: NAME,
  add: { kind: 'ID', what: 'the kind of the block' },
  accept: { kind: 'ID', what: 'the code of a finding' },
  import: { kind: 'STRING', what: 'the path of a file in quotation marks' },
  because: { kind: 'STRING', what: 'the reason in quotation marks' },
  until: { kind: 'DATE', what: 'a date' },
};
