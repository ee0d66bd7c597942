import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  at,
  larger,
  line,
  lowest,
  minus,
  onlyWithin,
  plus,
  through,
  warmestBelowZero,
  within,
} from '../../../language/engine/heating/curve.js';

const range = { from: -40, to: 20 };
/** Between 2 and 7 points of rising temperature, whole degrees. */
const points = fc
  .uniqueArray(fc.record({ t: fc.integer({ min: -50, max: 30 }), v: fc.integer({ min: 0, max: 15000 }) }), {
    selector: p => p.t,
    minLength: 2,
    maxLength: 7,
  })
  .map(list => list.sort((a, b) => a.t - b.t).map(p => [p.t, p.v] as const));
const somewhere = fc.double({ min: -40, max: 20, noNaN: true });

describe('curves over the outdoor temperature', () => {
  test('a curve through points covers its range without gaps and goes through them', () => {
    fc.assert(
      fc.property(points, list => {
        const curve = through(range, list);
        expect(curve[0].from).toBe(range.from);
        expect(curve[curve.length - 1].to).toBe(range.to);
        curve.slice(1).forEach((p, i) => {
          expect(p.from).toBe(curve[i].to);
          expect(p.start).toBe(curve[i].end);
        });
        for (const [t, v] of list) if (t >= range.from && t <= range.to) expect(at(curve, t)).toBeCloseTo(v, 9);
      }),
    );
  });

  test('a curve stays between the values of its points', () => {
    fc.assert(
      fc.property(points, somewhere, (list, t) => {
        const values = list.map(([, v]) => v);
        const value = at(through(range, list), t);
        expect(value).toBeGreaterThanOrEqual(Math.min(...values) - 1e-6);
        expect(value).toBeLessThanOrEqual(Math.max(...values) + 1e-6);
      }),
    );
  });

  test('sums, differences and the larger of two hold at every temperature', () => {
    fc.assert(
      fc.property(points, points, fc.integer({ min: -45, max: 25 }), somewhere, (a, b, cut, t) => {
        const first = onlyWithin(through(range, a), { from: cut, to: 60 });
        const second = through(range, b);
        for (const side of ['warmer', 'colder'] as const) {
          const [x, y] = [at(first, t, side), at(second, t, side)];
          expect(at(plus(first, second), t, side)).toBeCloseTo(x + y, 5);
          expect(at(minus(first, second), t, side)).toBeCloseTo(x - y, 5);
          expect(at(larger(first, second), t, side)).toBeCloseTo(Math.max(x, y), 5);
        }
      }),
    );
  });

  test('the lowest value is not above any value found by search', () => {
    fc.assert(
      fc.property(points, points, fc.integer({ min: -45, max: 25 }), (a, b, cut) => {
        const curve = minus(onlyWithin(through(range, a), { from: cut, to: 60 }), through(range, b));
        const best = lowest(curve);
        expect(at(curve, best.outdoor, best.side)).toBeCloseTo(best.value, 9);
        for (let t = -40; t <= 20; t += 0.37)
          for (const side of ['warmer', 'colder'] as const)
            expect(at(curve, t, side)).toBeGreaterThanOrEqual(best.value - 1e-6);
      }),
    );
  });

  test('a jump has two sides', () => {
    const curve = onlyWithin(
      line(range, () => 5),
      { from: -10, to: 60 },
    );
    expect(at(curve, -10, 'warmer')).toBe(5);
    expect(at(curve, -10, 'colder')).toBe(0);
    expect(
      warmestBelowZero(
        minus(
          curve,
          line(range, () => 1),
        ),
      ),
    ).toEqual({ outdoor: -10, by: 'jump' });
  });

  test('crossings are exact', () => {
    const curve = through(range, [
      [-40, -4],
      [20, 2],
    ]);
    expect(warmestBelowZero(curve)).toEqual({ outdoor: 0, by: 'crossing' });
    expect(warmestBelowZero(line(range, () => 1))).toBeUndefined();
  });

  test('the part of a curve at a single temperature is its value there', () => {
    const curve = through(range, [
      [-40, 0],
      [20, 6],
    ]);
    expect(within(curve, { from: -10, to: -10 })).toEqual([{ from: -10, to: -10, start: 3, end: 3 }]);
  });
});
