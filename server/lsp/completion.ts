import {
  CompletionItemKind,
  InsertTextFormat,
  MarkupKind,
  type CompletionItem,
  type CompletionList,
  type CompletionParams,
} from 'vscode-languageserver';
import { proposalsAt, type Proposal } from '../../language/index.js';
import type { Able, Seen } from './feature.js';

const KIND: Record<Proposal['kind'], CompletionItemKind> = {
  block: CompletionItemKind.Class,
  property: CompletionItemKind.Property,
  name: CompletionItemKind.Variable,
  choice: CompletionItemKind.EnumMember,
  value: CompletionItemKind.Value,
  unit: CompletionItemKind.Unit,
  result: CompletionItemKind.Constant,
  code: CompletionItemKind.Event,
  word: CompletionItemKind.Keyword,
  source: CompletionItemKind.Reference,
  file: CompletionItemKind.File,
};

export async function completion(
  seen: Seen,
  { position, context }: CompletionParams,
  able: Able,
): Promise<CompletionList> {
  const { analysis, lines, houses } = seen;
  const beside = await houses.libraries();
  const { from, to, list, isAwaited } = proposalsAt(analysis, lines.offset(position), houses.today(), beside);
  if (context?.triggerCharacter === ' ' && !isAwaited) return { isIncomplete: false, items: [] };
  const range = lines.range({ from, to });
  const items = list.map((p): CompletionItem => {
    const isSnippet = able.snippets && p.snippet !== undefined;
    return {
      label: p.label,
      kind: KIND[p.kind],
      ...(p.detail ? { detail: p.detail } : {}),
      ...(p.doc ? { documentation: { kind: MarkupKind.Markdown, value: p.doc } } : {}),
      ...(p.also ? { filterText: [p.label, ...p.also].join(' ') } : {}),
      sortText: sortText(p.rank),
      insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
      textEdit: { range, newText: isSnippet ? p.snippet : p.insert },
      ...(p.extra ? { additionalTextEdits: p.extra.map(c => ({ range: lines.range(c), newText: c.text })) } : {}),
    };
  });
  return { isIncomplete: false, items };
}

const sortText = (rank: number): string => rank.toFixed(3).padStart(8, '0');
