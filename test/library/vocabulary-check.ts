import {
  isAdd,
  isBlock,
  isProperty,
  numberOf,
  type Add,
  type Block,
  type Column,
  type Property as Written,
  type Value,
} from '../../language/grammar/index.js';
import { isOf, parseUnit, quantity, read, type Dimension, type Quantity } from '../../language/units/index.js';
import { blocks, type Property } from '../../language/vocabulary/index.js';

/**
 * What stands in a block and is not so in the vocabulary: kinds, places, properties, choices, dimensions, limits. Written
 * apart from the program's own reading, so that a library file is held against the tables by a second pair of eyes.
 */
export function strangers(block: Block | Add, parent?: string): readonly string[] {
  const kind = block.kind ?? '';
  const type = blocks.get(kind);
  const here = `${kind} ${block.name ?? ''}`.trim();
  if (!type) return [`${here}: no such kind`];
  const misplaced = parent && !blocks.get(parent)?.holds?.includes(kind) ? [`${here}: not in a ${parent}`] : [];
  const inside = block.members.flatMap(member => {
    if (isProperty(member)) return ofProperty(member, type.properties[member.key]).map(m => `${here}: ${m}`);
    if (isBlock(member) || isAdd(member)) return strangers(member, kind).map(m => `${here} / ${m}`);
    return [];
  });
  return [...misplaced, ...inside];
}

function ofProperty({ key, value }: Written, property: Property | undefined): readonly string[] {
  if (!property) return [`${key}: no such property`];
  if (!value) return [`${key}: no value`];
  return judge(value, property).map(m => `${key}: ${m}`);
}

function judge(value: Value, property: Property): readonly string[] {
  switch (property.is) {
    case 'quantity':
      return amount(value, property.dimension, property.within);
    case 'count':
      return value.$type === 'Quantity' && !value.unit ? [] : ['not a plain number'];
    case 'choice':
      return value.$type === 'NameValue' && property.of.includes(value.name) ? [] : ['not one of the choices'];
    case 'flag':
      return value.$type === 'NameValue' && /^(yes|no)$/.test(value.name) ? [] : ['neither yes nor no'];
    case 'reference':
      return value.$type === 'NameValue' ? [] : ['not a name'];
    case 'text':
      return value.$type === 'Text' ? [] : ['not a text'];
    case 'table':
      return value.$type === 'Table'
        ? [...value.columns.flatMap(c => column(c, property)), ...rows(value, property.minimum)]
        : ['not a table'];
    default:
      return [`a library has no use for a property that is ${property.is}`];
  }
}

function amount(value: Value, dimension: Dimension, within?: readonly [string, string]): readonly string[] {
  const q = value.$type === 'Quantity' ? quantityOf(value.raw, value.negative, value.unit) : undefined;
  if (!q) return ['not a quantity'];
  if (!isOf(q, dimension)) return [`not ${dimension}`];
  if (within && (q.value < read(within[0]).value - 1e-12 || q.value > read(within[1]).value + 1e-12))
    return [`outside ${within.join(' to ')}`];
  return [];
}

function quantityOf(raw: string, negative: boolean, unit: string | undefined): Quantity | undefined {
  const reading = numberOf(raw);
  const known = unit === undefined ? undefined : parseUnit(unit);
  if (!('value' in reading) || (unit !== undefined && !known)) return undefined;
  return quantity(negative ? -reading.value : reading.value, known);
}

function column({ name, unit }: Column, property: Property & { readonly is: 'table' }): readonly string[] {
  const cell = property.columns[name];
  const dimension = typeof cell === 'object' ? cell.optional : cell;
  if (!dimension) return [`no column ${name}`];
  const q = quantityOf('1', false, unit);
  return q && isOf(q, dimension as Dimension) ? [] : [`column ${name} is not ${dimension}`];
}

function rows({ columns, rows }: Value & { $type: 'Table' }, minimum: number): readonly string[] {
  const ragged = rows.filter(row => row.cells.length !== columns.length).map((_, i) => `row ${i + 1} is ragged`);
  return rows.length < minimum ? [...ragged, `fewer than ${minimum} rows`] : ragged;
}
