import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { readSettings } from '../../language/analysis/settings.js';
import { rules } from '../../language/rules/index.js';
import { EXIT } from '../../server/cli/exit.js';
import { analyze, told } from '../analyze.js';
import { folderOf, ROOT, wattwright } from '../cli/harness.js';
import { codeWords, fence, fences, links, missing, pageText } from './page.js';

const readme = pageText('README.md');
const house = fence(readme, 'house');
const smaller = house.replace('c-strip in main { breaker: 30 A', 'c-strip in main { breaker: 20 A');
const files = { 'house.house': house, 'smaller-breaker.house': smaller };

test('the first house is clean, down to its notes', async () => {
  expect(told(await analyze(house))).toEqual([]);
});

test('the acceptance that is shown is understood', async () => {
  const line = codeWords(readme).find(word => word.startsWith('accept '))!;
  const found = told(await analyze(house.replace(/}\s*$/, `  ${line}\n}\n`)));
  expect(found).toHaveLength(1);
  expect(found[0]).toMatch(/^accept\/unused /);
});

describe('what is printed', () => {
  const shown = fences(readme)
    .filter(f => f.language === 'console')
    .flatMap(f => f.text.split(/^\$ /m).slice(1))
    .map(part => ({ command: part.slice(0, part.indexOf('\n')), output: part.slice(part.indexOf('\n') + 1) }));

  test.each(shown)('by $command', async ({ command, output }) => {
    const [program, ...args] = command.split(' ');
    expect(program).toBe('wattwright');
    const { exit, out, err } = await wattwright(args, { folder: folderOf(files) });
    expect(missing(output, out + err)).toBeUndefined();
    if (!/^\s*…$/m.test(output)) expect((out + err).trimEnd()).toBe(output.trimEnd());
    expect(exit).toBe(args.includes('smaller-breaker.house') ? EXIT.findings : EXIT.clean);
  });

  test('by npm start', async () => {
    const script = readFileSync(path.join(ROOT, 'server/make/start.mjs'), 'utf8');
    const houses = /const houses = \[(.*)\]/
      .exec(script)![1]
      .split(', ')
      .map(name => name.slice(1, -1));
    const [, calc, check] = [...script.matchAll(/^step\('(.*?)'/gm)].map(([, title]) => title);
    const printed = [
      calc,
      '',
      (await wattwright(['calc', ...houses])).out,
      check,
      '',
      (await wattwright(['check', ...houses])).out,
      /What to do next[\s\S]*?(?=`)/.exec(script)![0],
    ];
    expect(missing(fence(readme, 'start'), printed.join('\n'))).toBeUndefined();
  });
});

describe('commands', () => {
  const typed = fences(readme)
    .filter(f => f.language === 'sh')
    .flatMap(f => f.text.trim().split('\n'));
  const ours = typed.filter(line => line.startsWith('wattwright '));

  test('of npm are scripts of the project, and two of them begin', () => {
    const npm = typed.filter(line => !ours.includes(line));
    const inText = codeWords(readme).filter(word => word.startsWith('npm run'));
    expect(npm.slice(0, 2)).toEqual(['npm start', 'npm test']);
    for (const line of [...npm, ...inText]) expect(Object.keys(manifest.scripts)).toContain(line.split(' ').at(-1));
  });

  test.each(ours)('%s', async line => {
    const folder = folderOf({ 'plans/house.house': house });
    const { exit, err } = await wattwright(line.split(' ').slice(1), { folder });
    expect(err).not.toContain('wattwright:');
    expect(exit).toBe(EXIT.clean);
  });

  test('are all that there are, with options that there are', async () => {
    const { out: help } = await wattwright(['--help']);
    const names = [...help.matchAll(/^ {2}([a-z]+) \[/gm)].map(([, name]) => name).filter(name => name !== 'help');
    const told = [...readme.matchAll(/^\| `([a-z]+)` +\|/gm)].map(([, name]) => name);
    expect(told).toEqual(names);
    const helps = await Promise.all(names.map(async name => (await wattwright(['help', name])).out));
    const options = new Set(helps.join('\n').match(/--[a-z-]+/g));
    for (const option of readme.match(/(?<=[` ])--[a-z][a-z-]*/g) ?? []) expect([...options]).toContain(option);
  });

  test('end with the codes of the table', () => {
    const told = [...readme.matchAll(/^\| (\d) +\|/gm)].map(([, code]) => Number(code));
    expect(told).toEqual(Object.values(EXIT));
  });
});

test('the settings are read, and decide', async () => {
  const text = fence(readme, 'json');
  const read = readSettings(text);
  if ('problem' in read) throw new Error(read.problem);
  const codes = rules.map(rule => rule.code as string);
  for (const code of Object.keys(read.settings.severity)) expect(codes).toContain(code);
  const { out } = await wattwright(['calc', '.'], {
    folder: folderOf({ 'house.house': house, 'wattwright.json': text }),
  });
  expect(out).toContain('BTU/h');
});

test('files that are named exist', () => {
  const paths = codeWords(readme).filter(word => /^(dist|test|samples|server|language)\//.test(word));
  expect(paths.length).toBeGreaterThan(2);
  // The extension is packed on demand.
  const built = paths.filter(file => file !== 'dist/wattwright.vsix');
  for (const file of [...links(readme), ...built]) expect(existsSync(path.join(ROOT, file)), file).toBe(true);
});

test('what it needs is what the project says', () => {
  const wanted = /Node (\d+\.\d+) or later/.exec(readme)![1];
  expect(manifest.engines.node).toBe(`>=${wanted}.0`);
  expect(manifest.engines.vscode).toBe(`^${/VS Code (\d+\.\d+) or later/.exec(readme)![1]}.0`);
});
