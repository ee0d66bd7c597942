import { describe, expect, it } from 'vitest';
import { inputCodes } from '../../language/build/index.js';
import { results } from '../../language/results/index.js';
import { rules } from '../../language/rules/index.js';
import { blocks } from '../../language/vocabulary/index.js';
import { pageCodes, pagesFolder } from '../../server/cli/pages.js';
import { cells } from '../../server/report/width.js';
import { wattwright } from './harness.js';

const explained = async (...words: string[]): Promise<string> => {
  const { exit, out, err } = await wattwright(['explain', ...words]);
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  expect(
    Math.max(
      ...out
        .split('\n')
        .filter(l => !l.startsWith('    '))
        .map(cells),
    ),
  ).toBeLessThanOrEqual(80);
  return out;
};

describe('explain', () => {
  it('knows every finding, result, block and property by its name', async () => {
    expect(pageCodes(pagesFolder()!)).toEqual(expect.arrayContaining(rules.map(r => r.code)));
    expect(pageCodes(pagesFolder()!)).toEqual(expect.arrayContaining(Object.keys(inputCodes)));
    for (const code of pageCodes(pagesFolder()!)) expect(await explained(code)).toContain('What it rests on');
    for (const { name, doc } of results)
      expect((await explained(name)).replace(/\s+/g, ' ')).toContain(doc.slice(0, 40).replaceAll('`', ''));
    for (const { kind, properties } of blocks.values()) {
      const page = await explained(kind);
      for (const name of Object.keys(properties)) expect(page, `${kind}.${name}`).toContain(`- ${name}: `);
    }
    expect(await explained('wall.area')).toContain('0.1 m2 to 1000 m2');
    expect(await explained('main.spaces-left')).toContain('NAME.spaces-left');
  });

  it('finds a block by what people call it', async () => {
    expect(await explained('heat strip')).toMatch(/^auxiliary\n/);
    expect(await explained('heat', 'strip')).toMatch(/^auxiliary\n/);
    expect(await explained('EVEMS')).toMatch(/^load-manager\n/);
    expect(await explained('evse')).toMatch(/^evse\n/);
    for (const { kind, also } of blocks.values())
      for (const word of also ?? []) expect(await explained(word), word).toContain(kind);
  });

  it('prints the page of a finding as text: no marks of Markdown, examples with their squiggle', async () => {
    expect(await explained('input/wrong-dimension')).toMatchInlineSnapshot(`
      "input/wrong-dimension

      A quantity has another dimension than its property, or no unit at all.

      Why it matters

      A length is no area, and a temperature is no difference of temperatures. A
      number without its unit is where most slips begin.

      What it rests on

      Every quantity carries its unit through the arithmetic; the vocabulary names the
      dimension of each property. Dimensions follow the International System of Units
      (BIPM, The International System of Units, 9th edition).

      How to mend it

      Write the unit that was meant; where one is likely, the fix offers it.

      Fails

          house example {
            envelope {
              wall south { area: 24 m, r-value: 2.1 RSI }
          //                     ^^^^ input/wrong-dimension
            }
          }

      Passes

          house example {
            envelope {
              wall south { area: 24 m2, r-value: 2.1 RSI }
            }
          }
      "
    `);
  });

  it('lists everything there is when asked for nothing', async () => {
    const out = await explained();
    for (const name of [...blocks.keys(), ...results.map(r => r.name), ...rules.map(r => r.code)])
      expect(out).toContain(name);
  });

  it('shows the worksheet of a result in a house', async () => {
    const { exit, out } = await wattwright([
      ...['explain', 'heating.worst-margin', '--in', 'samples/start/start.house', '--stage', 'heat'],
    ]);
    expect(exit).toBe(0);
    expect(out).toContain('Worst margin');
    const none = await wattwright(['explain', 'auxiliary', '--in', 'samples/start/start.house']);
    expect(none).toMatchObject({ exit: 2, out: '' });
  });

  it('names what is nearest to an unknown word', async () => {
    const { exit, out, err } = await wattwright(['explain', 'auxilary']);
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(err).toContain('the nearest is auxiliary');
  });
});
