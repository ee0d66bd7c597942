import { describe, expect, it } from 'vitest';
import { analyze, mended, stage, told } from '../analyze.js';

/** Analyzes one property of a wall made of something, and gives its value in the model. */
async function wall(property: string) {
  const a = await analyze(
    `house h {\n  envelope {\n    wall south {\n      u-value: 0.5 W/m2K\n      ${property}\n    }\n  }\n}`,
  );
  const value = (key: string): unknown => {
    try {
      return (stage(a).house.envelope.wall[0] as unknown as Record<string, unknown>)[key];
    } catch {
      return 'withheld';
    }
  };
  return { a, value };
}

describe('quantities', () => {
  it.each([
    ['area: 12.5 m2', 12.5],
    ['area: 2 * (1.2 m * 1.5 m) + 0.9 m2', 4.5],
    ['area: 135 ft2', 12.5419],
    ['area: 8 ft 4 in * 3 m', 7.62],
    ['area: .5 m2', 0.5],
    ['area: 5e1 m2', 50],
    ['area: 12 m2 ± 3 %', 12],
    ['area: (10 m2 + 2 m2) / 2', 6],
  ])('%s', async (text, expected) => {
    const { a, value } = await wall(text);
    expect(told(a, 'input', 'syntax')).toEqual([]);
    expect(value('area')).toBeCloseTo(expected, 3);
  });

  it.each([
    ['area: 6,400 m2', 'syntax/number'],
    ['area: $5', 'syntax/number'],
    ['area: 12', 'input/wrong-dimension'],
    ['area: 12 m', 'input/wrong-dimension'],
    ['area: 12 sqm', 'input/unknown-unit'],
    ['area: 12 m2 + 3 m', 'input/wrong-dimension'],
    ['area: 0 m2', 'input/impossible'],
    ['area: -3 m2', 'input/impossible'],
    ['area: "12 m2"', 'input/wrong-kind'],
    ['area:', 'syntax/missing'],
    ['area: 12 m2 / 0', 'input/wrong-dimension'],
    ['area: 8 ft 4 cm', 'syntax/number'],
    ['area: 12 m2, area: 13 m2', 'input/duplicate-property'],
    ['area: 12 m2 ± 3 s', 'input/tolerance'],
    ['area: 1e300 m2 * 1e300', 'input/impossible'],
  ])('%s has no value, never another one', async (text, code) => {
    const { a, value } = await wall(text);
    expect(told(a, code).length, told(a).join('\n')).toBeGreaterThan(0);
    expect(value('area')).toBe('withheld');
  });

  it('read the typographic minus as a minus', async () => {
    const a = await analyze('house h {\n  design code { outdoor: −30 °C, indoor: 70 °F }\n}');
    expect(told(a, 'input', 'syntax')).toEqual([]);
    expect(stage(a).house.design[0].outdoor).toBe(-30);
    expect(stage(a).house.design[0].indoor).toBeCloseTo(21.111, 3);
  });

  it('offer the unit that was meant, and are right when it is taken', async () => {
    const a = await analyze(
      'house h {\n  design code { outdoor: -30 K, indoor: 72 °C }\n  envelope {\n    ceiling attic { area: 100 m2, r-value: 40 RSI }\n  }\n}',
    );
    expect(told(a, 'input').map(t => t.split(' ')[0])).toEqual([
      'input/wrong-dimension',
      'input/unit-slip',
      'input/unit-slip',
    ]);
    let text = mended(a, 'input/wrong-dimension', '°C');
    text = mended(await analyze(text), 'input/unit-slip');
    text = mended(await analyze(text), 'input/unit-slip');
    const b = await analyze(text);
    expect(told(b, 'input/unit-slip', 'input/wrong-dimension')).toEqual([]);
    expect(text).toContain('outdoor: -30 °C, indoor: 72 °F');
    expect(text).toContain('r-value: 40 R }');
  });

  it('keep to one currency', async () => {
    const a = await analyze(
      'house h {\n  currency: CAD\n  stage one { cost: 500 USD }\n  money { gas-service { fixed: 30 USD/month, energy: 9 CAD/GJ } }\n}',
    );
    expect(told(a, 'input/currency')).toHaveLength(2);
  });
});

describe('missing properties', () => {
  it('are told at the head of the block, and inserted with a value to be checked', async () => {
    const a = await analyze('house h {\n  envelope {\n    wall south {\n      r-value: 12 R\n    }\n  }\n}');
    expect(told(a, 'input/missing-property')).toEqual([
      'input/missing-property "south" wall south needs its area: area, openings included',
    ]);
    const text = mended(a, 'input/missing-property');
    expect(text).toContain('      r-value: 12 R\n      area: 10 m2\n    }');
    expect(told(await analyze(text), 'input')).toEqual([]);
  });
});

describe('tables', () => {
  const test = (readings: string, beside = {}) =>
    analyze(`house h {\n  envelope { blower-door-test t { readings: ${readings} } }\n}`, beside);
  const rows = (a: Awaited<ReturnType<typeof test>>) => stage(a).house.envelope.blowerDoorTest[0].readings;

  it('are rows with the names and units of their columns', async () => {
    const a = await test('table (pressure inWC, flow cfm) [\n 0.2 500\n 0.1 300\n]');
    expect(told(a, 'input', 'syntax')).toEqual([]);
    expect(rows(a)[0].pressure).toBeCloseTo(49.82, 2);
    expect(rows(a)[0].flow).toBeCloseTo(0.23597, 5);
  });

  it.each([
    ['table (pressure Pa, flow L/s) [\n 50 300\n 40\n]', 'input/ragged-row', '40'],
    ['table (pressure Pa, flow L/s) [\n 50 300\n 40 abc\n]', 'input/bad-cell', 'abc'],
    ['table (pressure Pa, flow L/s) [\n 50 -\n 40 200\n]', 'input/bad-cell', '-'],
    ['table (pressure Pa, flow m) [\n 50 300\n 40 200\n]', 'input/wrong-dimension', 'm'],
    ['table (pressure Pa, flw L/s) [\n 50 300\n 40 200\n]', 'input/unknown-column', 'flw'],
    ['table (pressure Pa) [\n 50\n 40\n]', 'input/missing-column', 'pressure Pa'],
    ['table (pressure Pa, flow L/s) [\n 50 300\n]', 'input/too-few-rows', ''],
  ])('%s', async (text, code, marked) => {
    const a = await test(text);
    const found = told(a, code);
    expect(found.length, told(a).join('\n')).toBeGreaterThan(0);
    if (marked) expect(found[0]).toContain(JSON.stringify(marked));
    expect(() => rows(a)).toThrow();
  });

  it('come from a csv beside the house', async () => {
    const csv = '# invented\n"dP (Pa)","Flow",note\n50,300,"a, b"\n40,250,c\n';
    const a = await test('csv "t.csv" (pressure "dP (Pa)" Pa, flow "Flow" L/s)', { 't.csv': csv });
    expect(told(a, 'input', 'syntax')).toEqual([]);
    expect(rows(a).map(r => r.flow)).toEqual([0.3, 0.25]);
  });

  it.each([
    ['dP,Flow\n50,300\n40,many\n', 'input/bad-csv', 'line 3: "many"'],
    ['dP,Flow\n50,300\n40\n', 'input/bad-csv', 'line 3 has 1 cells'],
    ['', 'input/bad-csv', 'empty'],
    ['dP,Flw\n50,300\n40,200\n', 'input/unknown-column', 'no column "Flow"'],
    ['dP,Flow\n50,"300\n40,200\n', 'input/bad-csv', 't.csv'],
    ['dP,Flow\r\n50,6 400\r\n40,200\r\n', 'input/bad-csv', 'line 2: "6 400"'],
  ])('tell what is wrong with a csv: %j', async (csv, code, words) => {
    const a = await test('csv "t.csv" (pressure "dP" Pa, flow "Flow" L/s)', { 't.csv': csv });
    expect(told(a, code)[0], told(a).join('\n')).toContain(words);
    expect(() => rows(a)).toThrow();
  });

  it('tell of a csv that is not there', async () => {
    const a = await test('csv "no.csv" (pressure "dP" Pa, flow "Flow" L/s)');
    expect(told(a, 'input')).toEqual(['input/file-missing "\\"no.csv\\"" there is no file "no.csv" beside this one']);
  });
});
