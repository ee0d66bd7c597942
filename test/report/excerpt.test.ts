import fc from 'fast-check';
import { expect, it } from 'vitest';
import { excerpt } from '../../server/report/excerpt.js';
import { Lines } from '../../server/report/position.js';
import { cells, visible, wrap } from '../../server/report/width.js';

const shown = (text: string, from: number, to: number, width: number) =>
  excerpt(text, new Lines(text), from, to, width);

it('shows a line that fits as it is, with its marks below', () => {
  expect(shown('one\n  two three\nfour', 10, 15, 40)).toEqual({ source: '  two three', marks: '      ^^^^^' });
});

it('cuts a long line around the place, and uses the whole width where one side is short', () => {
  const text = `${'a'.repeat(100)}XYZ${'b'.repeat(100)}`;
  expect(shown(text, 100, 103, 21)).toEqual({ source: '…aaaaaaaaXYZbbbbbbbb…', marks: '         ^^^' });
  expect(shown(`aXYZ${'b'.repeat(100)}`, 1, 4, 21).source).toBe(`aXYZ${'b'.repeat(15)}…`);
  expect(shown(`${'a'.repeat(100)}XYZb`, 100, 103, 21).source).toBe(`…${'a'.repeat(15)}XYZb`);
});

it('marks at least one place: at the end of a line, of the text, of an empty line', () => {
  expect(shown('ab\n', 2, 2, 20)).toEqual({ source: 'ab', marks: '  ^' });
  expect(shown('ab\n', 3, 3, 20)).toEqual({ source: '', marks: '^' });
  expect(shown('', 0, 0, 20)).toEqual({ source: '', marks: '^' });
});

it('marks what it should in any text, within the width', () => {
  const anyText = fc.string({
    unit: fc.constantFrom('a', '木', '\u0301', '\t', '\u001b', '\r', '\n', ' ', '😀', 'é', '\u202e'),
    maxLength: 120,
  });
  fc.assert(
    fc.property(anyText, fc.nat(), fc.nat(20), fc.integer({ min: 12, max: 90 }), (text, at, length, width) => {
      const from = text.length ? at % text.length : 0;
      const { source, marks } = shown(text, from, Math.min(text.length, from + length), width);
      // A mark of one cell stands behind a line that ends at the edge.
      expect(cells(source)).toBeLessThanOrEqual(width);
      expect(marks).toMatch(/^ *\^+$/);
      expect(cells(marks)).toBeLessThanOrEqual(width + 1);
      expect(source).toBe(visible(source));
    }),
  );
});

it('counts lines as editors do, whatever ends them', () => {
  const lines = new Lines('a\r\nbc\rd\n');
  expect([0, 1, 3, 4, 6, 8].map(i => lines.at(i))).toEqual([
    { line: 1, column: 1 },
    { line: 1, column: 2 },
    { line: 2, column: 1 },
    { line: 2, column: 2 },
    { line: 3, column: 1 },
    { line: 4, column: 1 },
  ]);
});

it('wraps between words, keeps a number with its unit, and breaks what is longer than a line', () => {
  expect(wrap('the load is 9.6 kW here', 16)).toEqual(['the load is', '9.6 kW here']);
  expect(wrap('abcdefghij kl', 4)).toEqual(['abcd', 'efgh', 'ij', 'kl']);
  fc.assert(
    fc.property(fc.string({ maxLength: 80 }), fc.integer({ min: 2, max: 40 }), (text, width) => {
      const lines = wrap(visible(text), width);
      expect(lines.join('').replace(/\s/g, '')).toBe(visible(text).replace(/\s/g, ''));
      for (const line of lines) expect(cells(line)).toBeLessThanOrEqual(width);
    }),
  );
});
