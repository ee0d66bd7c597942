import type { Declared, DeclaredFile, DeclaredProperty, Instruction, Name } from '../build/index.js';
import { blocks, type BlockType, type Property } from '../vocabulary/index.js';
import type { AnalyzedHouse } from './house.js';
import type { Analysis } from './session.js';
import type { StageView } from './views.js';

/** Which part of the writing is pointed at. */
export type Part =
  'kind' | 'name' | 'like' | 'origin' | 'inside' | 'key' | 'value' | 'target' | 'code' | 'import' | 'body';

interface Span {
  readonly from: number;
  readonly to: number;
}

/** What stands at an offset of a text, as far as it has a meaning. */
export interface Pointed {
  readonly part: Part;
  /** The word or value itself. */
  readonly span: Span;
  /** The blocks around, the file's own first. */
  readonly chain: readonly Declared[];
  readonly block: Declared | undefined;
  readonly type: BlockType | undefined;
  readonly instruction: Instruction | undefined;
  readonly property: DeclaredProperty | undefined;
  /** What the vocabulary says of the property. */
  readonly meaning: Property | undefined;
  readonly house: AnalyzedHouse | undefined;
  /** The stage in whose text it stands, today for what stands outside of any. */
  readonly view: StageView | undefined;
}

export function pointedAt(analysis: Analysis, offset: number): Pointed | undefined {
  const file: DeclaredFile = analysis.file.declared;
  const base = {
    chain: [] as Declared[],
    block: undefined,
    type: undefined,
    instruction: undefined,
    property: undefined,
    meaning: undefined,
    house: undefined,
    view: undefined,
  };
  const leads = file.imports.find(i => holds(i.span, offset));
  if (leads) return { ...base, part: 'import', span: leads.span };
  const { chain, instruction } = blocksAt(file.blocks, offset);
  const block = chain.at(-1);
  if (!block) return undefined;
  const house = analysis.houses.find(h => h.built.declared === chain[0]);
  const stage = chain.find(b => b.kind === 'stage');
  const view = house?.views.find(v => v.built.declared === stage);
  const type =
    instruction?.does === 'change' && instruction.target
      ? blocks.get(house?.built.names.named(instruction.target.name)[0]?.kind ?? '')
      : blocks.get(block.kind);
  const around = { ...base, chain, block, type, instruction, house, view };
  return (
    (instruction && instructionPart(instruction, offset, around)) ??
    (instruction?.properties ? inProperties(instruction.properties, offset, around) : undefined) ??
    (instruction ? undefined : headerPart(block, offset, around)) ??
    (instruction ? undefined : inProperties(block.properties, offset, around)) ?? {
      ...around,
      part: 'body',
      span: { from: offset, to: offset },
    }
  );
}

type Around = Omit<Pointed, 'part' | 'span'>;
const holds = (span: Span, offset: number): boolean => span.from <= offset && offset <= span.to;

function blocksAt(
  among: readonly Declared[],
  offset: number,
): { chain: Declared[]; instruction: Instruction | undefined } {
  const chain: Declared[] = [];
  let instruction: Instruction | undefined;
  for (let next = among.find(b => holds(b.span, offset)); next;) {
    chain.push(next);
    const own: Instruction | undefined = next.instructions.find(i => holds(i.span, offset));
    const inside: Declared | undefined =
      next.children.find(b => !b.implicit && holds(b.span, offset)) ?? (own?.does === 'add' ? own.block : undefined);
    if (own && !inside) instruction = own;
    next = inside;
  }
  return { chain, instruction };
}

function headerPart(b: Declared, offset: number, around: Around): Pointed | undefined {
  const part = (part: Part, name: Name | undefined): Pointed | undefined =>
    name && holds(name.span, offset) ? { ...around, part, span: name.span } : undefined;
  if (b.named && holds(b.head, offset)) return { ...around, part: 'name', span: b.head };
  if (holds(b.kindSpan, offset)) return { ...around, part: 'kind', span: b.kindSpan };
  return part('like', b.like) ?? part('origin', b.origin) ?? part('inside', b.inside);
}

function instructionPart(i: Instruction, offset: number, around: Around): Pointed | undefined {
  if (i.target && holds(i.target.span, offset)) return { ...around, part: 'target', span: i.target.span };
  if (i.code && holds(i.code.span, offset)) return { ...around, part: 'code', span: i.code.span };
  return undefined;
}

function inProperties(
  properties: ReadonlyMap<string, DeclaredProperty>,
  offset: number,
  around: Around,
): Pointed | undefined {
  for (const property of properties.values()) {
    if (!holds(property.span, offset)) continue;
    const of = { ...around, property, meaning: around.type?.properties[property.key] };
    if (holds(property.keySpan, offset)) return { ...of, part: 'key', span: property.keySpan };
    if (property.origin && holds(property.origin.span, offset))
      return { ...of, part: 'origin', span: property.origin.span };
    return { ...of, part: 'value', span: property.valueSpan };
  }
  return undefined;
}
