import { describe, expect, test } from 'vitest';
import { at } from '../../../language/engine/heating/curve.js';
import { keptInDefrost } from '../../../language/engine/heating/defrost.js';
import {
  creditedOutput,
  extrapolatedOutput,
  inOrder,
  inputAt,
  runsFrom,
} from '../../../language/engine/heating/heat-pump.js';
import { resistanceOutput, smallestStrip } from '../../../language/engine/heating/auxiliary.js';

const points = [
  { outdoor: -25, output: 5900, input: 3300 },
  { outdoor: -15, output: 8100, input: 3700 },
  { outdoor: -8.3, output: 8900, input: 3500 },
  { outdoor: 8.3, output: 10600, input: 2650 },
];
const range = { from: -35, to: 21 };

describe('output of a heat pump from its table', () => {
  const curve = creditedOutput(points, 'included', range);

  test('goes through the points and lies between them on straight lines', () => {
    for (const p of points) expect(at(curve, p.outdoor)).toBe(p.output);
    expect(at(curve, -20)).toBe(7000);
  });

  test('credits nothing below the last point and holds the first above it', () => {
    expect(at(curve, -25, 'colder')).toBe(0);
    expect(at(curve, -30)).toBe(0);
    expect(at(curve, 15)).toBe(10600);
  });

  test('says what the line beyond the table would give, never below nothing', () => {
    expect(extrapolatedOutput(points, -30)).toBeCloseTo(4800, 9);
    expect(extrapolatedOutput(points, -80)).toBe(0);
    expect(extrapolatedOutput(points, -25)).toBeUndefined();
  });

  test('loses a tenth to defrost at 1.7 °C where the table leaves it out (common practice)', () => {
    const derated = creditedOutput(points, 'left-out', range);
    expect(at(derated, 1.7)).toBeCloseTo(0.9 * at(curve, 1.7), 9);
    expect(at(derated, -7)).toBeCloseTo(at(curve, -7), 9);
    expect(at(derated, 5)).toBeCloseTo(at(curve, 5), 9);
    expect(at(derated, -2)).toBeLessThan(at(curve, -2));
    expect([-7, 1.7, 5].map(keptInDefrost)).toEqual([1, 0.9, 1]);
  });

  test('input is held beyond both ends', () => {
    expect(inputAt(points, -40)).toBe(3300);
    expect(inputAt(points, 20)).toBe(2650);
    expect(inputAt(points, -20)).toBe(3500);
  });

  test('rows may come in any order, but not twice at one temperature', () => {
    const rows = inOrder([...points].reverse());
    expect(rows).toEqual({ ok: points });
    expect(inOrder([points[0], points[0]])).toMatchObject({ error: expect.stringContaining('−25 °C') });
    expect(inOrder([points[0]])).toHaveProperty('error');
  });

  test('a table that begins above the range credits nothing', () => {
    const warm = creditedOutput(
      [
        { outdoor: 25, output: 1, input: 1 },
        { outdoor: 30, output: 2, input: 1 },
      ],
      'included',
      range,
    );
    expect(at(warm, 20)).toBe(0);
  });
});

describe('when a heat pump is counted on', () => {
  test('a cut-out that the design day does not reach changes nothing', () => {
    expect(runsFrom({ cutOut: -30, cutIn: -26 }, -28)).toBe(Number.NEGATIVE_INFINITY);
  });
  test('past its cut-out it waits for its cut-in', () => {
    expect(runsFrom({ cutOut: -30, cutIn: -26 }, -34)).toBe(-26);
    expect(runsFrom({ cutOut: -30 }, -34)).toBe(-30);
  });
  test('the warmer of cut-in and lockout counts', () => {
    expect(runsFrom({ cutOut: -30, lockoutBelow: -15 }, -34)).toBe(-15);
  });
});

describe('electric heat', () => {
  test('at another voltage it follows the square', () => {
    const strip = { label: 'strip', rated: 10000, ratedVoltage: 240, supplyVoltage: 208 };
    expect(resistanceOutput(strip)).toBeCloseTo(7511.1, 1);
  });
  test('the smallest usual size that carries a gap (common practice)', () => {
    expect(smallestStrip(0)).toBe(0);
    expect(smallestStrip(4900)).toBe(5000);
    expect(smallestStrip(4900, 208)).toBe(8000);
    expect(smallestStrip(26000)).toBeUndefined();
  });
});
