import { describe, expect, it } from 'vitest';
import { cells } from '../../server/report/width.js';
import { CLEAN, folderOf, wattwright } from './harness.js';

/** Bad texts beside a good one: each has a finding, and the good one is read as ever. */
const bad: Record<string, () => string | Buffer> = {
  'binary junk': () => Buffer.from(Array.from({ length: 20_000 }, (_, i) => (i * 7919 + ((i * i) % 251)) % 256)),
  'a program': () => Buffer.concat([Buffer.from([0x7f, 0x45, 0x4c, 0x46, 2, 1, 1, 0]), Buffer.alloc(4096)]),
  'a line of 10 MB': () => `house a { ${'x'.repeat(10_000_000)}`,
  'a file of 20 MB': () => Buffer.alloc(20_000_000, 'a'),
  'UTF-16': () => Buffer.from('\ufeffhouse a { }', 'utf16le'),
  '5,000 brackets': () => `house a { storey b { area: ${'('.repeat(5000)} } }`,
  '20,000 operators': () => `house a { storey b { area: 1 m2${' + 1 m2'.repeat(20_000)} } }`,
  'an html page': () => '<!doctype html><html><body><p>Not found</p></body></html>',
};

describe.each(Object.entries(bad))('%s', (_, make) => {
  it('is told in bounded time and leaves the next file alone', async () => {
    const folder = folderOf({ 'bad.house': make(), 'good.house': CLEAN });
    const begun = performance.now();
    const text = await wattwright(['check', '.'], { folder });
    expect(performance.now() - begun).toBeLessThan(10_000);
    expect(text).toMatchObject({ exit: 1, err: '' });
    expect(text.out).toContain('bad.house:1:');
    // Nothing of the file may steer the terminal, nor flood it.
    expect(text.out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
    expect(Math.max(...text.out.split('\n').map(cells))).toBeLessThanOrEqual(80);
    const json = await wattwright(['check', '.', '--format', 'json'], { folder });
    const { findings } = JSON.parse(json.out) as { findings: { path: string }[] };
    expect(new Set(findings.map(f => f.path))).toEqual(new Set(['bad.house']));
  });

  it('does not keep calc and explain from their work', async () => {
    const folder = folderOf({ 'bad.house': make(), 'good.house': CLEAN });
    const { exit, out } = await wattwright(['calc', '.'], { folder });
    expect(exit).toBe(0);
    expect(out).toContain('clean');
  });
});

it('an empty file and one of comments alone are clean', async () => {
  const folder = folderOf({
    'empty.house': '',
    'blank.house': ' \n\n',
    'note.house': '// to be written\n',
    'bom.house': `\ufeff${CLEAN}`,
  });
  expect(await wattwright(['check', '.'], { folder })).toMatchObject({ exit: 0, err: '' });
});

it('a broken settings file is told, and nothing of it is used', async () => {
  const folder = folderOf({ 'a.house': CLEAN, 'wattwright.json': '{ "units": "ip", ' });
  const { exit, out } = await wattwright(['check', 'a.house'], { folder });
  expect(exit).toBe(1);
  expect(out).toContain('wattwright.json:1:1  error settings/unreadable');
});
