/** How far a string or comment reaches, and whether its end was written. */
export interface Reach {
  readonly end: number;
  readonly closed: boolean;
}

const STRING = /"(?:\\[^\n\r]|[^"\\\n\r])*/y;
/**
 * Where an unclosed string most likely ends: before a brace that opens or closes a block, or before the next member. Without
 * any of these it takes the rest of its line, never more.
 */
const STRING_CUT = /\s*\{\s*(?:$|\}|\/\/|[A-Za-z][\w.-]*\s*:)|\s*,\s*[A-Za-z][\w.-]*\s*:|\s*\}[\s}]*(?:\/\/.*)?$/;
/** Longest stretch searched for the likely end of an unclosed string. */
const CUT_WITHIN = 2000;

/**
 * How far a string reaches. Where the quotation marks of a line do not pair up, the one glued to a word, opening the line or before a blank stands alone, and a
 * string that would take a brace or a member along ends before it: the others of the line keep their pairs.
 */
export function stringReach(text: string, offset: number, odd: boolean, alone: boolean): Reach {
  if (odd && (alone || /\s/.test(text.charAt(offset + 1)))) return { end: offset + 1, closed: false };
  STRING.lastIndex = offset;
  const body = STRING.exec(text)?.[0] ?? '"';
  const end = offset + body.length;
  const closed = text[end] === '"';
  if (closed && !odd) return { end: end + 1, closed };
  const cut = STRING_CUT.exec(body.slice(0, CUT_WITHIN))?.index;
  if (cut) return { end: offset + cut, closed: false };
  return closed ? { end: end + 1, closed } : { end: offset + body.trimEnd().length, closed };
}

export function hasOddQuotes(text: string, offset: number): boolean {
  const line = text.slice(offset, endOfLine(text, offset));
  return (line.match(/\\[^]|"/g) ?? []).filter(quote => quote === '"').length % 2 === 1;
}

/** A star comment that opens at the start of a line or behind a blank; a path with stars in a comment opens nothing. */
const OPENING = /(?<![^\s])\/\*/g;
const STARRED_LINE = /(?:\r\n|\n|\r)[ \t]*\*[^\n\r]*/y;

/** Finds the ends of star comments. It searches every stretch of the text once, however many comments stay open. */
export class CommentOpenings {
  private closing = -1;
  private opening = -1;

  constructor(private readonly text: string) {}

  /**
   * How far the comment at `offset` reaches. One that is not closed before the next one opens, or before the end of the
   * text, ends with its line, or with the lines below that begin with a star: the rest of the file keeps its meaning.
   */
  reach(offset: number): Reach {
    const begin = offset + 2;
    if (this.closing < begin) this.closing = orEnd(this.text.indexOf('*/', begin));
    if (this.opening < begin) {
      OPENING.lastIndex = begin;
      this.opening = orEnd(OPENING.exec(this.text)?.index ?? -1);
    }
    if (this.closing < this.opening) return { end: this.closing + 2, closed: true };
    let end = endOfLine(this.text, offset);
    for (let line = starredLine(this.text, end); line; line = starredLine(this.text, end)) end += line.length;
    return { end, closed: false };
  }
}

const orEnd = (index: number): number => (index < 0 ? Infinity : index);

function starredLine(text: string, offset: number): string | undefined {
  STARRED_LINE.lastIndex = offset;
  return STARRED_LINE.exec(text)?.[0];
}

export function endOfLine(text: string, offset: number): number {
  const end = /[\n\r]|$/g;
  end.lastIndex = offset;
  return end.exec(text)?.index ?? text.length;
}
