import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';

const folder = 'test/client/syntax';
const cases = readdirSync(folder).filter(name => name.endsWith('.test.house'));

test.each(cases)('colours of %s are those marked in it', name => {
  const tool = 'node_modules/.bin/vscode-tmgrammar-test';
  const options = ['--compact', '--grammar', 'client/syntaxes/house.tmLanguage.json', `${folder}/${name}`];
  // The tool ends with an error, and prints the place, at the first scope that differs.
  expect(execFileSync(tool, options, { encoding: 'utf8' })).toContain(name);
});

test('there are cases for members and for values', () => {
  expect(cases).toEqual(expect.arrayContaining(['members.test.house', 'values.test.house']));
});
