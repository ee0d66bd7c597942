import type { Span } from './problem.js';

/** How a block is laid out, so that a new member fits the writing around it. */
export interface Layout {
  /** White space before the line on which the block begins. */
  readonly indent: string;
  readonly oneLine: boolean;
  /** Behind the last member, or behind the opening brace of an empty body. */
  readonly end: number;
  readonly empty: boolean;
}

export function layoutOf(text: string, span: Span, body: Span | undefined): Layout | undefined {
  if (!body) return undefined;
  const line = text.lastIndexOf('\n', span.from - 1) + 1;
  const indent = /^[ \t]*/.exec(text.slice(line, span.from))![0];
  const inside = text.slice(body.from, body.to);
  const trimmed = inside.trimEnd();
  return { indent, oneLine: !inside.includes('\n'), end: body.from + trimmed.length, empty: trimmed === '' };
}
