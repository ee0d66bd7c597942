import {
  FoldingRangeKind,
  SymbolKind,
  type DocumentLink,
  type DocumentSymbol,
  type FoldingRange,
  type SelectionRange,
  type SelectionRangeParams,
  type SymbolInformation,
} from 'vscode-languageserver';
import type { Declared, Instruction } from '../../language/build/index.js';
import { filesNamed, resolvePath } from '../../language/build/index.js';
import { rangeOf, rangeOfProperty } from '../../language/grammar/index.js';
import { pointedAt } from '../../language/index.js';
import { blocks } from '../../language/vocabulary/index.js';
import type { Seen } from './feature.js';
import type { Houses } from './houses.js';
import { Lines } from './lines.js';

/** The blocks of a file with what stages do, nested as written. */
export function documentSymbols({ analysis, lines }: Seen): DocumentSymbol[] {
  return analysis.file.declared.blocks.map(b => symbol(b, lines));
}

function symbol(b: Declared, lines: Lines, detail = b.title ?? ''): DocumentSymbol {
  const children = b.children.filter(c => !c.implicit).map(c => symbol(c, lines));
  for (const i of b.instructions) {
    const done = instructionSymbol(i, lines);
    if (done) children.push(done);
  }
  children.sort((x, y) => x.range.start.line - y.range.start.line || x.range.start.character - y.range.start.character);
  return {
    name: (b.named ? `${b.kind} ${b.name}` : b.kind) || 'block',
    detail,
    kind: kindOf(b),
    range: lines.range(b.span),
    selectionRange: lines.range(b.head),
    children,
  };
}

function instructionSymbol(i: Instruction, lines: Lines): DocumentSymbol | undefined {
  if (i.block) return symbol(i.block, lines, 'added');
  const name = i.target ?? i.code;
  if (!name) return undefined;
  return {
    name: `${i.does} ${name.name}`,
    detail: i.reason ?? '',
    kind: SymbolKind.Event,
    range: lines.range(i.span),
    selectionRange: lines.range(name.span),
  };
}

function kindOf({ kind }: Declared): SymbolKind {
  if (kind === 'house') return SymbolKind.Class;
  if (kind === 'stage') return SymbolKind.Event;
  if (kind === 'source') return SymbolKind.Key;
  return blocks.get(kind)?.section ? SymbolKind.Namespace : SymbolKind.Object;
}

/** Named blocks of the workspace whose name or title holds all the words. */
export async function workspaceSymbols(houses: Houses, query: string): Promise<SymbolInformation[]> {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const found: SymbolInformation[] = [];
  for (const uri of await houses.all()) {
    const file = await houses.session.load(uri);
    if (!file) continue;
    const lines = new Lines(file.syntax.text);
    const walk = (b: Declared, container: string): void => {
      const text = `${b.kind} ${b.name} ${b.title ?? ''}`.toLowerCase();
      if (b.named && !b.implicit && words.every(w => text.includes(w)))
        found.push({
          name: b.name,
          kind: kindOf(b),
          containerName: [b.kind, container].filter(Boolean).join(' in '),
          location: { uri: houses.shown(uri), range: lines.range(b.head) },
        });
      for (const c of [...b.children, ...b.instructions.flatMap(i => i.block ?? [])]) walk(c, b.name);
    };
    for (const b of file.declared.blocks) walk(b, '');
  }
  return found.slice(0, 500);
}

/** Blocks, tables and comments of several lines. */
export function foldingRanges({ analysis, lines }: Seen): FoldingRange[] {
  const { tokens, comments } = analysis.file.syntax;
  const ranges: FoldingRange[] = [];
  const add = (from: number, to: number, kind?: FoldingRangeKind): void => {
    const startLine = lines.position(from).line;
    const endLine = lines.position(to).line - (kind ? 0 : 1);
    if (endLine > startLine) ranges.push({ startLine, endLine, ...(kind ? { kind } : {}) });
  };
  const open: number[] = [];
  for (const { image, startOffset } of tokens) {
    if (image === '{' || image === '[') open.push(startOffset);
    else if (image === '}' || image === ']') {
      const from = open.pop();
      if (from !== undefined) add(from, startOffset);
    }
  }
  let run: { from: number; to: number; line: number } | undefined;
  for (const { image, startOffset } of comments) {
    const line = lines.position(startOffset).line;
    const to = startOffset + image.length;
    if (image.startsWith('/*')) add(startOffset, to, FoldingRangeKind.Comment);
    else if (run && line === run.line + 1) run = { ...run, to, line };
    else {
      if (run) add(run.from, run.to, FoldingRangeKind.Comment);
      run = { from: startOffset, to, line };
    }
  }
  if (run) add(run.from, run.to, FoldingRangeKind.Comment);
  const { imports } = analysis.file.declared;
  if (imports.length > 1) add(imports[0].span.from, imports.at(-1)!.span.to, FoldingRangeKind.Imports);
  return ranges;
}

/** From the word to its property, its block, the blocks around it and the file. */
export function selectionRanges({ analysis, lines }: Seen, { positions }: SelectionRangeParams): SelectionRange[] {
  const { text, tokens } = analysis.file.syntax;
  return positions.map(position => {
    const offset = lines.offset(position);
    const pointed = pointedAt(analysis, offset);
    const token = tokens.find(t => t.startOffset <= offset && offset <= t.startOffset + t.image.length);
    const spans = [
      { from: 0, to: text.length },
      ...(pointed?.chain.map(b => b.span) ?? []),
      ...(pointed?.instruction ? [pointed.instruction.span] : []),
      ...(pointed?.property ? [pointed.property.span, pointed.span] : []),
      ...(token ? [{ from: token.startOffset, to: token.startOffset + token.image.length }] : []),
    ];
    let range: SelectionRange = { range: lines.range(spans[0]) };
    for (const [i, span] of spans.entries()) {
      const outer = spans[Math.max(0, i - 1)];
      if (span.from >= outer.from && span.to <= outer.to && span.to - span.from < outer.to - outer.from)
        range = { range: lines.range(span), parent: range };
    }
    return range;
  });
}

/** Imports and the files named in values, as far as they lie in the workspace. */
export function documentLinks({ analysis, lines, houses }: Seen): DocumentLink[] {
  const { declared, syntax, uri } = analysis.file;
  const links: DocumentLink[] = [];
  for (const { span, target } of declared.imports)
    if (target !== undefined) links.push({ range: lines.range(inQuotes(span)), target: houses.shown(target) });
  for (const node of filesNamed(syntax.file)) {
    const target = resolvePath(node.path, uri, houses.roots());
    if (target !== undefined)
      links.push({ range: lines.range(inQuotes(rangeOfProperty(node, 'path') ?? rangeOf(node))), target });
  }
  return links;
}

const inQuotes = ({ from, to }: { from: number; to: number }) => ({ from: from + 1, to: Math.max(from + 1, to - 1) });
