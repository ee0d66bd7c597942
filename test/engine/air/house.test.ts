import { describe, expect, test } from 'vitest';
import { fitLeakage } from '../../../language/engine/air/blower-door.js';
import { withoutZeroFlow } from '../../../language/engine/air/fan-corrections.js';
import { airLoad, infiltrationAtDesign } from '../../../language/engine/air/house-air.js';
import { houseLeakage, latestTest, testedLeakage } from '../../../language/engine/air/house-leakage.js';
import { combineInQuadrature } from '../../../language/engine/air/ventilation-air.js';
import { testFaults } from '../../../language/engine/air/test-acceptance.js';
import { airResults } from '../../../language/results/air.js';
import { make, makeHouse } from '../../make-house.js';
import { checkSheet, stepsOf } from '../../worksheets.js';

/** Readings on the line 0.06·Δp^0.65 m³/s. */
const law = (coefficient: number, pressures = [60, 50, 40, 30, 20, 15]) =>
  pressures.map(pressure => ({ pressure, flow: coefficient * pressure ** 0.65 }));
const testOf = (name: string, coefficient: number, more = {}) =>
  make('blower-door-test', { readings: law(coefficient), barometer: 101325, ...more }, name);
const storeys = [
  make('storey', { area: 90, height: 2.5, level: 'above-grade' }, 'main'),
  make('storey', { area: 60, height: 2.4, level: 'above-grade' }, 'upper'),
  make('storey', { area: 90, height: 2.3, level: 'below-grade' }, 'basement'),
];
const code = make('design', { outdoor: -30, indoor: 20 }, 'code');
type Envelope = NonNullable<Parameters<typeof make<'envelope'>>[1]>;
const houseOf = (envelope: Envelope) =>
  makeHouse({ design: [code], storey: storeys, bedrooms: 3, envelope: make('envelope', envelope) });
const value = (name: string, house: ReturnType<typeof houseOf>) =>
  airResults.find(r => r.name === name)!.compute(house, house);

describe('which test stands for a house', () => {
  const early = testOf('early', 0.08, { date: '2025-02-01' });
  const late = testOf('late', 0.05, { date: '2026-03-01' });
  test('the one of the latest date, wherever it is written', () => {
    expect(latestTest(houseOf({ blowerDoorTest: [late, early] }))).toBe(late);
  });
  test('the last one where a date is missing', () => {
    const undated = testOf('undated', 0.06);
    expect(latestTest(houseOf({ blowerDoorTest: [late, undated] }))).toBe(undated);
    expect(latestTest(houseOf({}))).toBeUndefined();
  });
});

describe('leakage of a house', () => {
  test('air changes come from the fit, corrected for density', () => {
    const house = houseOf({ blowerDoorTest: [testOf('t', 0.06)] });
    const volume = 90 * 2.5 + 60 * 2.4 + 90 * 2.3;
    expect(value('air.ach50', house) * 3600).toBeCloseTo((0.06 * 50 ** 0.65 * 3600) / volume, 1);
    // At the 20 °C and sea level of the reference the correction is nearly nothing.
    expect(testedLeakage(house)!.fit.coefficient / 0.06).toBeCloseTo(1, 3);
    const cold = houseOf({ blowerDoorTest: [testOf('t', 0.06, { outdoor: -20 })] });
    expect(testedLeakage(cold)!.fit.coefficient).toBeLessThan(0.06);
  });

  test('a flue sealed in the test adds to natural leakage and not to the air changes', () => {
    const flue = make('opening', { kind: 'chimney', diameter: 0.127, sealedInTest: true }, 'flue');
    const shut = houseOf({ blowerDoorTest: [testOf('t', 0.06)] });
    const open = houseOf({ blowerDoorTest: [testOf('t', 0.06)], opening: [flue] });
    expect(value('air.ach50', open)).toBe(value('air.ach50', shut));
    expect(value('air.leakage-area', open) - value('air.leakage-area', shut)).toBeCloseTo(
      0.6 * (Math.PI / 4) * 0.127 ** 2,
      9,
    );
    expect(infiltrationAtDesign(open, code)).toBeGreaterThan(infiltrationAtDesign(shut, code));
  });

  test('an untested house needs a leakage class, and says that it is assumed', () => {
    const ceiling = [make('ceiling', { area: 90, rValue: 5 }, 'attic')];
    expect(() => houseLeakage(houseOf({ ceiling }))).toThrow(/no unit-leakage/);
    const classed = houseOf({ ceiling, unitLeakage: 'leaky' });
    expect(houseLeakage(classed).rests).toBe('assumed');
    expect(value('air.leakage-area', classed)).toBeCloseTo(5.6e-4 * 90, 12);
    expect(() => value('air.ach50', classed)).toThrow(/no blower-door-test/);
  });

  test('two readings give no fit, and a reason', () => {
    const short = testOf('t', 0.06, { readings: law(0.06, [50, 25]) });
    expect(() => testedLeakage(houseOf({ blowerDoorTest: [short] }))).toThrow(/fewer than three readings/);
    expect(fitLeakage(law(0.06, [50, 50, 50]))).toEqual({ error: 'all readings stand at the same pressure' });
    expect(fitLeakage([{ pressure: 50, flow: 0 }, ...law(0.06)])).toHaveProperty('error');
  });

  test('zero-flow pressures are taken off with their sign', () => {
    const still = { zeroFlowBefore: -2, zeroFlowAfter: -2 };
    // The leaks see 2 Pa less than the gauge when the house already stands at −2 Pa.
    const shifted = law(0.06).map(r => ({ ...r, pressure: r.pressure + 2 }));
    const house = houseOf({ blowerDoorTest: [testOf('t', 0, { ...still, readings: shifted })] });
    expect(testedLeakage(house)!.fit.exponent).toBeCloseTo(0.65, 9);
    expect(withoutZeroFlow([{ pressure: -50, flow: 1 }], -2, -4)[0].pressure).toBe(-47);
  });
});

describe('what a test must hold', () => {
  const good = law(0.06, [60, 50, 40, 30, 20, 15, 25, 35]);
  const fit = { exponent: 0.65, correlation: 0.999 };
  test('a test of eight points from 15 to 60 Pa is accepted by both standards', () => {
    expect(testFaults(good, fit, 'cgsb-149.10')).toEqual([]);
    expect(testFaults(good, fit, 'iso-9972')).toEqual([]);
  });
  test('each fault is named with its number', () => {
    const kinds = testFaults(law(0.06, [45, 20, 5]), { exponent: 1.2, correlation: 0.9 }, 'iso-9972', 6).map(
      f => f.kind,
    );
    expect(kinds.sort()).toEqual(
      ['correlation', 'exponent', 'few-points', 'low-highest', 'low-lowest', 'wide-step', 'zero-flow'].sort(),
    );
    expect(testFaults(good.slice(1), fit, 'cgsb-149.10')).toEqual([{ kind: 'few-points', points: 7, least: 8 }]);
  });
});

describe('air of the design hour', () => {
  const erv = make('ventilation', { kind: 'balanced', flow: 0.038, recovery: 0.68 }, 'erv');
  const bath = make('ventilation', { kind: 'exhaust', flow: 0.02, runs: 0.5 }, 'bath');
  const house = houseOf({ blowerDoorTest: [testOf('t', 0.06)], ventilation: [erv, bath] });

  test('recovery takes its share, half of the exhaust displaces infiltration', () => {
    const air = airLoad(house, code);
    expect(air.recovered).toBeCloseTo(1230 * 0.038 * 0.32, 9);
    expect(air.direct).toBeCloseTo(1230 * (air.infiltration + 0.5 * 0.01), 9);
  });

  test('thin air at elevation carries less', () => {
    const high = makeHouse({ ...house, site: make('site', { elevation: 1650 }) });
    expect(airLoad(high, code).recovered / airLoad(house, code).recovered).toBeCloseTo(83.011 / 101.325, 5);
  });

  test('in quadrature an unbalanced fan counts for less than alone', () => {
    expect(combineInQuadrature(0.03, { supply: 0, exhaust: 0.04 })).toBeCloseTo(0.05, 12);
    expect(combineInQuadrature(0.03, { supply: 0.01, exhaust: 0.01 })).toBeCloseTo(0.04, 12);
  });

  test('every line of the worksheets evaluates', () => {
    const flue = make('opening', { kind: 'chimney', diameter: 0.127, sealedInTest: true }, 'flue');
    const ceiling = [make('ceiling', { area: 90, rValue: 5 }, 'attic')];
    const all = houseOf({
      blowerDoorTest: [testOf('t', 0.06, { outdoor: -10 })],
      ventilation: [erv, bath],
      opening: [flue],
    });
    checkSheet(stepsOf(sheet => airLoad(all, code, sheet)));
    checkSheet(stepsOf(sheet => airLoad(houseOf({ ceiling, unitLeakage: 'average' }), code, sheet)));
    for (const r of airResults) {
      const subject = r.of === 'house' ? all : all.envelope.blowerDoorTest[0];
      checkSheet(stepsOf(sheet => r.compute(subject, all, sheet)));
    }
  });
});
