import { SemanticTokensBuilder, type SemanticTokens, type SemanticTokensLegend } from 'vscode-languageserver';
import type { Declared } from '../../language/build/index.js';
import { mentionsIn } from '../../language/index.js';
import { LIBRARY_SCHEME } from '../../language/library/index.js';
import { blocks, type Property } from '../../language/vocabulary/index.js';
import type { Seen } from './feature.js';

/** What only the meaning tells: kinds, properties, names by what they stand for, choices. Numbers and comments are coloured by the editor's grammar. */
export const LEGEND = {
  tokenTypes: ['type', 'property', 'variable', 'enumMember', 'namespace'],
  tokenModifiers: ['declaration', 'defaultLibrary'],
} satisfies SemanticTokensLegend;

type Type = 'type' | 'property' | 'variable' | 'enumMember' | 'namespace';
const DECLARATION = 1;
const LIBRARY = 2;

interface Coloured {
  readonly from: number;
  readonly to: number;
  readonly type: Type;
  readonly modifiers: number;
}

export function semanticTokens({ analysis, lines }: Seen): SemanticTokens {
  const coloured: Coloured[] = [];
  for (const b of analysis.file.declared.blocks) ofBlock(b, coloured);
  for (const { span, target, isDeclaration } of mentionsIn(analysis)) {
    if (!target) continue;
    const type = target.kind === 'stage' || target.kind === 'source' ? 'namespace' : 'variable';
    const built = target.uri.startsWith(LIBRARY_SCHEME) ? LIBRARY : 0;
    coloured.push({ ...span, type, modifiers: (isDeclaration ? DECLARATION : 0) + built });
  }
  const builder = new SemanticTokensBuilder();
  let end = -1;
  for (const { from, to, type, modifiers } of coloured.sort((a, b) => a.from - b.from || b.to - a.to)) {
    if (from < end || to <= from) continue; // Of two at one place the longer counts: tokens may not overlap.
    end = to;
    const { line, character } = lines.position(from);
    builder.push(line, character, to - from, LEGEND.tokenTypes.indexOf(type), modifiers);
  }
  return builder.build();
}

function ofBlock(b: Declared, into: Coloured[]): void {
  if (b.implicit) return;
  const type = blocks.get(b.kind);
  if (type) into.push({ ...b.kindSpan, type: 'type', modifiers: 0 });
  ofProperties(b.properties, type?.properties ?? {}, into);
  for (const child of b.children) ofBlock(child, into);
  for (const i of b.instructions) {
    if (i.block) ofBlock(i.block, into);
    if (i.code) into.push({ ...i.code.span, type: 'enumMember', modifiers: 0 });
    if (i.properties) ofProperties(i.properties, {}, into);
  }
}

/** Values that are one word with a meaning of its own; a reference is one where it is a word that stands for itself. */
const WORDS = new Set<Property['is']>(['choice', 'flag', 'currency', 'month-day', 'reference']);

function ofProperties(
  given: Declared['properties'],
  types: Readonly<Record<string, Property>>,
  into: Coloured[],
): void {
  for (const { key, keySpan, valueSpan, value } of given.values()) {
    // A result of a block carries its name, which has a colour of its own.
    const dot = types[key] ? -1 : key.lastIndexOf('.');
    into.push({ from: keySpan.from + dot + 1, to: keySpan.to, type: 'property', modifiers: 0 });
    if (value.is === 'value' && WORDS.has(types[key]?.is))
      into.push({ ...valueSpan, type: 'enumMember', modifiers: 0 });
  }
}
