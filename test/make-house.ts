import { Withheld, type Block, type House } from '../language/model/index.js';
import { read } from '../language/units/index.js';
import { blocks, camel, type Kind, type Property } from '../language/vocabulary/index.js';

/**
 * A block of the model without a text: defaults from the vocabulary, empty lists for children, sections filled. Reading a
 * required property that was not given withholds, as in a model that comes from a file.
 */
export function make<K extends Kind>(kind: K, given: Partial<Block<K>> = {}, name: string = kind): Block<K> {
  const type = blocks.get(kind);
  if (!type) throw new Error(`no block ${kind}`);
  const made: Record<string, unknown> = { is: kind, name, title: undefined };
  for (const [property, of] of Object.entries(type.properties)) {
    if (camel(property) in given) continue;
    if (of.presence === 'required')
      Object.defineProperty(made, camel(property), {
        enumerable: true,
        get: () => {
          throw new Withheld(`${name} says no ${property}`);
        },
      });
    else made[camel(property)] = defaultOf(of);
  }
  for (const child of type.holds ?? []) {
    const of = blocks.get(child)!;
    made[camel(child)] = of.section ? make(child as Kind) : of.once ? undefined : [];
  }
  return Object.defineProperties(made, Object.getOwnPropertyDescriptors(given)) as Block<K>;
}

function defaultOf(property: Property): unknown {
  if (!('default' in property) || property.default === undefined) return undefined;
  if (property.is === 'quantity') return read(property.default).value;
  return property.default;
}

export const makeHouse = (given: Partial<House> = {}): House => make('house', given, 'example');
