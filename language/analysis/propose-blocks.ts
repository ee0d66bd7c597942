import { exampleOf, type Declared } from '../build/index.js';
import { blocks, parentsOf, type BlockType, type Property } from '../vocabulary/index.js';
import { defaultOf, describeBlock, describeProperty } from './describe.js';
import { headsOf } from './propose-values.js';
import { inChoice, inSnippet, type Proposal } from './proposal.js';

/** Names that may stand in a property, nearest first; used to fill in references that a block cannot do without. */
export type NamesFor = (property: Property) => readonly string[];

/** Properties that a block does not have yet, required ones first. */
export function propertiesOf(
  type: BlockType,
  given: ReadonlySet<string>,
  names: NamesFor,
  required = true,
): Proposal[] {
  if (type.bounds) return [];
  return Object.entries(type.properties)
    .filter(([key]) => !given.has(key))
    .map(([key, property], i) => {
      const usual = defaultOf(property) ?? property.typical?.[0];
      const isRequired = property.presence === 'required' && required;
      return {
        label: key,
        kind: 'property' as const,
        ...(isRequired ? { detail: 'required' } : usual ? { detail: usual } : {}),
        doc: describeProperty(key, property),
        insert: `${key}: `,
        snippet: `${key}: ${place(1, property, names)}`,
        rank: (isRequired ? 100 : 200) + i / 1000,
      };
    });
}

/** Blocks that may stand in a block, those that stand once and are there left out. */
export function childrenOf(type: BlockType, present: readonly Declared[], names: NamesFor, fresh: Fresh): Proposal[] {
  return (type.holds ?? []).flatMap(kind => {
    const child = blocks.get(kind)!;
    if ((child.once || child.section) && present.some(b => b.kind === kind && !b.implicit)) return [];
    return [blockProposal(child, names, fresh, 300)];
  });
}

/** Blocks that may stand at the top of a file: a house, and what a library holds. */
export function topBlocks(names: NamesFor, fresh: Fresh): Proposal[] {
  return [...blocks.values()]
    .filter(b => !b.section && !b.ofStage && !b.bounds && b.kind !== 'stage')
    .map(b => blockProposal(b, names, fresh, b.kind === 'house' ? 100 : 300));
}

/** What a stage may add. */
export function addable(names: NamesFor, fresh: Fresh): Proposal[] {
  return [...blocks.values()]
    .filter(b => parentsOf.has(b.kind) && !b.section && !b.ofStage && !b.bounds && b.kind !== 'stage')
    .map(b => blockProposal(b, names, fresh, 300));
}

/** A name that no block has yet. */
export type Fresh = (wish: string) => string;

function blockProposal(type: BlockType, names: NamesFor, fresh: Fresh, rank: number): Proposal {
  return {
    label: type.kind,
    kind: 'block',
    detail: firstSentence(type.doc),
    doc: describeBlock(type),
    insert: `${type.kind} `,
    snippet: blockSnippet(type, names, fresh),
    ...(type.also ? { also: type.also } : {}),
    rank,
  };
}

/** The whole block with the properties that it cannot do without. */
function blockSnippet(type: BlockType, names: NamesFor, fresh: Fresh): string {
  let next = 1;
  const isNamed = !type.section && !type.bounds && !(type.once && !type.names);
  const name = !isNamed
    ? ''
    : type.names
      ? ` \${${next++}|${type.names.map(inChoice).join(',')}|}`
      : ` \${${next++}:${inSnippet(fresh(`new-${type.kind}`))}}`;
  const required = Object.entries(type.properties).filter(([, p]) => p.presence === 'required');
  if (required.some(([, p]) => p.is === 'table') || (type.holds?.length && !required.length) || type.section) {
    const lines = required.map(([key, p]) => `\t${key}: ${place(next++, p, names)}`);
    return `${type.kind}${name} {\n${lines.map(l => `${l}\n`).join('')}\t$0\n}`;
  }
  const parts = required.map(([key, p]) => `${key}: ${place(next++, p, names)}`);
  return `${type.kind}${name} { ${parts.join(', ')}${parts.length ? '$0 ' : '$0'} }`;
}

/** The place of a value: its choices, the names it may take, or a typical value. */
function place(n: number, property: Property, names: NamesFor): string {
  if ('of' in property) return `\${${n}|${property.of.map(inChoice).join(',')}|}`;
  if (property.is === 'flag') return `\${${n}|yes,no|}`;
  const known = names(property);
  if (known.length) return `\${${n}:${inSnippet(known[0])}}`;
  if (property.is === 'table') {
    return `table (\${${n}:${inSnippet(headsOf(property))}}) [\n\t\t\n\t]`;
  }
  if (property.is === 'text') return `"\${${n}}"`;
  const example = defaultOf(property) ?? exampleOf(property);
  return example === undefined ? `\${${n}}` : `\${${n}:${inSnippet(example)}}`;
}

const firstSentence = (doc: string): string => doc.split(/[.:;] /)[0].replace(/\.$/, '');
