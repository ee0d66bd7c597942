import { wanted } from '../build/index.js';
import { dimensions, print, read, type Dimension } from '../units/index.js';
import { parentsOf, type BlockType, type Property } from '../vocabulary/index.js';

/** A value in SI, and behind it in inch-pound units where those are others. */
export function inBothSystems(si: number, dimension: Dimension, currency?: string): string {
  const more = currency ? { currency } : {};
  const metric = print(si, dimension, { system: 'si', ...more });
  const imperial = print(si, dimension, { system: 'ip', ...more });
  return metric === imperial ? metric : `${metric} (${imperial})`;
}

/** What the vocabulary says of a block, as Markdown. */
export function describeBlock(type: BlockType): string {
  const parents = parentsOf.get(type.kind);
  const place = parents ? ` Stands in ${parents.join(' or ')}.` : '';
  return `**${type.kind}**\n\n${type.doc}${place}`;
}

/** What the vocabulary says of a property, as Markdown: what it is, its limits in both systems, its default and its source. */
export function describeProperty(key: string, property: Property): string {
  const presence = property.presence === 'required' ? ', required' : '';
  const lines = [`**${key}**: ${wanted(property)}${presence}`, '', property.doc];
  const limits = limitsOf(property);
  if (limits) lines.push('', `Usual: ${limits}.`);
  const standing = defaultOf(property);
  if (standing) lines.push('', `When left out: ${standing}${property.source ? ` (${property.source})` : ''}.`);
  else if (property.source) lines.push('', `Source: ${property.source}.`);
  return lines.join('\n');
}

function limitsOf(property: Property): string | undefined {
  if (!('within' in property) || !property.within) return undefined;
  if (property.is === 'count') return `${property.within[0]} to ${property.within[1]}`;
  const [low, high] = property.within;
  const ends = [low, high].map(text => read(text).value);
  const imperial = ends.map(v => print(v, property.dimension, { system: 'ip' }));
  const own = dimensions[property.dimension];
  return `${low} to ${high}${own.ip === own.si ? '' : ` (${imperial.join(' to ')})`}`;
}

/** The default as it would be written. */
export function defaultOf(property: Property): string | undefined {
  if (!('default' in property) || property.default === undefined) return undefined;
  if (typeof property.default === 'boolean') return property.default ? 'yes' : 'no';
  return String(property.default);
}
