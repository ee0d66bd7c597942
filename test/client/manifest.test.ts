import { existsSync, readFileSync } from 'node:fs';
import { globSync } from 'tinyglobby';
import { describe, expect, test } from 'vitest';

const manifest = JSON.parse(readFileSync('package.json', 'utf8'));
const sources = globSync('client/**/*.ts').map(file => readFileSync(file, 'utf8'));
const contributed: string[] = manifest.contributes.commands.map((one: { command: string }) => one.command);
const registered = sources.flatMap(text => [...text.matchAll(/registerCommand\('([^']+)'/g)].map(([, name]) => name));

describe('what package.json promises to the editor', () => {
  test('every command is registered, and none besides', () => {
    expect([...registered].sort()).toEqual([...contributed].sort());
  });

  test('every command in a menu is contributed', () => {
    const menus = Object.values(manifest.contributes.menus).flat() as { command: string }[];
    for (const { command } of menus) expect(contributed).toContain(command);
  });

  test('grammar and language configuration are there and are packaged', () => {
    const packaged = readFileSync('.vscodeignore', 'utf8');
    const [language] = manifest.contributes.languages;
    const [grammar] = manifest.contributes.grammars;
    for (const file of [language.configuration, grammar.path].map((name: string) => name.replace('./', ''))) {
      expect(existsSync(file)).toBe(true);
      expect(packaged).toContain(`!${file}`);
    }
    expect(JSON.parse(readFileSync(grammar.path, 'utf8')).scopeName).toBe(grammar.scopeName);
  });

  test('the editor types are those of the oldest editor supported', () => {
    expect(manifest.engines.vscode).toBe(`^${manifest.devDependencies['@types/vscode']}`);
  });

  test('it works in restricted mode', () => {
    expect(manifest.capabilities.untrustedWorkspaces.supported).toBe(true);
  });

  test('settings are described and have defaults', () => {
    for (const [name, setting] of Object.entries<{ description?: string; default?: unknown }>(
      manifest.contributes.configuration.properties,
    )) {
      expect(name).toMatch(/^wattwright\./);
      expect(setting.description).toMatch(/\.$/);
      expect(setting.default).toBeDefined();
    }
  });
});
