import { readdirSync, readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applied, format, parse } from '../../language/grammar/index.js';

const set = (text: string): string => applied(text, format(text));
const FIXTURES = new URL('./fixtures/', import.meta.url);
const texts = readdirSync(FIXTURES).map(name => readFileSync(new URL(name, FIXTURES), 'utf8'));
const images = (text: string) => parse(text).tokens.map(token => token.image);

describe('formatting', () => {
  test.each<[string, string, string]>([
    [
      'blanks and indentation',
      'house   a{\nx:3m2,y : 4   m\n      wall b  {  z:5 }\n}',
      'house a {\n  x: 3 m2, y: 4 m\n  wall b { z: 5 }\n}\n',
    ],
    ['calculations', 'x:2*( 1.2 m*-1.5 m )-3m2/ 4', 'x: 2 * (1.2 m * -1.5 m) - 3 m2 / 4\n'],
    ['lists, ranges, tolerances', 'x:[ 1 ,2..3, a ] , y:5%±1pp', 'x: [1, 2 .. 3, a], y: 5 % ± 1 pp\n'],
    [
      'instructions',
      'add  wall  b  in  c{ }\naccept  a/b  because  "c"',
      'add wall b in c {}\naccept a/b because "c"\n',
    ],
    ['empty blocks', 'a { }\nb {}\nc {\n}', 'a {}\nb {}\nc {\n}\n'],
    ['blank lines', '\n\na: 1\n\n\n\nb: 2\n\n\n', 'a: 1\n\nb: 2\n'],
    [
      'comments at line ends keep their column',
      'a:   1      // one\nb: 2 /* two */ , c: 3',
      'a: 1      // one\nb: 2 /* two */ , c: 3\n',
    ],
    [
      'values over several lines',
      'a {\nx: 1 m +\n2 m\n+ 3 m\ny: [\n1,\n2\n]\n}',
      'a {\n  x: 1 m +\n    2 m\n    + 3 m\n  y: [\n    1,\n    2\n  ]\n}\n',
    ],
    ['line endings stay', 'a {\r\nx: 1\r\n}\r\n', 'a {\r\n  x: 1\r\n}\r\n'],
  ])('%s', (_, text, expected) => {
    expect(set(text)).toBe(expected);
    expect(format(expected)).toEqual([]);
  });

  test('tables stand with their decimal points under each other, names flush left', () => {
    const table = 'x: table (m, a °C, b) [\njan -15.25 1 // cold\nfeb 8 −\nmarch 10.5 -\n]\n';
    expect(set(table)).toBe(
      [
        'x: table (m, a °C, b) [',
        '  jan     -15.25   1 // cold',
        '  feb       8      −',
        '  march    10.5    -',
        ']',
        '',
      ].join('\n'),
    );
  });

  test('a broken file is set in order outside of the damage', () => {
    const text = 'a{\nx:3m2\n  y:  (4   +\nz:5\n}\n';
    expect(set(text)).toBe('a {\n  x: 3 m2\n  y:  (4   +\n  z: 5\n}\n');
    const open = 'a {\nb {\n  x:1\nc   {   y:2 }\n}\n';
    expect(set(open)).toContain('y: 2');
    expect(images(set(open))).toEqual(images(open));
  });

  test('only the lines of a range', () => {
    const text = 'a:1\nb:2\nc:3\n';
    const at = text.indexOf('b');
    expect(applied(text, format(text, { from: at, to: at + 2 }))).toBe('a:1\nb: 2\nc:3\n');
  });

  test.each(texts)('what is in order stays', text => {
    const once = set(text);
    expect(format(once)).toEqual([]);
    expect(images(once)).toEqual(images(text));
  });

  /** Texts of the fixtures with blanks, line breaks and slips put in or taken out at random places. */
  const disturbed = fc
    .tuple(
      fc.constantFrom(...texts),
      fc.array(fc.tuple(fc.nat(6000), fc.constantFrom('', ' ', '   ', '\n', '\n\n\n', '\t', '#', '(', '}', '"')), {
        maxLength: 12,
      }),
    )
    .map(([text, edits]) =>
      edits.reduce(
        (now, [at, insert]) => now.slice(0, at % now.length) + insert + now.slice((at % now.length) + (insert ? 0 : 1)),
        text,
      ),
    );

  test('twice is once, and no token changes, whatever the text', () => {
    fc.assert(
      fc.property(disturbed, text => {
        const once = set(text);
        expect(images(once)).toEqual(images(text));
        expect(set(once)).toBe(once);
      }),
      { numRuns: process.env['WATTWRIGHT_DEEP'] === '1' ? 5000 : 120 },
    );
  }, 120_000);
});
