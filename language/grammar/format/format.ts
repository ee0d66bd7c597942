import { parse, type Syntax } from '../parse.js';
import type { Span, TextChange } from '../problems.js';
import { kindOf, type Token } from '../tokens.js';
import { alignedCells } from './columns.js';
import { gap } from './gap.js';
import { type Piece, pieces } from './piece.js';

const INDENT = '  ';
/** Blank lines that may follow one another. */
const BLANK_LINES = 1;

/**
 * The changes that set a text in order: indentation, single blanks, aligned tables. The author's lines stay lines. A line with
 * a syntax problem stays as it is, and so does every line outside of `range`. The tokens are the same before and after.
 */
export function format(text: string, range?: Span): TextChange[] {
  const syntax = parse(text);
  if (!syntax.marked.length && !syntax.comments.length) return [];
  if (syntax.problems.some(({ code }) => UNREAD.has(code))) return [];
  const changes = layout(syntax).filter(({ from, to }) => !range || (from <= range.to && to >= range.from));
  return sameTokens(syntax, parse(applied(text, changes))) ? changes : [];
}

const UNREAD: ReadonlySet<string> = new Set([
  'syntax/too-long',
  'syntax/too-large',
  'syntax/too-many',
  'syntax/internal',
]);

/** A text after changes that are sorted and do not overlap. */
export function applied(text: string, changes: readonly TextChange[]): string {
  let out = '';
  let at = 0;
  for (const change of changes) {
    out += text.slice(at, change.from) + change.text;
    at = change.to;
  }
  return out + text.slice(at);
}

function layout(syntax: Syntax): TextChange[] {
  const { text } = syntax;
  const damaged = damagedLines(syntax);
  const isWhole = hasWholeBraces(syntax);
  const lines = byLine(pieces(syntax));
  const cells = alignedCells(isWhole ? lines.filter(line => !damaged.has(line[0].line)) : []);
  const changes: TextChange[] = [];
  const set = (from: number, to: number, wanted: string): void => {
    if (text.slice(from, to) !== wanted) changes.push({ from, to, text: wanted });
  };
  let end = 0;
  let last: Piece | undefined;
  for (const line of lines) {
    const first = line[0];
    const free = !damaged.has(first.line) && !(last && damaged.has(last.token.endLine!));
    if (last && last.token.endLine === first.line) {
      if (free) set(last.to, first.from, ' ');
    } else {
      const start = lineStart(text, first.from, end);
      if (free) set(end, start, breaks(text.slice(end, start), !last));
      if (isWhole && !damaged.has(first.line))
        set(start, first.from, INDENT.repeat(first.level) + ' '.repeat(cells.get(first) ?? 0));
    }
    for (let i = 1; i < line.length; i++) {
      const [before, next] = [line[i - 1], line[i]];
      const written = text.slice(before.to, next.from);
      const blanks = cells.get(next);
      if (damaged.has(next.line) || (!isWhole && next.table)) continue;
      set(before.to, next.from, blanks === undefined ? gap(before, next, line[i - 2], written) : ' '.repeat(blanks));
    }
    last = line.at(-1);
    end = last!.to;
  }
  if (last && !damaged.has(last.token.endLine!)) set(end, text.length, ending(text, end));
  return changes;
}

/** The line breaks between two lines: the author's, but not too many blank ones, and none at the top. */
function breaks(written: string, isTop: boolean): string {
  if (isTop) return written.startsWith('\ufeff') ? '\ufeff' : '';
  const ends = written.match(/\r\n|\n|\r/g) ?? [];
  return ends.slice(0, BLANK_LINES + 1).join('');
}

/** The line break that ends a text: the one that stands there, else the one before it. */
function ending(text: string, end: number): string {
  const written = /\r\n|\n|\r/.exec(text.slice(end))?.[0];
  return (
    written ??
    text
      .slice(0, end)
      .match(/\r\n|\n|\r/g)
      ?.at(-1) ??
    '\n'
  );
}

function lineStart(text: string, offset: number, least: number): number {
  let start = offset;
  while (start > least && text[start - 1] !== '\n' && text[start - 1] !== '\r') start--;
  return start;
}

function byLine(all: readonly Piece[]): Piece[][] {
  const lines: Piece[][] = [];
  for (const piece of all) {
    const line = lines.at(-1);
    if (line?.[0]?.line === piece.line) line.push(piece);
    else lines.push([piece]);
  }
  return lines;
}

/**
 * True when no brace was put in or left out. Where one was, the indentation told which, so it stays as the author left it:
 * set anew it might tell another story.
 */
function hasWholeBraces({ marked, tokens }: Syntax): boolean {
  const isBrace = ({ image }: Token) => image === '{' || image === '}';
  const kept = marked.filter(token => ['{', '}'].includes(kindOf(token)));
  return kept.every(isBrace) && kept.length === tokens.filter(isBrace).length;
}

/** The lines that a problem or a damaged stretch touches. */
function damagedLines({ text, problems, damage }: Syntax): Set<number> {
  const starts = [0, ...Array.from(text.matchAll(/\r\n|\n|\r/g), end => end.index + end[0].length)];
  const lineOf = (offset: number): number => {
    let low = 0;
    let high = starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle] <= offset) low = middle;
      else high = middle;
    }
    return low + 1;
  };
  const damaged = new Set<number>();
  for (const { from, to } of [...problems, ...damage]) {
    for (let line = lineOf(from); line <= lineOf(to); line++) damaged.add(line);
  }
  return damaged;
}

function sameTokens(a: Syntax, b: Syntax): boolean {
  const same = (x: Token, y: Token | undefined) => y !== undefined && kindOf(x) === kindOf(y) && x.image === y.image;
  const sameComment = (x: Token, y: Token | undefined) => x.image.trimEnd() === y?.image.trimEnd();
  return (
    a.tokens.length === b.tokens.length &&
    a.comments.length === b.comments.length &&
    a.tokens.every((token, i) => same(token, b.tokens[i])) &&
    a.comments.every((comment, i) => sameComment(comment, b.comments[i]))
  );
}
