/** Text in the cells of a terminal: how wide it is, where it breaks, and what of it must not reach the screen. */

const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;
const MARK = /\p{M}|[\u200b\u200d\ufe00-\ufe0f]/u;
/** Control characters, and those that turn the direction of writing: a file must not be able to steer the terminal. */
const STEERING = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** One line as it may be shown: a tab is two spaces, whatever could steer the terminal is a replacement character. */
export const visible = (line: string): string => line.replaceAll('\t', '  ').replace(STEERING, '\ufffd');

/** Cells that a text takes on the screen. */
export function cells(text: string): number {
  let width = 0;
  for (const c of text) width += c < '\u0300' ? 1 : MARK.test(c) ? 0 : WIDE.test(c) ? 2 : 1;
  return width;
}

export const padEnd = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - cells(text)));
export const padStart = (text: string, width: number): string => ' '.repeat(Math.max(0, width - cells(text))) + text;

/** Between a number and its unit no line breaks. */
const BEFORE_UNIT = /(?<=\d) (?=(?:°[CF]|%|[AVWK]|k[WV]A?|kWh|m[23]|ft2|L\/s|cfm|BTU\/h|AWG)(?![\w-]))/g;

/** Lines of at most `width` cells, broken between words; a word that is longer than a line is broken within. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const glued of text.replace(BEFORE_UNIT, '\u00a0').split(/[ \n]+/)) {
    const word = glued.replaceAll('\u00a0', ' ');
    if (line && cells(line) + 1 + cells(word) > width) {
      lines.push(line);
      line = '';
    }
    line = line ? `${line} ${word}` : word;
    while (cells(line) > width) {
      const head = startOf(line, width);
      lines.push(head);
      line = line.slice(head.length);
    }
  }
  return line || !lines.length ? [...lines, line] : lines;
}

/** As much of the beginning of a text as fits; at least one character. */
export function startOf(text: string, width: number): string {
  let head = '';
  let taken = 0;
  for (const c of text) {
    taken += cells(c);
    if (head && taken > width) break;
    head += c;
  }
  return head;
}

/** The text, or its beginning and a mark that it goes on. */
export const cut = (text: string, width: number): string =>
  cells(text) <= width ? text : `${startOf(text, width - 1)}…`;
