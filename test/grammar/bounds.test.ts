import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LARGEST_FILE, parse } from '../../language/grammar/index.js';

const good = readFileSync(new URL('./fixtures/small.house', import.meta.url), 'utf8');
const house = (body: string): string => `house alder {\n${body}\n}\n`;
const shape = (text: string) =>
  JSON.stringify(parse(text).file, (key, value: unknown) => (key.startsWith('$') ? undefined : value));
const goodShape = shape(good);

/** Bad text of every kind, and the problem it must be told by. */
const BAD: [string, string, string][] = [
  ['5,000 brackets', house(`x: ${'('.repeat(5000)}1${')'.repeat(5000)}`), 'syntax/too-deep'],
  ['5,000 open brackets', house(`x: ${'['.repeat(5000)}`), 'syntax/too-deep'],
  ['5,000 blocks', 'a {'.repeat(5000), 'syntax/too-deep'],
  ['5,000 braces alone', '{'.repeat(5000), 'syntax/character'],
  ['5,000 closing braces', '}'.repeat(5000), 'syntax/closes-nothing'],
  ['20,000 operators', house(`x: 1${' + 1'.repeat(20_000)}`), 'syntax/too-long'],
  ['20,000 signs', house(`x: 1${'-'.repeat(20_000)}`), 'syntax/too-long'],
  ['3,000 flat errors', house('x: 1 2\n'.repeat(3000)), 'syntax/too-many'],
  ['20,000 flat errors', house('x: +\n'.repeat(20_000)), 'syntax/too-many'],
  ['20,000 flat errors in a line', house('x: 1 +, '.repeat(20_000)), 'syntax/too-many'],
  ['20,000 bad rows', house(`t: table (a Pa) [\n${'1 + ( , %\n'.repeat(20_000)}]`), 'syntax/too-many'],
  [
    '20,000 rows that look like members',
    house(`t: table (a Pa) [\n${'1 x: ( + , 5\n'.repeat(20_000)}]`),
    'syntax/too-many',
  ],
  ['a line of 10 MB', 'x'.repeat(10_000_000), 'syntax/too-large'],
  ['a file at the limit', 'x '.repeat(LARGEST_FILE / 2), 'syntax/too-long'],
  ['a text of 4 million digits', `x: ${'1,'.repeat(LARGEST_FILE / 2 - 2)}`, 'syntax/number'],
  ['quotation marks', '"'.repeat(1_000_000), 'syntax/too-many'],
  ['open texts', 'a: "b , c\n'.repeat(50_000), 'syntax/too-many'],
  ['comments one in another', '/*'.repeat(1_000_000), 'syntax/unexpected'],
  ['open comments apart', '/* '.repeat(1_000_000), 'syntax/comment'],
  ['open comments in lines', '/* a\n'.repeat(100_000), 'syntax/comment'],
  ['keys', 'a: '.repeat(300_000), 'syntax/too-long'],
  ['words in lines', 'a\n'.repeat(300_000), 'syntax/too-long'],
  ['imports without a path', 'import\n'.repeat(20_000), 'syntax/too-many'],
  ['a header without an end', `wall ${'like x '.repeat(20_000)}{}`, 'syntax/character'],
  ['NUL', 'house alder {\0 x: 5 }', 'syntax/character'],
  ['lone surrogates', house('x: \ud800, y: \udc00 5'), 'syntax/character'],
];

describe('any text is read in bounded time, told, and forgotten', () => {
  test.each(BAD)('%s', (_, text, code) => {
    const begin = performance.now();
    const { problems } = parse(text);
    // Under two seconds on a machine that does nothing else; others may be at work here.
    expect(performance.now() - begin).toBeLessThan(8000);
    expect(problems.map(problem => problem.code)).toContain(code);
    expect(problems.length).toBeLessThan(1000);
    expect(
      problems.every(({ from, to, message }) => from >= 0 && from <= to && to <= text.length && message.length < 300),
    ).toBe(true);
    expect(shape(good)).toBe(goodShape);
  });

  test('many good rows, columns and items are read', () => {
    const table = `t: table (${'a Pa, '.repeat(20_000)}) [\n${'1 '.repeat(20_000)}\n]\n`;
    expect(parse(house(table)).problems).toEqual([]);
    expect(parse(house(`t: table (a) [\n${'1 -5\n'.repeat(20_000)}]`)).problems).toEqual([]);
    expect(parse(house(`t: [${'1, '.repeat(20_000)}]`)).problems).toEqual([]);
  });

  test('a text that is not blank gives members or problems, and no fault inside', () => {
    const fragment = fc.constantFrom(
      ...'{}[]()",:./*+-±%°\n\r\t\0\ufeff\ud800',
      '..',
      'wall',
      'x:',
      'table',
      '1',
      '-5 m',
      'add',
      'from',
      'at least',
      '/*',
      '*/',
      '//',
      'é',
      '٣',
    );
    const anyText = fc.oneof(
      fc.array(fragment, { maxLength: 40 }).map(parts => parts.join(' ')),
      fc.array(fragment, { maxLength: 40 }).map(parts => parts.join('')),
      fc.string({ unit: 'binary', maxLength: 60 }),
    );
    fc.assert(
      fc.property(anyText, text => {
        const { file, problems, comments } = parse(text);
        expect(problems.map(problem => problem.code)).not.toContain('syntax/internal');
        const isBlank = /^[\s\ufeff,]*$/.test(text);
        expect(isBlank || file.members.length + file.imports.length + problems.length + comments.length > 0).toBe(true);
      }),
      { numRuns: process.env['WATTWRIGHT_DEEP'] === '1' ? 200_000 : 3000 },
    );
  });

  test('every cut of a good text, joined to any other, is read without a fault', () => {
    const cut = fc.tuple(fc.nat(good.length), fc.nat(good.length)).map(([a, b]) => good.slice(0, a) + good.slice(b));
    fc.assert(
      fc.property(cut, text => !parse(text).problems.some(problem => problem.code === 'syntax/internal')),
      { numRuns: 500 },
    );
  });
});
