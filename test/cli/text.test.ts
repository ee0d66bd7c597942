import { describe, expect, it } from 'vitest';
import { coloured } from '../../server/report/paint.js';
import { cells } from '../../server/report/width.js';
import { folderOf, wattwright } from './harness.js';

const widest = (text: string): number => Math.max(...text.split('\n').map(cells));

describe('a finding in the terminal', () => {
  it('shows its place, its message, the source line and the squiggle', async () => {
    const folder = folderOf({
      'a.house': `house a {
  envelope {
    wall north { area: 24 m2, assembly: wall-2x4-r13 }
  }
  stage shell { remove south }
}
`,
    });
    const { out } = await wattwright(['check', 'a.house'], { folder });
    expect(out).toMatchInlineSnapshot(`
      "a.house:3:41  error input/unknown-name
        there is no assembly wall-2x4-r13; the nearest is wall-2x4-r12
         3 |     wall north { area: 24 m2, assembly: wall-2x4-r13 }
           |                                         ^^^^^^^^^^^^
        help: wattwright explain input/unknown-name

      a.house:5:24  error input/unknown-name
        there is no south; the nearest is north
         5 |   stage shell { remove south }
           |                        ^^^^^
        help: wattwright explain input/unknown-name

      2 errors (1 house in 1 file)
      "
    `);
  });

  it('names the stages when it holds in some of them only, and the other places', async () => {
    const { out } = await wattwright(['check', 'samples/faults/faults.house']);
    const one = out.split('\n\n').find(f => f.includes('management/sheds-heat-first'));
    expect(one?.replace(/\d+/g, 'N')).toMatchInlineSnapshot(`
      "samples/faults/faults.house:N:N  warning management/sheds-heat-first
        strip is shed first, before charger, which is shed third: the house cools
        while the vehicle charges
       N |       channel two { sheds: strip, shed-order: N }
           |                                               ^
        see line N: the vehicle charger is kept longer
        in manager-later and larger-service
        help: wattwright explain management/sheds-heat-first"
    `);
  });

  it('fits the width, however long the line', async () => {
    const folder = folderOf({
      'a.house': `house a { envelope { ${'ceiling attic { area: 92 m2, r-value: 5 RSI } '.repeat(40)} wall w { area: 12 kg } } }\n`,
    });
    for (const columns of [60, 80, 120]) {
      const { out } = await wattwright(['check', 'a.house'], { folder, columns });
      expect(widest(out)).toBeLessThanOrEqual(columns);
      const lines = out.split('\n');
      const i = lines.findIndex((l, at) => l.includes('12 kg') && lines[at + 1].includes('^^^^^'));
      expect(lines[i].indexOf('12 kg')).toBe(lines[i + 1].indexOf('^'));
    }
  });

  it('lies under its text behind wide letters, combining marks and tabs', async () => {
    const folder = folderOf({ 'a.house': `house a "木の家 e\u0301" {\tstorey 地下 { area: 9 kg } }\n` });
    const { out } = await wattwright(['check', 'a.house'], { folder });
    const lines = out.split('\n');
    const i = lines.findIndex(l => l.includes('木') && l.includes('|'));
    const before = lines[i].slice(0, lines[i].indexOf('地下'));
    expect(lines[i + 1].indexOf('^')).toBe(cells(before));
  });

  it('does not let a file steer the terminal', async () => {
    const folder = folderOf({
      'a.house': 'house a {\n  storey \u001b[31mred\u202e\u0007 { area: 9 \u001b]0;x\u0007 }\n}\n',
    });
    const { out } = await wattwright(['check', 'a.house'], { folder });
    expect(out).toContain('storey');
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  });

  it('is coloured where colours are wanted, with the same text', async () => {
    const plainly = await wattwright(['check', 'samples/faults']);
    const painted = await wattwright(['check', 'samples/faults'], { paint: coloured });
    expect(painted.out).toContain('\u001b[31merror\u001b[39m');

    expect(painted.out.replace(/\u001b\[\d+m/g, '')).toBe(plainly.out);
  });
});

it('says when nothing is found, and how much was looked at', async () => {
  const folder = folderOf({
    'a.house': 'house a {\n  storey main { area: 92 m2, height: 2.4 m, level: above-grade }\n}\n',
  });
  expect((await wattwright(['check', 'a.house'], { folder })).out).toBe('nothing found (1 house in 1 file)\n');
});
