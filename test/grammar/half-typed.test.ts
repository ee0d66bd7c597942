import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from '../../language/grammar/index.js';
import { apply, casualties, deletions, type Edit, facts, halfTypedLines, insertions } from './half-typed.js';

/** All positions with WATTWRIGHT_DEEP=1; otherwise about so many, evenly spread, of each kind of edit. */
const DEEP = process.env['WATTWRIGHT_DEEP'] === '1';
const FEW = 8;
const MANY = 64;

const fixture = (name: string): string => readFileSync(new URL(`./fixtures/${name}.house`, import.meta.url), 'utf8');
const samples = new URL('../../samples/', import.meta.url);
const names = existsSync(samples) ? readdirSync(samples, { recursive: true, encoding: 'utf8' }) : [];
const files = names.filter(name => name.endsWith('.house')).map(name => new URL(name, samples));
const TEXTS: [string, string][] = [
  ['bungalow', fixture('bungalow')],
  ['shapes', fixture('shapes')],
  ...files
    .map((file): [string, string] => [file.pathname.split('/').at(-1)!, readFileSync(file, 'utf8')])
    .filter(([, text]) => !parse(text).problems.length),
];
/** What a hand types by mistake, besides letters. */
const INSERTED = [...'{"()[],:/*-.5x =±#\'%\n'];

/** How many of the edits, all or a few, leave every member untouched but the one they are made in. */
function tally(text: string, edits: readonly Edit[], few: number): { harmless: number; all: number } {
  const before = facts(text);
  const step = DEEP ? 1 : Math.max(1, Math.floor(edits.length / few));
  const chosen = edits.filter((_, i) => i % step === Math.floor(step / 2));
  const harmless = chosen.filter(edit => casualties(text, before, edit).length === 0).length;
  return { harmless, all: chosen.length };
}

/** The share of harmless edits in per cent. */
function share(text: string, edits: readonly Edit[]): number {
  const { harmless, all } = tally(text, edits, MANY);
  return (100 * harmless) / all;
}

describe.each(TEXTS)('%s, half typed', (_, text) => {
  const time = DEEP ? 3_600_000 : 60_000;

  test('one character deleted: 99 % leave all other members untouched', { timeout: time }, () => {
    expect(share(text, deletions(text))).toBeGreaterThanOrEqual(99);
  });

  test('one character inserted: 99 %', { timeout: time }, () => {
    const tallies = INSERTED.map(character => tally(text, insertions(text, character), FEW));
    const sum = (of: 'harmless' | 'all') => tallies.reduce((total, each) => total + each[of], 0);
    expect((100 * sum('harmless')) / sum('all')).toBeGreaterThanOrEqual(99);
  });

  test('a closing brace inserted: 85 %', { timeout: time }, () => {
    expect(share(text, insertions(text, '}'))).toBeGreaterThanOrEqual(85);
  });

  test('a member typed letter by letter on a line of its own: 99 %', { timeout: time }, () => {
    expect(share(text, halfTypedLines(text, 5))).toBeGreaterThanOrEqual(99);
  });

  test('a file that stops anywhere: 99 % keep all that is complete', { timeout: time }, () => {
    const ends = Array.from({ length: text.length }, (_, at): Edit => ({ at, remove: text.length - at, insert: '' }));
    expect(share(text, ends)).toBeGreaterThanOrEqual(99);
  });
});

test('no edit of any kind is silent about what it lost', () => {
  const text = fixture('bungalow');
  const before = facts(text);
  const edits = ['{', '}', '"', '(', '[']
    .flatMap(character => insertions(text, character))
    .filter((_, i) => DEEP || i % 97 === 0);
  for (const edit of edits) {
    if (casualties(text, before, edit).length) expect(parse(apply(text, edit)).problems.length).toBeGreaterThan(0);
  }
});
