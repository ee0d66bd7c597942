import { results, resultsOf, type Result } from '../../language/results/index.js';
import { dimensions, type Dimension, type DimensionEntry } from '../../language/units/index.js';
import { blocks, parentsOf, type BlockType, type Cell, type Property } from '../../language/vocabulary/index.js';

/*
 * The reference manual, made from the same tables as validation, completion and hover. Each page is Markdown; the command
 * line prints it in a terminal, and the build writes all of them to a folder.
 */

/** How a page speaks of a block: its name alone, or with a link. */
export type Refer = (kind: string) => string;
const code = (word: string): string => `\`${word}\``;

/** What a block is, where it stands, what it holds and says, and which results it has. */
export function blockPage(block: BlockType, refer: Refer = code): string {
  const parents = parentsOf.get(block.kind) ?? [];
  const holds = block.holds ?? [];
  const own = resultsOf(block.kind);
  const parts = [`# ${block.kind}`, block.doc];
  if (block.also?.length) parts.push(`Also called: ${block.also.join(', ')}.`);
  const facts = [
    `- Stands in: ${parents.length ? parents.map(refer).join(', ') : 'the file itself'}`,
    ...(block.section ? ['- A section: it always stands, written or not, and has no name'] : []),
    ...(block.once ? ['- At most one'] : []),
    ...(block.names ? [`- Names: ${block.names.map(code).join(', ')}`] : []),
    ...(block.ofStage ? ['- Belongs to a stage itself and changes nothing of the house'] : []),
    ...(holds.length ? [`- Holds: ${holds.map(refer).join(', ')}`] : []),
  ];
  parts.push(facts.join('\n'));
  const properties = Object.entries(block.properties);
  if (block.bounds)
    parts.push('## Properties', 'Each key is the name of a result, each value a bound or a range of it.');
  if (properties.length)
    parts.push('## Properties', properties.map(([name, p]) => propertyItem(name, p, refer)).join('\n'));
  if (own.length) parts.push('## Results', own.map(resultItem).join('\n'));
  return `${parts.join('\n\n')}\n`;
}

/** What a result means; how it comes about stands on its worksheet, which needs a house. */
export function resultPage(result: Result): string {
  const of =
    result.of === 'house'
      ? 'a house'
      : `a block \`${result.of}\`; in a file its name stands before: \`NAME.${result.name}\``;
  const facts = [`- Of: ${of}`, `- Is: ${dimensionText(result.dimension)}`, `- ${whenKnown(result)}`];
  if (result.better) facts.push(`- Better: ${result.better}`);
  return `# ${result.name}\n\n${result.doc}\n\n${facts.join('\n')}\n`;
}

/** All results in a list, those of the house first. */
export function resultsPage(): string {
  const kinds = [...new Set(results.map(r => r.of as string))];
  const parts = [
    '# Results',
    'Numbers that a house is computed to, by the names under which `expect` and `calc` know them.',
  ];
  for (const kind of kinds)
    parts.push(
      kind === 'house' ? '## Of the house' : `## Of each \`${kind}\``,
      results
        .filter(r => r.of === kind)
        .map(resultItem)
        .join('\n'),
    );
  return `${parts.join('\n\n')}\n`;
}

/** All blocks in a list, as they stand in one another. */
export function blocksPage(refer: Refer = code): string {
  const parts = ['# Blocks', 'What a file is made of.'];
  const lines = [...blocks.values()].map(b => `- ${refer(b.kind)}: ${firstSentence(b.doc)}`);
  return `${[...parts, lines.join('\n')].join('\n\n')}\n`;
}

export const firstSentence = (text: string): string => /^[\s\S]*?[.;](?=\s|$)/.exec(text)?.[0] ?? text;

const resultItem = (r: Result): string => `- \`${r.name}\` (${dimensionText(r.dimension)}): ${r.doc}`;
const whenKnown = ({ tier }: Result): string => (tier === 'year' ? 'Known when the year is computed' : 'Known at once');

export function propertyItem(name: string, p: Property, refer: Refer = code): string {
  const facts = [meaningOf(p, refer), ...limitsOf(p), presenceOf(p)];
  const typical = p.typical?.length ? ` For example ${p.typical.map(code).join(', ')}.` : '';
  const source = p.source ? ` Source: ${p.source}.` : '';
  const columns = p.is === 'table' ? `\n${columnItems(p.columns)}` : '';
  return `- \`${name}\`: ${facts.join(', ')}. ${p.doc}${typical}${source}${columns}`;
}

function meaningOf(p: Property, refer: Refer): string {
  switch (p.is) {
    case 'quantity':
      return dimensionText(p.dimension);
    case 'quantities':
      return `${dimensionText(p.dimension)}, or a list of them`;
    case 'count':
      return 'a whole number';
    case 'choice':
      return `one of ${p.of.map(code).join(', ')}`;
    case 'choices':
      return `one or a list of ${p.of.map(code).join(', ')}`;
    case 'statement':
      return `one of ${[...p.of.map(code), ...p.citing.map(c => `\`${c} "..."\``)].join(', ')}`;
    case 'flag':
      return '`yes` or `no`';
    case 'text':
      return 'a text in quotes';
    case 'date':
      return 'a day as `2026-05-01`';
    case 'time':
      return 'a time as `07:30`';
    case 'month-day':
      return 'a day of any year as `may-01`';
    case 'currency':
      return 'a currency by its code of ISO 4217';
    case 'months':
      return 'months as `oct .. mar`';
    case 'hours':
      return 'hours as `07:00 .. 11:00`';
    case 'reference':
      return `the name of ${kindsText(p.to, refer)}${p.or.length ? `, or ${p.or.map(code).join(', ')}` : ''}`;
    case 'references':
      return `names of ${kindsText(p.to, refer)}`;
    case 'file':
      return `a file as ${p.formats.map(f => `\`${f} "..."\``).join(', ')}${p.or.length ? `, or the name of ${kindsText(p.or, refer)}` : ''}`;
    case 'table':
      return p.minimum > 1 ? `a table of at least ${p.minimum} rows` : 'a table';
  }
}

const kindsText = (kinds: readonly string[], refer: Refer): string =>
  kinds.map(k => `${/^[aeiou]/.test(k) ? 'an' : 'a'} ${refer(k)}`).join(' or ');

function limitsOf(p: Property): string[] {
  if (!('within' in p) || !p.within) return [];
  const [low, high] = p.within;
  return [`${low} to ${high}`];
}

function presenceOf(p: Property): string {
  if (p.presence === 'required') return 'required';
  if (p.is === 'references') return 'none unless said';
  if (!('default' in p) || p.default === undefined) return 'optional';
  if (typeof p.default === 'boolean') return `\`${p.default ? 'yes' : 'no'}\` unless said`;
  return `\`${p.default}\` unless said`;
}

function columnItems(columns: Readonly<Record<string, Cell | { readonly optional: Cell }>>): string {
  return Object.entries(columns)
    .map(([name, cell]) => {
      const optional = typeof cell === 'object';
      return `  - column \`${name}\`: ${cellText(optional ? cell.optional : cell)}${optional ? ', optional' : ''}`;
    })
    .join('\n');
}

const cellText = (cell: Cell): string =>
  cell in dimensions ? dimensionText(cell as Dimension) : cell === 'count' ? 'a whole number' : `a ${cell}`;

/** `a heat flow (W, kW; BTU/h)`. */
function dimensionText(dimension: Dimension): string {
  const d: DimensionEntry = dimensions[dimension];
  const [si, ip] = [d.si, d.ip].map(units => units.map(([unit]) => unit).filter(Boolean));
  if (!si.length) return d.doc;
  const other = ip.filter(unit => !si.includes(unit));
  return `${d.doc} (${[si.join(', '), ...(other.length ? [other.join(', ')] : [])].join('; ')})`;
}
