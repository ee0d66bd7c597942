import { describe, expect, test } from 'vitest';
import { codeLoad } from '../../../language/engine/heating/design-load.js';
import { make, makeHouse } from '../../make-house.js';
import { check, off } from './checks.js';

/** The worked example of the load chapter as a house: one storey on a slab, attic ducts, balanced ventilation without recovery. */
function example() {
  const windows = [
    [0.4, 2.01],
    [0.4, 2.21],
    [1.1, 2.01],
    [1.1, 2.21],
    [4.3, 2.01],
    [0.7, 2.01],
    [0.7, 2.21],
    [0.4, 2.01],
    [0.4, 2.21],
    [2.2, 2.01],
    [2.2, 2.21],
  ].map(([area, uValue], i) => make('window', { area, uValue }, `w-${i}`));
  const glass = windows.reduce((sum, w) => sum + w.area, 0);
  const door = make('door', { area: 3.8, uValue: 2.3 }, 'front');
  return makeHouse({
    design: [make('design', { outdoor: -3, indoor: 20 }, 'code')],
    storey: [make('storey', { area: 195.3, height: 2.5, level: 'above-grade' }, 'main')],
    envelope: make('envelope', {
      unitLeakage: 'good',
      ceiling: [make('ceiling', { area: 195.3, uValue: 0.18 }, 'attic')],
      wall: [
        make('wall', { area: 108.5 + glass + 3.8, uValue: 0.51, window: windows, door: [door] }, 'outer'),
        make('wall', { area: 35, uValue: 0.51 }, 'garage'),
      ],
      slabOnGrade: [
        make('slab-on-grade', { area: 195.3, perimeter: 67.2, wall: 'brick', edgeInsulation: 0.95 }, 'slab'),
      ],
      ventilation: [make('ventilation', { kind: 'balanced', flow: 0.043 }, 'air')],
    }),
    heating: make('heating', { ducts: make('ducts', { location: 'attic', lossFactor: 0.13 }) }),
  });
}

describe('a whole house against the published example', () => {
  const load = codeLoad(example());

  const envelope = check('rlf-envelope');
  test(envelope.title, () => {
    expect(off(load.transmission + load.ground, envelope.expected.heating.value)).toBeLessThan(0.005);
    const perRow = envelope.expected.per_row.value.map(([heating]: number[]) => heating);
    const line = (name: string) => load.items.find(i => i.block.name === name)!.watts;
    // Ceiling, wall, garage wall, door, slab edge; window areas are printed to 0.1 m² only.
    expect(Math.abs(line('attic') - perRow[0])).toBeLessThan(1);
    expect(Math.abs(line('outer') - perRow[1])).toBeLessThan(1);
    expect(Math.abs(line('garage') - perRow[2])).toBeLessThan(1);
    expect(Math.abs(line('front') - perRow[3])).toBeLessThan(1);
    // The print rounds 19.55 W/m to 19.6 before it multiplies.
    expect(Math.abs(line('slab') - perRow[4])).toBeLessThan(4);
  });

  const infiltration = check('rlf-infil');
  test(infiltration.title, () => {
    const flow = load.infiltration / (1230 * 23);
    expect(off(flow * 1000, infiltration.expected.Q_h.value)).toBeLessThan(0.02);
  });

  const total = check('rlf-total');
  test(total.title, () => {
    expect(off(load.infiltration + load.ventilation, total.inputs.infil.value[0])).toBeLessThan(0.01);
    expect(off(load.total, total.expected.total.value[0])).toBeLessThan(0.005);
  });
});
