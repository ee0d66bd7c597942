import { afterEach, describe, expect, test, vi } from 'vitest';

const script = new URL('../../../server/make/bundle.mjs', import.meta.url).href;
const { report } = (await import(script)) as {
  report: (built: { out: string; bytes: number; limit: number }[]) => void;
};

afterEach(() => vi.restoreAllMocks());

describe('sizes of the bundles', () => {
  test('one over its limit ends the build and is named', () => {
    vi.spyOn(console, 'log').mockReturnValue();
    const small = { out: 'dist/small.js', bytes: 999, limit: 1000 };
    const large = { out: 'dist/large.js', bytes: 1001, limit: 1000 };
    expect(() => report([small, large])).toThrow(/limit of size: dist\/large\.js$/);
  });

  test('each is printed with its limit, in thousands of bytes', () => {
    const print = vi.spyOn(console, 'log').mockReturnValue();
    report([{ out: 'dist/client/preview.js', bytes: 364_551, limit: 400_000 }]);
    expect(print.mock.calls.flat().join('\n')).toMatch(/^dist\/client\/preview\.js +365 kB of at most 400 kB$/);
  });
});
