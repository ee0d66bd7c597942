import type { Alive } from './assemble.js';
import type { Declared, DeclaredProperty, Name } from './declared.js';
import type { Effective, Surroundings } from './effective.js';

/**
 * All that a model is made from, as one text: equal texts mean equal models. Places in the file are left out, so that moving
 * text about changes nothing.
 */
export function fingerprint(
  roots: readonly Effective[],
  aliveness: (b: Declared) => Alive,
  { names }: Surroundings,
): string {
  const parts: string[] = [];
  const walk = (e: Effective): void => {
    const { kind, title = null } = e.declared;
    const { text, references } = saidBy(e.properties);
    parts.push('\n', e.address, ' ', kind, JSON.stringify(title), String(e.lost), String(e.lostKinds), text);
    for (const { name } of references) parts.push(' ', names.named(name).map(aliveness).join() || 'outside');
    e.children.forEach(walk);
  };
  roots.forEach(walk);
  return parts.join('');
}

interface Said {
  readonly text: string;
  /** Names of blocks that may stand in one stage and not in another. */
  readonly references: readonly Name[];
}

/** A block that no stage changes has the same properties in all of them: they are spelt out once. */
const said = new WeakMap<Effective['properties'], Said>();

function saidBy(properties: Effective['properties']): Said {
  const known = said.get(properties);
  if (known) return known;
  let text = '';
  const references: Name[] = [];
  for (const [key, { property }] of properties) {
    text += `\n${key}=${textOf(property)}`;
    if (property.value.is === 'reference') references.push(...property.value.reference.ref);
  }
  const made = { text, references };
  said.set(properties, made);
  return made;
}

function textOf({ value }: DeclaredProperty): string {
  if (value.is === 'reference') return `->${value.reference.ref.map(r => r.name).join(',')}`;
  // What is expected of a house is no part of its model, and holds places.
  return value.is === 'bounds' ? '' : JSON.stringify(value);
}
