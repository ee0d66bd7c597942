import type { Block } from '../model/index.js';
import { airResults } from './air.js';
import type { Result } from './define.js';
import { electricalResults } from './electrical.js';
import { envelopeResults } from './envelope.js';
import { heatingResults } from './heating.js';

/** Every named result. */
export const results: readonly Result[] = [...heatingResults, ...airResults, ...envelopeResults, ...electricalResults];

const byName = new Map<string, Result>(results.map(r => [`${r.of} ${r.name}`, r]));

export const resultOf = (name: string, of: string): Result | undefined => byName.get(`${of} ${name}`);
export const resultsOf = (of: string): readonly Result[] => results.filter(r => r.of === of);

/** The name by which a file speaks of a result: that of a block carries the block's name first. */
export const fullName = (r: Result, subject: Block): string =>
  r.of === 'house' ? r.name : `${subject.name}.${r.name}`;

export type { Result, Tier } from './define.js';
