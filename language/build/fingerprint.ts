import type { Alive } from './assemble.js';
import type { Declared, DeclaredProperty } from './declared.js';
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
    const { declared } = e;
    parts.push(
      '\n',
      e.address,
      ' ',
      declared.kind,
      JSON.stringify(declared.title) ?? '',
      String(e.lost),
      String(e.lostKinds),
    );
    for (const [key, { property }] of e.properties) {
      parts.push('\n', key, '=', textOf(property));
      if (property.value.is !== 'reference') continue;
      for (const { name } of property.value.reference.ref) {
        parts.push(names.named(name).map(aliveness).join() || 'outside');
      }
    }
    e.children.forEach(walk);
  };
  roots.forEach(walk);
  return parts.join('');
}

const texts = new WeakMap<DeclaredProperty, string>();

function textOf(property: DeclaredProperty): string {
  let text = texts.get(property);
  if (text === undefined) {
    const { value } = property;
    text = value.is === 'reference' ? `->${value.reference.ref.map(r => r.name).join(',')}` : JSON.stringify(value);
    texts.set(property, text);
  }
  return text;
}
