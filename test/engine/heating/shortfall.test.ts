import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { at } from '../../../language/engine/heating/curve.js';
import { houseBalance, houseMargin } from '../../../language/engine/heating/house-balance.js';
import { lockoutGap, marginWithAllAuxiliary } from '../../../language/engine/heating/shortfall.js';
import { Withheld, type Block } from '../../../language/model/index.js';
import { heatingResults } from '../../../language/results/heating.js';
import { make, makeHouse } from '../../make-house.js';
import { checkSheet, stepsOf } from '../../worksheets.js';

const table = [
  { outdoor: 8.3, output: 9500, input: 2600 },
  { outdoor: -8.3, output: 7400, input: 2950 },
  { outdoor: -15, output: 6300, input: 2900 },
  { outdoor: -25, output: 5000, input: 2800 },
];
const hp = make('heat-pump', { performance: table, defrostIncluded: true }, 'hp');
/** 9.8 kW at 53 K: 184.9 W/K. */
const statedLoad = make('stated-load', { heating: 9800, indoor: 22, outdoor: -31 });
const code = make('design', { outdoor: -31, indoor: 22 }, 'code');
type Thermostat = NonNullable<Parameters<typeof make<'thermostat'>>[1]>;
const houseOf = (output: number, controls: Thermostat, more: Partial<Block<'auxiliary'>> = {}) =>
  makeHouse({
    design: [code],
    statedLoad,
    heating: make('heating', {
      heatPump: [hp],
      auxiliary: output > 0 ? [make('auxiliary', { output, ...more }, 'strip')] : [],
      thermostat: make('thermostat', controls),
    }),
  });

describe('what is missing, and why', () => {
  test('a small strip is short whatever the lockout says', () => {
    const house = houseOf(3000, { auxiliaryLockoutAbove: -20 });
    const worst = marginWithAllAuxiliary(house);
    expect(worst.outdoor).toBe(-31);
    expect(worst.margin).toBeCloseTo(3000 - 9800, 9);
  });

  test('a lockout colder than the need leaves a gap that the strip could fill', () => {
    const house = houseOf(10000, { auxiliaryLockoutAbove: -20 });
    expect(marginWithAllAuxiliary(house).margin).toBeGreaterThanOrEqual(0);
    const gap = lockoutGap(house);
    expect(gap.outdoor).toBe(-20);
    // At −20 °C the table gives 5650 W, the load asks for 42 K.
    expect(gap.gap).toBeCloseTo((9800 / 53) * 42 - 5650, 9);
    expect(gap.allowed).toBe(5650);
  });

  test('between two lockouts neither may run', () => {
    const house = houseOf(10000, { auxiliaryLockoutAbove: -20, compressorLockoutBelow: -12 });
    const gap = lockoutGap(house);
    expect(gap.allowed).toBe(0);
    expect(gap.gap).toBeCloseTo((9800 / 53) * 42, 9);
    expect(houseMargin(house).upTo).toBe(-12);
  });

  test('there is no gap where the lockout lies above the need, or nothing could fill it', () => {
    expect(lockoutGap(houseOf(10000, { auxiliaryLockoutAbove: 0 })).gap).toBe(0);
    expect(lockoutGap(houseOf(0, { auxiliaryLockoutAbove: -20 })).gap).toBe(0);
  });

  test('the gap is what the worst temperature shows by search', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 15000 }),
        fc.integer({ min: -35, max: 5 }),
        fc.integer({ min: -35, max: 5 }),
        (output, strip, compressor) => {
          const house = houseOf(output, { auxiliaryLockoutAbove: strip, compressorLockoutBelow: compressor });
          const free = houseOf(output, {});
          const [a, b] = [houseBalance(house), houseBalance(free)];
          let worst = 0;
          for (let t = -31; t < 22; t += 0.25)
            for (const side of ['warmer', 'colder'] as const) {
              const load = at(a.load, t, side);
              const missing = (x: typeof a) => Math.max(0, load - at(x.heatPump, t, side) - at(x.auxiliary, t, side));
              worst = Math.max(worst, missing(a) - missing(b));
            }
          const { gap } = lockoutGap(house);
          expect(gap).toBeGreaterThanOrEqual(worst - 1e-6);
          expect(gap).toBeLessThanOrEqual(worst + 200);
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('results of heating', () => {
  const house = houseOf(10000, { auxiliaryLockoutAbove: -20, compressorLockoutBelow: -12 }, { role: 'full-backup' });
  const value = (name: string, of = house) => heatingResults.find(r => r.name === name)!.compute(of, of);

  test('each gives a number with a worksheet whose lines evaluate, or withholds with a reason', () => {
    let computed = 0;
    for (const r of heatingResults)
      try {
        const steps = stepsOf(sheet => expect(Number.isFinite(r.compute(house, house, sheet)), r.name).toBe(true));
        checkSheet(steps);
        computed++;
      } catch (e) {
        if (!(e instanceof Withheld)) throw e;
        expect(e.reason.length, r.name).toBeGreaterThan(10);
      }
    // Comfort, the comparison with an envelope, and the table carried on past a lockout are withheld; nothing else is.
    expect(heatingResults.length - computed).toBe(3);
  });

  test('backup, surplus and the current that the surplus takes', () => {
    expect(value('heating.backup-margin')).toBeCloseTo(200, 9);
    expect(value('heating.auxiliary-required')).toBeCloseTo(9800, 9);
    expect(value('heating.auxiliary-size')).toBe(10000);
    expect(value('heating.auxiliary-surplus')).toBe(0);
    const large = houseOf(15000, {});
    expect(value('heating.auxiliary-surplus', large)).toBe(5000);
    expect(value('heating.auxiliary-surplus-current', large)).toBeCloseTo(5000 / 240, 9);
    expect(value('heating.locked-out-output')).toBeCloseTo(7400 - (3.7 / 6.7) * 1100, 9);
  });
});
