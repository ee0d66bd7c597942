import type {
  DocumentFormattingParams,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  TextEdit,
} from 'vscode-languageserver';
import { format } from '../../language/grammar/index.js';
import type { Seen } from './feature.js';

export const formatting = (seen: Seen, _: DocumentFormattingParams): TextEdit[] => edits(seen);

export const rangeFormatting = (seen: Seen, { range }: DocumentRangeFormattingParams): TextEdit[] =>
  edits(seen, seen.lines.span(range));

/** Behind a closing brace its own line is set in order; behind a line break the line that was left. */
export function onTypeFormatting(seen: Seen, { position, ch }: DocumentOnTypeFormattingParams): TextEdit[] {
  const line = ch === '\n' ? position.line - 1 : position.line;
  if (line < 0) return [];
  const start = seen.lines.offset({ line, character: 0 });
  const end = seen.lines.offset({ line, character: Number.MAX_SAFE_INTEGER });
  return edits(seen, { from: start, to: end });
}

function edits({ analysis, lines }: Seen, within?: { from: number; to: number }): TextEdit[] {
  const changes = format(analysis.file.syntax.text, within);
  return changes
    .filter(c => !within || (c.from >= within.from && c.to <= within.to))
    .map(c => ({ range: lines.range(c), newText: c.text }));
}
