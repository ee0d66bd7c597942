import { parse } from 'csv-parse/sync';
import { evaluate } from 'mathjs';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { cells } from '../../server/report/width.js';
import { folderOf, wattwright } from './harness.js';

const HOUSE = `house small "A small house" {
  currency: CAD, electrical-code: cec-2024
  stated-load { heating: 8 kW, indoor: 22 °C, outdoor: -28 °C }
  design code { outdoor: -30 °C, indoor: 20 °C, source: "example" }
  storey main { area: 90 m2, height: 2.4 m, level: above-grade }
  heating { furnace old { fuel: natural-gas, output: 18 kW, afue: 80 % } }
  electrical {
    service { rating: 100 A }
    panel main { bus: 100 A, main-breaker: 100 A, spaces: 24 }
  }
  stage panel-work { add circuit c-dryer in main { breaker: 30 A, poles: 2, conductor: awg-10 } }
}
`;

const results = async (folder: string, ...args: string[]) => {
  const { out } = await wattwright(['calc', '--format', 'json', ...args], { folder });
  return JSON.parse(out) as {
    houses: {
      name: string;
      stages: {
        name: string;
        results: { name: string; si?: number; text?: string; withheld?: string; worksheet?: object[] }[];
      }[];
    }[];
  };
};

describe('a table of results', () => {
  it('has results as rows, stages as columns, and says why a number is missing', async () => {
    const folder = folderOf({ 'a.house': HOUSE });
    const { exit, out, err } = await wattwright(['calc', 'a.house', '--result', 'heating.*', '--result', 'main.*'], {
      folder,
    });
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(out).toMatch(/^small A small house {2}a\.house$/m);
    expect(out).toMatch(/^ +today +panel-work$/m);
    expect(out).toMatch(/^heating\.design-load +8 kW +8 kW$/m);
    expect(out).toMatch(/^main\.spaces-left +24 +22$/m);
    expect(out).toMatch(/^heating\.balance-point +– +–$/m);
    expect(out).toContain('– there is no heat pump in this stage: ');
  });

  it('fits the width: stages that do not are shown below, with their rows', async () => {
    for (const columns of [60, 80, 120]) {
      const { out } = await wattwright(['calc', 'samples/tamarack'], { columns });
      expect(Math.max(...out.split('\n').map(cells))).toBeLessThanOrEqual(columns);
      for (const stage of ['today', 'measure', 'shell', 'gas-closed', 'solar-roof', 'measure-again'])
        expect(out).toMatch(new RegExp(` ${stage}( |$)`, 'm'));
    }
  });

  it('shows headline results alone unless all are wanted', async () => {
    const folder = folderOf({ 'a.house': HOUSE });
    const rows = async (...args: string[]) =>
      (await results(folder, 'a.house', ...args)).houses[0].stages[0].results.length;
    const few = await rows();
    expect(few).toBeGreaterThan(2);
    expect(few).toBeLessThan(10);
    expect(await rows('--all')).toBeGreaterThan(3 * few);
  });

  it('speaks in the units of the project, or in those that are asked for', async () => {
    const folder = folderOf({ 'a.house': HOUSE, 'wattwright.json': '{ "units": "ip" }' });
    const text = async (...args: string[]) =>
      (await results(folder, 'a.house', '--result', 'heating.design-load', ...args)).houses[0].stages[0].results[0];
    expect((await text()).text).toBe('27297 BTU/h');
    expect(await text('--units', 'si')).toMatchObject({ text: '8 kW', si: 8000 });
  });
});

describe('results for other programs', () => {
  it('have their number in SI or the reason why there is none', async () => {
    const folder = folderOf({ 'a.house': HOUSE });
    const { houses } = await results(folder, 'a.house', '--all', '--stage', 'panel-work');
    expect(houses[0].stages.map(s => s.name)).toEqual(['panel-work']);
    for (const r of houses[0].stages[0].results) {
      expect('si' in r || 'withheld' in r, r.name).toBe(true);
      if ('si' in r) expect(Number.isFinite(r.si), r.name).toBe(true);
      else expect(r.withheld, r.name).toMatch(/\w/);
    }
  });

  it('are lines of a csv that other programs read', async () => {
    const folder = folderOf({ 'a.house': HOUSE });
    const { out } = await wattwright(['calc', '--format', 'csv', '--all', 'a.house'], { folder });
    const rows = parse(out, { columns: true }) as unknown as Record<string, string>[];
    const load = rows.find(r => r.result === 'heating.design-load' && r.stage === 'today');
    expect(load).toEqual({
      file: 'a.house',
      house: 'small',
      stage: 'today',
      result: 'heating.design-load',
      value: '8',
      unit: 'kW',
      si: '8000',
      withheld: '',
    });
    expect(rows.every(r => (r.si === '') !== (r.withheld === ''))).toBe(true);
  });

  it('can be written to a file', async () => {
    const folder = folderOf({ 'a.house': HOUSE });
    const { out } = await wattwright(['calc', 'a.house', '--format', 'csv', '--output', 'r.csv'], { folder });
    expect(out).toBe('results of 1 house are in r.csv\n');
    expect(readFileSync(path.join(folder, 'r.csv'), 'utf8')).toMatch(/^file,house,stage/);
  });
});

describe('a worksheet', () => {
  it('shows formula, numbers and source, and points back where nothing changed', async () => {
    const folder = folderOf({ 'a.house': HOUSE });
    const { out } = await wattwright(['calc', 'a.house', '--result', 'heating.design-load', '--worksheet'], { folder });
    expect(out).toContain('heating.design-load  small, today');
    expect(out).toMatch(/^ +8 kW, as in the house today$|^ +8 kW, as in/m);
    expect(Math.max(...out.split('\n').map(cells))).toBeLessThanOrEqual(80);
  });

  it('is given in json with lines that can be evaluated', async () => {
    const { houses } = await results(folderOf({ 'a.house': HOUSE }), 'a.house', '--worksheet', '--stage', 'today');
    const steps = houses[0].stages[0].results.flatMap(
      r => (r.worksheet ?? []) as { formula?: string; value: number; inputs?: Record<string, [number, string]> }[],
    );
    const told = steps.filter(s => s.formula);
    expect(told.length).toBeGreaterThan(3);
    for (const { formula, inputs, value } of told) {
      const scope = Object.fromEntries(Object.entries(inputs ?? {}).map(([k, [v]]) => [k, v]));
      expect(evaluate(formula!, scope), formula).toBeCloseTo(value, 6);
    }
  });
});

describe('a wrong use', () => {
  it('names what is nearest', async () => {
    const folder = folderOf({ 'a.house': HOUSE, 'lib.house': 'assembly mine { r-value: 12 R }\n' });
    const tell = async (...args: string[]) => {
      const { exit, out, err } = await wattwright(['calc', ...args], { folder });
      expect({ exit, out }).toEqual({ exit: 2, out: '' });
      return err;
    };
    expect(await tell('a.house', '--stage', 'panel-wrk')).toBe(
      'wattwright: there is no stage panel-wrk; the nearest is panel-work\n',
    );
    expect(await tell('a.house', '--result', 'heating.desing-load')).toContain('the nearest is heating.design-load');
    expect(await tell('lib.house')).toContain('there is no house in lib.house');
  });

  it('is not that a file has errors: what is left is computed, and the errors are told', async () => {
    const folder = folderOf({ 'a.house': HOUSE.replace('rating: 100 A', 'rating: 100 kg') });
    const { exit, out, err } = await wattwright(['calc', 'a.house'], { folder });
    expect(exit).toBe(0);
    expect(out).toMatch(/^heating\.design-load +8 kW/m);
    expect(out).toContain('rating could not be read');
    expect(err).toBe('a.house: 1 error; wattwright check a.house tells them\n');
  });
});
