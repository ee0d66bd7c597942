import type { File } from './generated/ast.js';
import { markMembers } from './members.js';
import { expectation } from './messages.js';
import { Problems, type Span, type SyntaxProblem } from './problems.js';
import { scan } from './scanner.js';
import { createParser, type HouseParser } from './services.js';
import type { Token } from './tokens.js';

/** Files larger than this, in UTF-16 units, are not read. */
export const LARGEST_FILE = 4_000_000;

/** What a text says as far as its writing goes. */
export interface Syntax {
  readonly text: string;
  readonly file: File;
  readonly problems: readonly SyntaxProblem[];
  /** Tokens as they stand in the text, without comments, in order. */
  readonly tokens: readonly Token[];
  readonly comments: readonly Token[];
  /** The tokens as the parser read them: mended, with the marks of the passes. */
  readonly marked: readonly Token[];
  /** Where the meaning of the text is doubtful: sorted, none touching another. */
  readonly damage: readonly Span[];
}

let parser: HouseParser | undefined;
const syntaxOf = new WeakMap<File, Syntax>();

/** Reads a text. It never throws: what cannot be read is a problem at its place. */
export function parse(text: string): Syntax {
  try {
    parser ??= createParser();
    return remember(text.length > LARGEST_FILE ? tooLarge(text) : read(text, parser));
  } catch (fault) {
    parser = undefined; // A parser that threw may keep a part of its state: it is never used again.
    return remember(internalFault(text, fault));
  }
}

/** The syntax that a file node came from. */
export function syntaxOfFile(file: File): Syntax {
  const syntax = syntaxOf.get(file);
  if (!syntax) throw new TypeError('This node was not made by parse().');
  return syntax;
}

function remember(syntax: Syntax): Syntax {
  syntaxOf.set(syntax.file, syntax);
  return syntax;
}

function read(text: string, parser: HouseParser): Syntax {
  const problems = new Problems();
  const { tokens, comments } = scan(text, parser.types, problems);
  const marked = markMembers(tokens, parser.types, problems);
  const { value, parserErrors } = parser.parse(text, marked);
  for (const error of parserErrors) expectation(problems, error);
  const file = value as File;
  return { text, file, tokens, comments, marked, problems: problems.sorted(), damage: merged(problems.damage) };
}

function tooLarge(text: string): Syntax {
  const message = `The file is larger than ${LARGEST_FILE / 1e6} million characters and is not read.`;
  return unread(text, { code: 'syntax/too-large', message, from: 0, to: 1 });
}

function internalFault(text: string, fault: unknown): Syntax {
  const message = `The file could not be read because of a fault in the reader (${fault instanceof Error ? fault.message : String(fault)}).`;
  return unread(text, { code: 'syntax/internal', message, from: 0, to: Math.min(1, text.length) });
}

function unread(text: string, problem: SyntaxProblem): Syntax {
  const file: File = { $type: 'File', imports: [], members: [] };
  return {
    text,
    file,
    tokens: [],
    comments: [],
    marked: [],
    problems: [problem],
    damage: [{ from: 0, to: text.length }],
  };
}

function merged(spans: readonly Span[]): Span[] {
  const out: { from: number; to: number }[] = [];
  for (const { from, to } of spans.toSorted((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last && from <= last.to) last.to = Math.max(last.to, to);
    else out.push({ from, to });
  }
  return out;
}
