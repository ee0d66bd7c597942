import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { globSync } from 'tinyglobby';
import { expect, test } from 'vitest';
import { applied, format } from '../../language/grammar/index.js';

const root = new URL('../../', import.meta.url);
const files = globSync(['samples/**/*.house', 'language/library/*.house'], {
  cwd: fileURLToPath(root),
});

test('samples and library are found', () => {
  expect(files.length).toBeGreaterThan(14);
});

test.each(files)('%s is written as the formatter would', file => {
  const text = readFileSync(new URL(file, root), 'utf8');
  expect(applied(text, format(text))).toBe(text);
});

test('the test notices a line out of place', () => {
  const text = readFileSync(new URL('samples/start/start.house', root), 'utf8').replace(/\n {2}(?=\S)/, '\n      ');
  expect(applied(text, format(text))).not.toBe(text);
});
