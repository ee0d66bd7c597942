import { vocabularyOf, type BlockType, type Property } from './define.js';
import { electricalBlocks } from './electrical.js';
import { envelopeBlocks } from './envelope.js';
import { heatingBlocks } from './heating.js';
import { houseBlocks } from './house.js';
import { materialBlocks } from './materials.js';
import { moneyBlocks } from './money.js';
import { planBlocks } from './plan.js';
import { solarBlocks } from './solar.js';
import { waterBlocks } from './water.js';

/** Every block of the language, typed: the model is inferred from it. */
export const vocabulary = vocabularyOf([
  ...houseBlocks,
  ...materialBlocks,
  ...envelopeBlocks,
  ...heatingBlocks,
  ...waterBlocks,
  ...electricalBlocks,
  ...solarBlocks,
  ...moneyBlocks,
  ...planBlocks,
]);
export type Vocabulary = typeof vocabulary;
export type Kind = keyof Vocabulary;

/** The same tables, untyped, for programs that walk them. */
export const blocks: ReadonlyMap<string, BlockType> = new Map(Object.entries(vocabulary));

/** What a kind says of a property; words that every object of the machine has (constructor, toString) are none of its own. */
export const propertyOf = (type: BlockType | undefined, key: string): Property | undefined =>
  type && Object.hasOwn(type.properties, key) ? type.properties[key] : undefined;

/** The kinds that may hold a block of a kind. */
export const parentsOf: ReadonlyMap<string, readonly string[]> = (() => {
  const parents = new Map<string, string[]>();
  for (const parent of blocks.values())
    for (const child of parent.holds ?? []) parents.set(child, [...(parents.get(child) ?? []), parent.kind]);
  return parents;
})();

export const sections: readonly string[] = [...blocks.values()].filter(b => b.section).map(b => b.kind);

export * from './define.js';
