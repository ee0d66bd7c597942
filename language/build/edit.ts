import type { Declared } from './declared.js';
import type { Span } from './problem.js';

export interface FileChange extends Span {
  readonly uri: string;
  readonly text: string;
}

/** A change that writes a property into a block: on the line of a block that stands on one line, else on its own. */
export function insertProperty(b: Declared, property: string): FileChange {
  const { uri, body, layout } = b;
  if (!body || !layout) return { uri, from: b.span.to, to: b.span.to, text: ` { ${property} }` };
  if (layout.oneLine) {
    if (layout.empty) return { uri, from: body.from, to: body.to, text: ` ${property} ` };
    return { uri, from: layout.end, to: layout.end, text: `, ${property}` };
  }
  return { uri, from: layout.end, to: layout.end, text: `\n${layout.indent}  ${property}` };
}

/** A change that writes a block, of one line or several, at the end of another block's body. */
export function insertBlock(parent: Declared, text: string): FileChange {
  const { uri, body, layout } = parent;
  if (!body || !layout) return { uri, from: parent.span.to, to: parent.span.to, text: ` {\n  ${text}\n}` };
  const lines = `\n${layout.indent}  ${text.replaceAll('\n', `\n${layout.indent}  `)}`;
  if (layout.oneLine) return { uri, from: layout.end, to: body.to, text: `${lines}\n${layout.indent}` };
  return { uri, from: layout.end, to: layout.end, text: lines };
}

/** A change that writes a block on the lines before another one. */
export function insertBefore(b: Declared, text: string): FileChange {
  const indent = b.layout?.indent ?? '';
  return { uri: b.uri, from: b.span.from, to: b.span.from, text: `${text.replaceAll('\n', `\n${indent}`)}\n${indent}` };
}
