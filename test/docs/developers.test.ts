import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { ROOT } from '../cli/harness.js';
import { codeWords, fences, links, missing, pageText } from './page.js';

const page = pageText('DEVELOPERS.md');
const words = codeWords(page);
const quoted = fences(page).filter(f => f.about !== '');

/** Quotations begin at the margin, wherever they stand in their file. */
const unindented = (text: string): string => text.replace(/^[ \t]+/gm, '');

describe('quotations', () => {
  test('are there for a property, a calculation, a rule and a command', () => {
    const rooms = quoted.map(f => f.about.split('/').slice(0, 2).join('/'));
    for (const room of ['language/vocabulary', 'language/engine', 'language/results', 'language/rules', 'server/cli'])
      expect(rooms).toContain(room);
  });

  test.each(quoted)('of $about are what stands there', ({ about, text }) => {
    expect(missing(unindented(text), unindented(pageText(about)))).toBeUndefined();
  });

  test('that are not are noticed', () => {
    const source = 'first\n  second\nthird\n';
    expect(missing('first\n// …\nthird\n', source)).toBeUndefined();
    expect(missing('third\n…\nfirst\n', source)).toBe('first');
    expect(missing('first\nthird\n', source)).toBe('first\nthird');
    expect(missing('second\n', source)).toBe('second');
  });
});

describe('what is named', () => {
  const isPath = (word: string) => /^(language|server|client|test|samples|dist|\.ci)\/[\w./-]*$|^\.[a-z]/.test(word);
  // Made on demand, not by the build.
  const made = ['dist/wattwright.vsix', 'dist/screenshots', '.vsix', '.house'];

  test('exists, as a file or folder', () => {
    const paths = words.filter(isPath).filter(word => !made.includes(word));
    expect(paths.length).toBeGreaterThan(20);
    for (const file of [...paths, ...links(page)]) expect(existsSync(path.join(ROOT, file)), file).toBe(true);
  });

  test('exists, as a script of npm', () => {
    const typed = fences(page).flatMap(f => (f.language === 'sh' ? f.text.trim().split('\n') : []));
    const scripts = [...typed, ...words].flatMap(line => /^npm run ([\w:-]+)/.exec(line)?.[1] ?? []);
    expect(scripts).toEqual(expect.arrayContaining(['build', 'bench', 'package']));
    for (const script of scripts) expect(Object.keys(manifest.scripts)).toContain(script);
  });

  test('exists, as a variable that is read', () => {
    const variables = new Set(words.flatMap(word => word.match(/\b(?:WATTWRIGHT|UPDATE)_[A-Z]+/g) ?? []));
    const sources = ['server', 'test', '.ci'].flatMap(folder =>
      readdirSync(path.join(ROOT, folder), { recursive: true, withFileTypes: true })
        .filter(entry => entry.isFile() && !entry.parentPath.includes('node_modules'))
        .filter(entry => /(\.(ts|mjs)|^run)$/.test(entry.name) && !entry.parentPath.endsWith('docs'))
        .map(entry => readFileSync(path.join(entry.parentPath, entry.name), 'utf8')),
    );
    expect(variables.size).toBeGreaterThan(2);
    for (const variable of variables)
      expect(
        sources.some(text => text.includes(variable)),
        variable,
      ).toBe(true);
  });
});

test('the table of rooms is that of the boundaries', () => {
  const { forbidden } = createRequire(import.meta.url)('../../.dependency-cruiser.cjs') as {
    forbidden: readonly { readonly comment?: string }[];
  };
  const short = (room: string) => room.replace('language/', '');
  const enforced = forbidden.flatMap(({ comment }) => {
    const [, room, list] = /^(\S+) may import ((?!types only).*)\.$/.exec(comment ?? '') ?? [];
    if (room === undefined) return [];
    return [[short(room), list === 'no other room' ? [] : list.split(', ').map(short)]];
  });
  const told = [...page.matchAll(/^\| `([a-z/]+)` +\| [^|]+\| ([^|]+)\| [^|]+\|$/gm)].map(([, room, list]) => [
    room,
    [...list.matchAll(/`([^`]+)`/g)].map(([, name]) => name),
  ]);
  expect(Object.fromEntries(told)).toEqual(Object.fromEntries(enforced));
});

test('pinned versions are those of the project', () => {
  const pinned: Readonly<Record<string, string>> = manifest.devDependencies;
  const list = page.slice(page.indexOf('## Versions'));
  const told = [...list.matchAll(/^- ((?:`[^`]+`(?: and )?)+) (\d+\.\d+\.\d+)/gm)];
  expect(told.length).toBe(3);
  for (const [, names, version] of told)
    for (const [, name] of names.matchAll(/`([^`]+)`/g)) expect(pinned[name], name).toBe(version);
});
