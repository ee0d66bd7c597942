import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from '../../language/grammar/index.js';
import { apply, casualties, deletions, type Edit, facts, halfTypedLines, insertions } from './half-typed.js';

/** All positions with WATTWRIGHT_DEEP=1; otherwise one in so many, for the time it takes. */
const DEEP = process.env['WATTWRIGHT_DEEP'] === '1';
const ONE_IN = DEEP ? 1 : 29;

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

/** The share of edits that leave every member untouched but the one they are made in, in per cent. */
function share(text: string, edits: readonly Edit[]): number {
  const before = facts(text);
  const chosen = edits.filter((_, i) => i % ONE_IN === 0);
  const harmless = chosen.filter(edit => casualties(text, before, edit).length === 0);
  return (100 * harmless.length) / chosen.length;
}

describe.each(TEXTS)('%s, half typed', (_, text) => {
  const time = DEEP ? 3_600_000 : 60_000;

  test('one character deleted: 99 % leave all other members untouched', { timeout: time }, () => {
    expect(share(text, deletions(text))).toBeGreaterThanOrEqual(99);
  });

  test('one character inserted: 99 %', { timeout: time }, () => {
    const shares = INSERTED.map(character => share(text, insertions(text, character)));
    expect(shares.reduce((sum, each) => sum + each, 0) / shares.length).toBeGreaterThanOrEqual(99);
    // No single character may hide behind the mean.
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(97);
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
    .filter((_, i) => i % (ONE_IN * 4) === 0);
  for (const edit of edits) {
    if (casualties(text, before, edit).length) expect(parse(apply(text, edit)).problems.length).toBeGreaterThan(0);
  }
});
