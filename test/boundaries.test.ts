import { build } from 'esbuild';
import type { BuildResult } from 'esbuild';
import { globSync } from 'tinyglobby';
import { beforeAll, describe, expect, test } from 'vitest';

/** The rooms of meaning and numbers: they work in any host, so neither parser, editor nor Node may be in them. */
const pure = ['units', 'vocabulary', 'model', 'codes', 'engine', 'results', 'rules'];
const sources = globSync(pure.map(room => `language/${room}/**/*.ts`));

describe('a bundle of the pure rooms alone', () => {
  let inputs: string[];
  let external: string[];

  beforeAll(async () => {
    const bundle = await bundleOf(sources.map(file => `import ${JSON.stringify(`./${file}`)};`).join('\n'));
    inputs = Object.keys(bundle.metafile.inputs);
    external = externalImports(bundle);
  });

  test('holds their files', () => {
    expect(inputs.filter(file => file.startsWith('language/units/')).length).toBeGreaterThan(1);
    expect(inputs).toEqual(expect.arrayContaining(sources));
  });

  test('holds no package at all', () => {
    expect(inputs.filter(file => file.includes('node_modules'))).toEqual([]);
  });

  test('holds no other room', () => {
    const rooms = new RegExp(`^(<stdin>|language/(${pure.join('|')})/)`);
    expect(inputs.filter(file => !rooms.test(file))).toEqual([]);
  });

  test('asks nothing of Node or an editor', () => {
    expect(external).toEqual([]);
  });
});

test('the measure notices Node and a parser', async () => {
  const bundle = await bundleOf(
    `import 'node:fs'; import { EmptyFileSystem } from 'langium'; console.log(EmptyFileSystem);`,
  );
  expect(externalImports(bundle)).toContain('node:fs');
  expect(Object.keys(bundle.metafile.inputs).some(file => file.includes('node_modules/chevrotain'))).toBe(true);
});

function bundleOf(contents: string) {
  return build({
    stdin: { contents, resolveDir: '.', loader: 'ts' },
    bundle: true,
    write: false,
    metafile: true,
    // With this platform whatever belongs to Node counts as an external import.
    platform: 'node',
    external: ['vscode'],
    treeShaking: false,
    logLevel: 'silent',
  });
}

function externalImports(bundle: BuildResult<{ metafile: true }>): string[] {
  return Object.values(bundle.metafile.inputs).flatMap(input =>
    input.imports.filter(one => one.external).map(one => one.path),
  );
}
