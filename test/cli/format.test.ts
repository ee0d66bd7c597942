import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CLEAN, folderOf, wattwright } from './harness.js';

const UNTIDY = 'house a {\nstorey   main { area: 92 m2 ,height:2.4 m, level: above-grade }\n    }\n';
const TIDY = 'house a {\n  storey main { area: 92 m2, height: 2.4 m, level: above-grade }\n}\n';

describe('format', () => {
  it('writes what is not in order, and only that', async () => {
    const folder = folderOf({ 'a.house': UNTIDY, 'b.house': CLEAN });
    const read = (name: string) => readFileSync(path.join(folder, name), 'utf8');
    const first = await wattwright(['format', '.'], { folder });
    expect(first).toEqual({ exit: 0, out: 'a.house\n', err: '1 file of 2 set in order\n' });
    expect(read('a.house')).toBe(TIDY);
    expect(read('b.house')).toBe(CLEAN);
    expect(await wattwright(['format', '.'], { folder })).toEqual({
      exit: 0,
      out: '',
      err: '0 files of 2 set in order\n',
    });
  });

  it('lists and changes nothing with --check', async () => {
    const folder = folderOf({ 'a.house': UNTIDY, 'b.house': CLEAN });
    const { exit, out, err } = await wattwright(['format', '--check', '.'], { folder });
    expect({ exit, out, err }).toEqual({ exit: 1, out: 'a.house\n', err: '1 file of 2 to be set in order\n' });
    expect(readFileSync(path.join(folder, 'a.house'), 'utf8')).toBe(UNTIDY);
    expect((await wattwright(['format', '--check', 'b.house'], { folder })).exit).toBe(0);
  });

  it('is a filter for editors', async () => {
    expect(await wattwright(['format', '-'], { piped: UNTIDY })).toEqual({ exit: 0, out: TIDY, err: '' });
    expect(await wattwright(['format', '-', '--check'], { piped: UNTIDY })).toMatchObject({ exit: 1 });
  });

  it('leaves damaged lines as they are and loses nothing', async () => {
    const broken = 'house a {\nstorey main { area: 92 , height 2.4 }}}\n     storey up { area: 9 m2 }\n}\n';
    const { out } = await wattwright(['format', '-'], { piped: broken });
    expect(out.replace(/\s+/g, '')).toBe(broken.replace(/\s+/g, ''));
    expect(out).toContain('storey main { area: 92 , height 2.4 }}}');
  });

  it('does not write a file that is not all UTF-8', async () => {
    const bytes = Buffer.concat([Buffer.from(UNTIDY.replace('house a', 'house a "')), Buffer.from([0xe9, 0x22, 0x0a])]);
    const folder = folderOf({ 'a.house': bytes });
    const { exit, err } = await wattwright(['format', 'a.house'], { folder });
    expect(exit).toBe(2);
    expect(err).toContain('a.house is left as it is: it is not all UTF-8');
    expect(readFileSync(path.join(folder, 'a.house')).equals(bytes)).toBe(true);
  });
});
