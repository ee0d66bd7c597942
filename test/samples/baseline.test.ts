import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { baselineOf, type Baseline } from './baseline.js';
import { addressOf, analyze, samples, session, textOf } from './read-sample.js';

const fileOf = (sample: string) => fileURLToPath(new URL(`baselines/${sample}.json`, import.meta.url));
const stored = (sample: string) => JSON.parse(readFileSync(fileOf(sample), 'utf8')) as Baseline;

/** With UPDATE_BASELINES=1 the files are written anew, and the change is judged where it is reviewed. */
const update = process.env['UPDATE_BASELINES'] === '1';

test.each(samples)('%s says what its baseline says', async sample => {
  const baseline = baselineOf(await analyze(addressOf(sample)));
  if (update) writeFileSync(fileOf(sample), JSON.stringify(baseline, undefined, 2) + '\n');
  expect(existsSync(fileOf(sample)), 'no baseline yet: run the tests once with UPDATE_BASELINES=1').toBe(true);
  expect(baseline).toEqual(stored(sample));
});

test('a baseline moves with a number of the house', async () => {
  const uri = addressOf('tamarack');
  session.update(uri, textOf('tamarack').replace('output: 19 kW', 'output: 12 kW'));
  const edited = baselineOf(await analyze(uri)).houses['tamarack']['today'];
  session.close(uri);
  const before = stored('tamarack').houses['tamarack']['today'];
  const moved = Object.keys(before).filter(name => before[name] !== edited[name]);
  expect(moved).toContain('heating.fuel-installed');
  expect(moved).toContain('heating.worst-margin');
  expect(moved).not.toContain('heating.design-load');
});
