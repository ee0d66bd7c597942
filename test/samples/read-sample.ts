import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Session, type Analysis } from '../../language/index.js';
import { library } from '../../language/library/index.js';

const folder = new URL('../../samples/', import.meta.url);

/** Every sample that is a house; what they share stands in `library/`. */
export const sound = ['start', 'tamarack', 'juniper'] as const;
export const samples = [...sound, 'faults'] as const;

export const addressOf = (sample: string): string => new URL(`${sample}/${sample}.house`, folder).href;
export const textOf = (sample: string): string => readFileSync(new URL(addressOf(sample)), 'utf8');

/** A day after the last test that the samples tell of as done, and before what they plan. */
const TODAY = '2026-07-15';

const faults: string[] = [];

export const session = new Session({
  read: uri => Promise.resolve(existsSync(fileURLToPath(uri)) ? readFileSync(fileURLToPath(uri), 'utf8') : undefined),
  exists: uri => Promise.resolve(existsSync(fileURLToPath(uri))),
  roots: () => [folder.href],
  library,
  fault: (error, what) => faults.push(`${what}: ${String(error)}`),
});

/** The analysis of a sample; a fault of the program itself is thrown, whatever it hid. */
export async function analyze(uri: string): Promise<Analysis> {
  const analysis = await session.analyze(uri, { upto: 'design', today: TODAY });
  if (!analysis) throw new Error(`${uri} cannot be read`);
  if (faults.length) throw new Error(faults.join('\n'));
  return analysis;
}
