import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

const script = new URL('../../../server/make/prepare.mjs', import.meta.url).href;
const { installed } = (await import(script)) as { installed: (folder: string) => boolean };

let folder: string;
beforeEach(() => (folder = mkdtempSync(path.join(tmpdir(), 'prepare-'))));
afterEach(() => rmSync(folder, { recursive: true }));

type Packages = Record<string, { version: string; optional?: boolean }>;

function lay(file: string, packages: Packages): void {
  const place = path.join(folder, file);
  mkdirSync(path.dirname(place), { recursive: true });
  writeFileSync(place, JSON.stringify({ packages: { '': {}, ...packages } }));
}

function layPresent(packages: Packages): void {
  lay('node_modules/.package-lock.json', packages);
  for (const place of Object.keys(packages)) mkdirSync(path.join(folder, place), { recursive: true });
}

describe('packages count as installed', () => {
  const wanted: Packages = {
    'node_modules/left': { version: '1.2.0' },
    'node_modules/other-machine': { version: '3.0.0', optional: true },
  };
  beforeEach(() => lay('package-lock.json', wanted));

  test('when all of the lock are there, save those for other machines', () => {
    layPresent({ 'node_modules/left': { version: '1.2.0' } });
    expect(installed(folder)).toBe(true);
  });

  test('but not before anything is', () => {
    expect(installed(folder)).toBe(false);
  });

  test('nor with another version', () => {
    layPresent({ 'node_modules/left': { version: '1.1.0' } });
    expect(installed(folder)).toBe(false);
  });

  test('nor when an optional one is of another version', () => {
    layPresent({ 'node_modules/left': { version: '1.2.0' }, 'node_modules/other-machine': { version: '2.0.0' } });
    expect(installed(folder)).toBe(false);
  });

  test('nor when a folder was removed by hand', () => {
    lay('node_modules/.package-lock.json', { 'node_modules/left': { version: '1.2.0' } });
    expect(installed(folder)).toBe(false);
  });

  test('nor when what is there cannot be read', () => {
    layPresent({ 'node_modules/left': { version: '1.2.0' } });
    writeFileSync(path.join(folder, 'node_modules/.package-lock.json'), '{ "packages": ');
    expect(installed(folder)).toBe(false);
  });
});
