import {
  DocumentHighlightKind,
  ResponseError,
  ErrorCodes,
  type DocumentHighlight,
  type Location,
  type DefinitionParams,
  type DocumentHighlightParams,
  type PrepareRenameParams,
  type ReferenceParams,
  type RenameParams,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { isReservedName, isSame, mentionAt, mentionsIn, pointedAt, type Analysis } from '../../language/index.js';
import type { Declared, FileChange } from '../../language/build/index.js';
import { LIBRARY_SCHEME } from '../../language/library/index.js';
import { editOf } from './code-actions.js';
import type { Able, Seen } from './feature.js';
import type { Houses } from './houses.js';

/** Where the block is written that a name stands for, in this file, an imported one, or the built-in library. */
export async function definition(seen: Seen, { position }: DefinitionParams): Promise<Location[]> {
  const { analysis, lines, houses } = seen;
  const offset = lines.offset(position);
  const pointed = pointedAt(analysis, offset);
  if (pointed?.part === 'import') {
    const target = analysis.file.declared.imports.find(i => i.span === pointed.span)?.target;
    const start = { line: 0, character: 0 };
    return target !== undefined && analysis.files.has(target)
      ? [{ uri: houses.shown(target), range: { start, end: start } }]
      : [];
  }
  const target = mentionAt(analysis, offset)?.target;
  return target ? [await locationOf(target, seen)] : [];
}

async function locationOf(block: Declared, { analysis, lines, houses }: Seen): Promise<Location> {
  const places = block.uri === analysis.uri ? lines : await houses.linesAt(block.uri);
  return { uri: houses.shown(block.uri), range: places.range(block.head) };
}

/** All places that name the block under the cursor, over the files of the workspace when it stands outside of a house. */
export async function references(seen: Seen, { position, context }: ReferenceParams): Promise<Location[]> {
  const target = mentionAt(seen.analysis, seen.lines.offset(position))?.target;
  if (!target) return [];
  const found: Location[] = [];
  for (const { mentions, at } of await mentionsOf(target, seen))
    for (const m of mentions)
      if (context.includeDeclaration || !m.isDeclaration)
        found.push({ uri: at.houses.shown(at.analysis.uri), range: at.lines.range(m.span) });
  return found;
}

export function highlights({ analysis, lines }: Seen, { position }: DocumentHighlightParams): DocumentHighlight[] {
  const target = mentionAt(analysis, lines.offset(position))?.target;
  if (!target) return [];
  return mentionsIn(analysis)
    .filter(m => isSame(m.target, target))
    .map(m => ({
      range: lines.range(m.span),
      kind: m.isDeclaration ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
}

/** The name that would be renamed; null where there is none of its own. */
export function prepareRename(
  { analysis, lines }: Seen,
  { position }: PrepareRenameParams,
): { range: Range; placeholder: string } | null {
  const mention = mentionAt(analysis, lines.offset(position));
  if (!mention?.target || !isRenamable(mention.target)) return null;
  return { range: lines.range(mention.span), placeholder: mention.name };
}

/** An unnamed block is called by its kind, and the built-in library is not the user's to change. */
const isRenamable = (b: Declared): boolean => b.named && !b.uri.startsWith(LIBRARY_SCHEME);

/** Writes a new name in every place that means the block; throws with the reason when the name cannot be. */
export async function rename(
  seen: Seen,
  { position, newName }: RenameParams,
  able: Able,
): Promise<WorkspaceEdit | null> {
  const target = mentionAt(seen.analysis, seen.lines.offset(position))?.target;
  if (!target || !isRenamable(target)) return null;
  if (newName === target.name) return null;
  if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(newName))
    refuse(`"${newName}" is not a name: small letters and digits, joined by single hyphens`);
  if (isReservedName(newName)) refuse(`"${newName}" is a word of the language`);
  const changes: FileChange[] = [];
  for (const { mentions, at } of await mentionsOf(target, seen)) {
    if (isTaken(newName, target, at.analysis)) refuse(`"${newName}" is already the name of another ${target.kind}`);
    for (const { span } of mentions) changes.push({ uri: at.analysis.uri, ...span, text: newName });
  }
  return editOf(changes, seen, able);
}

function refuse(why: string): never {
  throw new ResponseError(ErrorCodes.InvalidRequest, why);
}

function isTaken(name: string, target: Declared, { houses, scope }: Analysis): boolean {
  const other = (b: Declared | undefined) => b !== undefined && !isSame(b, target);
  for (const { built } of houses) {
    const { names } = built;
    if (target.kind === 'stage' ? other(names.stages.get(name)) : names.named(name, [target.kind]).some(other))
      return true;
    if (target.kind === 'source' && other(names.sources.get(name))) return true;
  }
  const seen = target.kind === 'source' ? scope.source(name) : scope.block(name);
  return other(seen) && !seen!.uri.startsWith(LIBRARY_SCHEME);
}

interface Found {
  readonly at: Seen;
  readonly mentions: ReturnType<typeof mentionsIn>;
}

/** Mentions of a block: in its own file, and in those that may import it when it stands outside of a house. */
async function mentionsOf(target: Declared, seen: Seen): Promise<Found[]> {
  const found: Found[] = [];
  for (const uri of await filesThatMayName(target, seen.houses, seen.analysis)) {
    const text = await seen.houses.session.text(uri);
    if (!text?.includes(target.name)) continue;
    const at = uri === seen.analysis.uri ? seen : await seen.houses.seen(uri);
    const mentions = at ? mentionsIn(at.analysis).filter(m => isSame(m.target, target)) : [];
    if (at && mentions.length) found.push({ at, mentions });
  }
  return found;
}

async function filesThatMayName(target: Declared, houses: Houses, analysis: Analysis): Promise<Iterable<string>> {
  const isOfHouse = analysis.houses.some(
    ({ built }) =>
      target.uri === built.declared.uri &&
      target.span.from > built.declared.span.from &&
      target.span.to < built.declared.span.to,
  );
  if (isOfHouse) return [analysis.uri];
  const own = target.uri.startsWith(LIBRARY_SCHEME) ? [] : [target.uri];
  return new Set([analysis.uri, ...own, ...(await houses.all())]);
}
