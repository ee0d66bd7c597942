import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Withheld, type Block, type House } from '../../../language/model/index.js';
import { airResults } from '../../../language/results/air.js';
import { envelopeResults } from '../../../language/results/envelope.js';
import { heatingResults } from '../../../language/results/heating.js';
import { make, makeHouse } from '../../make-house.js';

/** Numbers that no house has, among some that it may have. */
const odd = (low: number, high: number) =>
  fc.oneof(
    fc.double({ min: low, max: high, noNaN: true }).map(v => Math.round(v * 1e6) / 1e6),
    fc.constantFrom(0, -1, low, high),
  );
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

const performance = fc.array(
  fc.record({ outdoor: fc.integer({ min: -40, max: 20 }), output: odd(0, 20000), input: odd(0, 6000) }),
  { minLength: 0, maxLength: 5 },
);
const readings = fc.array(fc.record({ pressure: odd(-80, 80), flow: odd(0, 1) }), { maxLength: 8 });

const anyHouse: fc.Arbitrary<House> = fc
  .record({
    outdoor: odd(-45, 30),
    indoor: odd(5, 25),
    area: odd(0, 300),
    rValue: maybe(odd(0.1, 12)),
    window: odd(0, 30),
    length: odd(0, 60),
    height: odd(0, 4),
    belowGrade: odd(0, 4),
    latitude: maybe(odd(-1.5, 1.5)),
    unitLeakage: maybe(fc.constantFrom('tight' as const, 'leaky' as const)),
    level: fc.constantFrom('above-grade' as const, 'below-grade' as const),
    tests: maybe(readings),
    table: performance,
    strip: odd(0, 20000),
    lockout: maybe(odd(-45, 30)),
    cutOut: maybe(odd(-45, 15)),
    loss: maybe(odd(0, 500)),
  })
  .map(x => {
    const nextTo = make('buffer-space', { lossOutdoors: x.loss }, 'garage');
    const window = make('window', { area: x.window, uValue: 1.6 }, 'w');
    const wall: Block<'wall'>[] = [
      make('wall', { area: x.area, rValue: x.rValue, window: [window] }, 'outer'),
      make('wall', { area: x.area, rValue: x.rValue, nextTo }, 'inner'),
    ];
    const { length, height, belowGrade, rValue } = x;
    return makeHouse({
      bedrooms: 3,
      design: [make('design', { outdoor: x.outdoor, indoor: x.indoor }, 'code')],
      site: make('site', { latitude: x.latitude }),
      storey: [make('storey', { area: x.area, height: 2.5, level: x.level }, 'main')],
      envelope: make('envelope', {
        unitLeakage: x.unitLeakage,
        wall,
        basementWall: [make('basement-wall', { length, height, belowGrade, rValue }, 'base')],
        basementFloor: [make('basement-floor', { area: x.area, rValue }, 'floor')],
        slabOnGrade: [make('slab-on-grade', { area: x.area, perimeter: length }, 'slab')],
        blowerDoorTest: x.tests ? [make('blower-door-test', { readings: x.tests }, 'test')] : [],
      }),
      heating: make('heating', {
        heatPump: [make('heat-pump', { performance: x.table, cutOut: x.cutOut }, 'hp')],
        auxiliary: [make('auxiliary', { output: x.strip }, 'strip')],
        thermostat: make('thermostat', { auxiliaryLockoutAbove: x.lockout, compressorLockoutBelow: x.lockout }),
      }),
    });
  });

test('whatever the numbers, a result is a number or is withheld with a reason', () => {
  const all = [...heatingResults, ...airResults, ...envelopeResults];
  fc.assert(
    fc.property(anyHouse, house => {
      const subjects: Partial<Record<string, readonly Block[]>> = {
        house: [house],
        wall: house.envelope.wall,
        window: house.envelope.wall.flatMap(w => w.window),
        'basement-wall': house.envelope.basementWall,
        'basement-floor': house.envelope.basementFloor,
        'slab-on-grade': house.envelope.slabOnGrade,
        'blower-door-test': house.envelope.blowerDoorTest,
      };
      for (const result of all)
        for (const subject of subjects[result.of] ?? [])
          try {
            expect(Number.isFinite(result.compute(subject, house)), `${result.of} ${result.name}`).toBe(true);
          } catch (e) {
            if (!(e instanceof Withheld)) throw e;
          }
    }),
    { numRuns: 500 },
  );
});
