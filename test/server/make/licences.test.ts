import { describe, expect, test } from 'vitest';

const script = new URL('../../../server/make/licences.mjs', import.meta.url).href;
const { licences } = (await import(script)) as {
  licences: (
    built: { metafile: { inputs: Record<string, object> } }[],
  ) => { name: string; licence: string; text: string }[];
};

const bundleOf = (...inputs: string[]) => [
  { metafile: { inputs: Object.fromEntries(inputs.map(input => [input, {}])) } },
];

describe('licences of what is bundled', () => {
  test('each package once, with its notice', () => {
    const built = bundleOf(
      'language/index.ts',
      'node_modules/esbuild/lib/main.js',
      'node_modules/esbuild/lib/other.js',
    );
    const [only, ...others] = licences(built);
    expect(only).toMatchObject({ name: 'esbuild', licence: 'MIT' });
    expect(only?.text).toContain('Permission is hereby granted');
    expect(others).toEqual([]);
  });

  test('a package within a scope is named with it', () => {
    expect(licences(bundleOf('node_modules/@types/node/index.d.ts'))[0]?.name).toBe('@types/node');
  });

  test('one that is not permissive ends the build and is named', () => {
    // MPL-2.0, as its own package.json says; a development tool that is never bundled.
    expect(() => licences(bundleOf('node_modules/lightningcss/node/index.js'))).toThrow(/lightningcss .*MPL-2\.0/);
  });
});
