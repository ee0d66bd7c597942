import type { Declared, Instruction, Name } from '../build/index.js';
import { blocks, parentsOf, type Property } from '../vocabulary/index.js';
import { resultOf } from '../results/index.js';
import type { AnalyzedHouse } from './house.js';
import type { Analysis } from './session.js';

/** A word that names a block, and the block that it names. */
export interface Mention {
  readonly span: { readonly from: number; readonly to: number };
  readonly name: string;
  readonly target: Declared | undefined;
  /** The block writes its own name here. */
  readonly isDeclaration: boolean;
}

const known = new WeakMap<Analysis, readonly Mention[]>();

/** Every name of a block in a file, in the order of the text. */
export function mentionsIn(analysis: Analysis): readonly Mention[] {
  let mentions = known.get(analysis);
  if (!mentions) known.set(analysis, (mentions = collect(analysis).sort((a, b) => a.span.from - b.span.from)));
  return mentions;
}

export const mentionAt = (analysis: Analysis, offset: number): Mention | undefined =>
  mentionsIn(analysis).find(m => m.span.from <= offset && offset <= m.span.to);

/** The same block, also when the file that holds it was read anew. */
export const isSame = (a: Declared | undefined, b: Declared | undefined): boolean =>
  a !== undefined && b !== undefined && a.uri === b.uri && a.head.from === b.head.from && a.kind === b.kind;

function collect(analysis: Analysis): Mention[] {
  const mentions: Mention[] = [];
  for (const block of analysis.file.declared.blocks) {
    const house = analysis.houses.find(h => h.built.declared === block);
    const from = new Resolver(analysis, house);
    walk(block, from, mentions);
  }
  return mentions;
}

function walk(b: Declared, from: Resolver, into: Mention[]): void {
  const add = (n: Name | undefined, target: Declared | undefined) =>
    n && into.push({ span: n.span, name: n.name, target, isDeclaration: false });
  if (b.named) into.push({ span: b.head, name: b.name, target: b, isDeclaration: true });
  if (b.like) add(b.like, from.block(b.like.name, [b.kind]));
  if (b.origin) add(b.origin, from.source(b.origin.name));
  if (b.inside) add(b.inside, from.block(b.inside.name, parentsOf.get(b.kind) ?? []));
  properties(b.properties, b.kind, from, into);
  for (const child of b.children) if (!child.implicit) walk(child, from, into);
  for (const i of b.instructions) {
    if (i.block) walk(i.block, from, into);
    const target = i.target && from.target(i);
    if (i.target) add(i.target, target);
    if (i.properties) properties(i.properties, target?.kind, from, into);
  }
}

function properties(given: Declared['properties'], kind: string | undefined, from: Resolver, into: Mention[]): void {
  const type = blocks.get(kind ?? '');
  for (const p of given.values()) {
    if (p.origin)
      into.push({ span: p.origin.span, name: p.origin.name, target: from.source(p.origin.name), isDeclaration: false });
    if (type?.bounds) ofResult(p.key, p.keySpan.from, from, into);
    if (p.value.is !== 'reference') continue;
    const kinds = kindsOf(type?.properties[p.key]);
    for (const n of p.value.reference.ref)
      into.push({ span: n.span, name: n.name, target: from.block(n.name, kinds), isDeclaration: false });
  }
}

/** `main.spaces-left` names the panel main. */
function ofResult(key: string, at: number, from: Resolver, into: Mention[]): void {
  const dot = key.lastIndexOf('.');
  if (dot < 0 || resultOf(key, 'house')) return;
  const name = key.slice(0, dot);
  const target = from.called(name).find(b => resultOf(key.slice(dot + 1), b.kind));
  if (target) into.push({ span: { from: at, to: at + dot }, name, target, isDeclaration: false });
}

/** Kinds of blocks that a property may name. */
export const kindsOf = (property: Property | undefined): readonly string[] =>
  property && 'to' in property ? property.to : property?.is === 'file' ? property.or : [];

/** Follows names as the build does: the house's own first, then what its file sees. */
class Resolver {
  constructor(
    private readonly analysis: Analysis,
    private readonly house: AnalyzedHouse | undefined,
  ) {}

  called(name: string): readonly Declared[] {
    return this.house?.built.names.named(name) ?? [];
  }

  block(name: string, kinds: readonly string[]): Declared | undefined {
    const names = this.house?.built.names;
    if (kinds.includes('stage')) return names?.stages.get(name);
    const own = names?.named(name, kinds) ?? [];
    if (own.length) return own.length === 1 ? own[0] : undefined;
    const seen = this.analysis.scope.block(name);
    return seen && kinds.includes(seen.kind) ? seen : undefined;
  }

  source(name: string): Declared | undefined {
    return this.house?.built.names.sources.get(name) ?? this.analysis.scope.source(name);
  }

  /** What `change` or `remove` means: the block of that name that has what is changed. */
  target({ target, properties: changed }: Instruction): Declared | undefined {
    const all = this.called(target!.name);
    const fits = (b: Declared) => [...(changed?.keys() ?? [])].every(key => blocks.get(b.kind)?.properties[key]);
    return all.length > 1 ? (all.find(fits) ?? all[0]) : all[0];
  }
}
