import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { codeLoad } from '../../../language/engine/heating/design-load.js';
import {
  extrapolatedAtDesign,
  heatPumpAtDesign,
  houseAuxiliaryRequired,
  houseBalance,
  houseBalancePoint,
  houseMargin,
  installedAtDesign,
} from '../../../language/engine/heating/house-balance.js';
import { at } from '../../../language/engine/heating/curve.js';
import type { Block, House } from '../../../language/model/index.js';
import { make, makeHouse } from '../../make-house.js';
import { checkSheet, stepsOf } from '../../worksheets.js';

const code = make('design', { outdoor: -34, indoor: 22 }, 'code');
/** 8.4 kW at 52 K: 161.54 W/K, and so 9046 W at the 56 K of the code. */
const statedLoad = make('stated-load', { heating: 8400, indoor: 21, outdoor: -31 });
const table = [
  { outdoor: 8.3, output: 10600, input: 2650 },
  { outdoor: -8.3, output: 8900, input: 3500 },
  { outdoor: -15, output: 8100, input: 3700 },
  { outdoor: -25, output: 5900, input: 3300 },
  { outdoor: -32, output: 4400, input: 2900 },
];
const heatPump = make('heat-pump', { performance: table, defrostIncluded: true }, 'hp');

function house(heating: Partial<Block<'heating'>>): House {
  return makeHouse({ design: [code], statedLoad, heating: make('heating', heating) });
}
const strip = (output: number) => make('auxiliary', { output }, 'strip');

describe('a house by its stated load', () => {
  test('carries the W/K to the design difference', () => {
    expect(codeLoad(house({})).total).toBeCloseTo((8400 / 52) * 56, 9);
  });

  test('credits nothing below the last point of the table', () => {
    expect(heatPumpAtDesign(house({ heatPump: [heatPump] }))).toBe(0);
  });

  test('carries no line on below what keeps the heat pump off, and names it', () => {
    const cold = (limits: object, thermostat?: Block<'thermostat'>) => {
      const hp = make('heat-pump', { performance: table, defrostIncluded: true, ...limits }, 'hp');
      return house({ heatPump: [hp], ...(thermostat ? { thermostat } : {}) });
    };
    // The last two points lie 1500 W apart over 7 K.
    expect(extrapolatedAtDesign(cold({}))).toBeCloseTo(4400 - (2 * 1500) / 7, 9);
    expect(() => extrapolatedAtDesign(cold({ cutOut: -32 }))).toThrow('hp is cut out below −32 °C');
    expect(() => extrapolatedAtDesign(cold({ cutOut: -32, cutIn: -28 }))).toThrow(
      'hp is off until its cut-in at −28 °C, once it has cut out',
    );
    const thermostat = make('thermostat', { compressorLockoutBelow: -20 });
    expect(() => extrapolatedAtDesign(cold({ cutOut: -32 }, thermostat))).toThrow(
      'hp is locked out by the thermostat below −20 °C',
    );
    const notes = stepsOf(sheet => houseMargin(cold({ cutOut: -32 }), sheet)).map(s => s.note);
    expect(notes).toContain('It is cut out below −32 °C.');
  });

  test('the balance point is where the lines cross', () => {
    const h = house({ heatPump: [heatPump] });
    const point = houseBalancePoint(h);
    // Between −25 and −15 °C the output is 5900 + 220·(t + 25), the load 161.538·(22 − t).
    const k = 8400 / 52;
    expect(point).toBeCloseTo((22 * k - 5900 - 220 * 25) / (220 + k), 9);
    // The worksheet shows the same from both sides, even where a lockout would keep the heat pump off.
    const thermostat = make('thermostat', { compressorLockoutBelow: 0 });
    const steps = stepsOf(sheet => houseBalancePoint(house({ heatPump: [heatPump], thermostat }), sheet));
    checkSheet(steps);
    const [load, output, sum] = steps.map(s => s.value);
    expect(load).toBeCloseTo(k * (22 - point), 6);
    expect(output).toBeCloseTo(5900 + 220 * (point + 25), 6);
    expect(sum).toBeCloseTo(load, 6);
    expect(steps[1].inputs?.Q_1).toEqual([5900, 'heat-flow']);
  });

  test('the worst margin stands at the design temperature when nothing is locked out', () => {
    const h = house({ heatPump: [heatPump], auxiliary: [strip(10000)] });
    const worst = houseMargin(h);
    expect(worst.outdoor).toBe(-34);
    expect(worst.margin).toBeCloseTo(10000 - (8400 / 52) * 56, 9);
    expect(worst.heatPump).toBe(0);
  });

  test('an auxiliary locked out above −25 °C leaves a gap just above it', () => {
    const thermostat = make('thermostat', { auxiliaryLockoutAbove: -25 });
    const h = house({ heatPump: [heatPump], auxiliary: [strip(10000)], thermostat });
    const worst = houseMargin(h);
    expect(worst.outdoor).toBe(-25);
    expect(worst.side).toBe('warmer');
    expect(worst.auxiliary).toBe(0);
    expect(worst.margin).toBeCloseTo(5900 - (8400 / 52) * 47, 9);
  });

  test('a compressor lockout takes the heat pump away below it', () => {
    const thermostat = make('thermostat', { compressorLockoutBelow: -10 });
    const h = house({ heatPump: [heatPump], thermostat });
    expect(houseAuxiliaryRequired(h)).toBeCloseTo((8400 / 52) * 56, 9);
    const worst = houseMargin(h);
    expect(worst.upTo).toBe(-10);
    expect(houseBalancePoint(h)).toBeLessThan(-15);
  });

  test('between cut-out and cut-in the heat pump is not counted on once the design day passed its cut-out', () => {
    const tired = make('heat-pump', { performance: table, defrostIncluded: true, cutOut: -30, cutIn: -20 }, 'hp');
    const h = house({ heatPump: [tired] });
    const { heatPump: curve } = houseBalance(h);
    expect(at(curve, -22)).toBe(0);
    expect(at(curve, -20)).toBe(7000);
  });

  test('a furnace replaces the heat pump instead of adding to it', () => {
    const furnace = make('furnace', { fuel: 'natural-gas', output: 12000, afue: 0.8 }, 'gas');
    const h = house({ heatPump: [heatPump], furnace: [furnace] });
    const { heatPump: fromHeatPump, auxiliary } = houseBalance(h);
    expect(at(fromHeatPump, -20) + at(auxiliary, -20)).toBe(12000);
    expect(installedAtDesign(h)).toBe(12000);
  });

  test('no heat at all is short by the whole load', () => {
    expect(houseMargin(house({})).margin).toBeCloseTo(-(8400 / 52) * 56, 9);
  });

  test('the required auxiliary closes the gap exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3000, max: 20000 }), fc.integer({ min: -35, max: -5 }), (load, lockout) => {
        const thermostat = make('thermostat', { compressorLockoutBelow: lockout });
        const stated = make('stated-load', { heating: load, indoor: 21, outdoor: -31 });
        const of = (auxiliary: Block<'auxiliary'>[]) =>
          makeHouse({
            design: [code],
            statedLoad: stated,
            heating: make('heating', { heatPump: [heatPump], thermostat, auxiliary }),
          });
        const required = houseAuxiliaryRequired(of([]));
        expect(houseMargin(of([strip(required)])).margin).toBeGreaterThanOrEqual(-1e-6);
        if (required > 0) expect(houseMargin(of([strip(required)])).margin).toBeCloseTo(0, 6);
      }),
    );
  });

  test('withholds with a reason', () => {
    expect(() => codeLoad(makeHouse({ design: [code] }))).toThrow(/neither the envelope nor a stated-load/);
    expect(() => codeLoad(makeHouse({ statedLoad }))).toThrow(/no design block named code/);
    expect(() => heatPumpAtDesign(house({}))).toThrow(/no heat pump/);
  });

  test('every line of the worksheets evaluates', () => {
    const derated = make('heat-pump', { performance: table }, 'hp');
    const thermostat = make('thermostat', { auxiliaryLockoutAbove: -25 });
    const low = make('auxiliary', { output: 10000, supplyVoltage: 208 }, 'strip');
    const mild = make('design', { outdoor: -3, indoor: 22 }, 'code');
    for (const h of [
      house({ heatPump: [heatPump], auxiliary: [low], thermostat }),
      house({ heatPump: [derated], auxiliary: [strip(5000)] }),
      makeHouse({
        design: [mild],
        statedLoad: make('stated-load', { heating: 20000, indoor: 21, outdoor: -5 }),
        heating: make('heating', { heatPump: [derated] }),
      }),
    ])
      for (const calculate of [
        houseMargin,
        houseBalancePoint,
        houseAuxiliaryRequired,
        heatPumpAtDesign,
        installedAtDesign,
      ])
        checkSheet(stepsOf(sheet => calculate(h, sheet)));
  });
});
