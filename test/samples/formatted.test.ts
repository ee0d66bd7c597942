import { readFileSync } from 'node:fs';
import { globSync } from 'tinyglobby';
import { expect, test } from 'vitest';
import { applied, format } from '../../language/grammar/index.js';

const files = globSync(['samples/**/*.house', 'language/library/*.house'], {
  cwd: new URL('../..', import.meta.url).pathname,
  absolute: true,
});

test('samples and library are found', () => {
  expect(files.length).toBeGreaterThan(14);
});

test.each(files)('%s is written as the formatter would', file => {
  const text = readFileSync(file, 'utf8');
  expect(applied(text, format(text))).toBe(text);
});

test('the test notices a line out of place', () => {
  const text = readFileSync(files[0], 'utf8').replace(/\n {2}(?=\S)/, '\n      ');
  expect(applied(text, format(text))).not.toBe(text);
});
