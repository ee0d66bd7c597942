import { read } from '../units/index.js';
import { blocks, camel, type BlockType, type Property } from '../vocabulary/index.js';

/** What the vocabulary says of a kind, laid out once for making models of it. */
export interface Plan {
  readonly properties: readonly PropertyPlan[];
  readonly holds: readonly { readonly kind: string; readonly name: string; readonly single: boolean }[];
  /** References that a block cannot do without. */
  readonly needs: readonly { readonly key: string; readonly kinds: readonly string[] }[];
}
export interface PropertyPlan {
  readonly key: string;
  /** Its name in the model. */
  readonly name: string;
  readonly type: Property;
  /** Value of a default that is no name of a block. */
  readonly byDefault: unknown;
  /** Name of the block that the default refers to. */
  readonly defaultName: string | undefined;
}

const plans = new Map<string, Plan>();

export function planOf(kind: string): Plan | undefined {
  const known = plans.get(kind);
  if (known) return known;
  const type = blocks.get(kind);
  if (!type) return undefined;
  const plan = made(type);
  plans.set(kind, plan);
  return plan;
}

function made(type: BlockType): Plan {
  const entries = type.bounds ? [] : Object.entries(type.properties);
  return {
    properties: entries.map(([key, property]) => ({ key, name: camel(key), type: property, ...defaultOf(property) })),
    holds: (type.holds ?? []).map(kind => {
      const child = blocks.get(kind)!;
      return { kind, name: camel(kind), single: Boolean(child.section ?? child.once) };
    }),
    needs: entries.flatMap(([key, p]) =>
      p.is === 'reference' && p.presence === 'required' ? [{ key, kinds: p.to }] : [],
    ),
  };
}

function defaultOf(type: Property): Pick<PropertyPlan, 'byDefault' | 'defaultName'> {
  const given = 'default' in type ? type.default : undefined;
  if (type.is === 'reference' && typeof given === 'string' && !type.or.includes(given))
    return { byDefault: undefined, defaultName: given };
  if (type.is === 'statement') return { byDefault: { says: given, text: undefined }, defaultName: undefined };
  if (type.is === 'quantity' && typeof given === 'string')
    return { byDefault: read(given).value, defaultName: undefined };
  return { byDefault: given, defaultName: undefined };
}
