import { describe, expect, test } from 'vitest';
import { edition } from '../../../language/codes/index.js';
import { conductorAmpacity, type Conductor } from '../../../language/engine/electrical/conductor.js';
import { circuitNeed, type CircuitLoad } from '../../../language/engine/electrical/circuit-load.js';
import {
  circuitAmpacity,
  circuitCurrent,
  circuitHeadroom,
  circuitLargestBreaker,
  circuitNeedOf,
  circuitVoltageDrop,
  conductorFor,
  panelSpacesLeft,
} from '../../../language/engine/electrical/house-circuits.js';
import { freePairs } from '../../../language/engine/electrical/panel-spaces.js';
import { Withheld, type Block } from '../../../language/model/index.js';
import { electricalResults } from '../../../language/results/electrical.js';
import { checkSheet, stepsOf } from '../../worksheets.js';
import {
  airHandler,
  auxiliary,
  baseboard,
  charger,
  circuit,
  heatPump,
  load,
  makeHouse,
  panel,
  waterHeater,
  type Parts,
} from './houses.js';

const wire = (part: Partial<Conductor> = {}): Conductor => ({
  size: 'awg-8',
  metal: 'copper',
  insulation: 90,
  terminals: undefined,
  cable: 'conduit',
  ambient: 30,
  together: 3,
  ...part,
});
const nec = edition('nec-2023');
const cec = edition('cec-2021');

describe('ampacity of conductors', () => {
  test('ends at the terminations', () => {
    expect(conductorAmpacity(wire(), 40, nec)).toBe(40);
    expect(conductorAmpacity(wire({ terminals: 75 }), 40, nec)).toBe(50);
    expect(conductorAmpacity(wire({ terminals: 90 }), 40, nec)).toBe(55);
    // Above 100 A unmarked terminals are taken at 75 °C.
    expect(conductorAmpacity(wire({ size: 'awg-1' }), 125, nec)).toBe(130);
  });

  test('ends at the 60 °C column in non-metallic cable by the American code alone', () => {
    const cable = wire({ cable: 'non-metallic', terminals: 75 });
    expect(conductorAmpacity(cable, 40, nec)).toBe(40);
    expect(conductorAmpacity(cable, 40, cec)).toBe(50);
  });

  test('warmth and company act on the column of the insulation', () => {
    // 55 A * 0.87 * 0.8 = 38.28 A, below the 50 A of the terminations.
    expect(conductorAmpacity(wire({ terminals: 75, ambient: 45, together: 6 }), 40, nec)).toBeCloseTo(38.28, 9);
    // 40 A * 0.58 at 50 °C for 60 °C insulation.
    expect(conductorAmpacity(wire({ insulation: 60, ambient: 50 }), 40, nec)).toBeCloseTo(23.2, 9);
    expect(conductorAmpacity(wire({ insulation: 60, ambient: 65 }), 40, nec)).toBe(0);
    expect(conductorAmpacity(wire({ ambient: 10, terminals: 90 }), 40, cec)).toBe(55);
  });

  test('105 °C insulation counts as 90 °C, and a conductor that the table lacks has none', () => {
    expect(conductorAmpacity(wire({ insulation: 105, terminals: 90 }), 40, nec)).toBe(55);
    expect(conductorAmpacity(wire({ size: 'awg-14', metal: 'aluminium' }), 15, nec)).toBeUndefined();
  });
});

describe('several loads on one circuit', () => {
  const lasting: CircuitLoad = { label: 'lasting', duty: 'continuous', current: 16 };
  const other: CircuitLoad = { label: 'other', duty: 'non-continuous', current: 10 };
  test('the American code adds a quarter of what lasts, the Canadian one limits it to 80 % of the breaker', () => {
    expect(circuitNeed([lasting, other], 'unmarked', nec).breaker).toBe(30);
    expect(circuitNeed([lasting, other], 'unmarked', cec).breaker).toBe(26);
    expect(circuitNeed([lasting, { ...other, current: 2 }], 'unmarked', cec).breaker).toBe(20);
    expect(circuitNeed([lasting, other], 'fully-rated', nec).breaker).toBe(26);
  });

  test('a nameplate ampacity is taken as it is and the smallest maximum breaker holds', () => {
    const unit: CircuitLoad = { label: 'unit', duty: 'motor-compressor', current: 18, mca: 25, mocp: 40 };
    const need = circuitNeed([unit, other], 'unmarked', cec);
    expect(need).toEqual({ load: 28, breaker: 35, conductor: 35, largestBreaker: 40 });
  });
});

/** A house with one panel whose circuits feed the parts. */
const houseWith = (
  code: Parts['code'],
  circuits: readonly Block<'circuit'>[],
  part: Partial<Parts> & { readonly more?: readonly Block<'panel'>[] } = {},
) =>
  makeHouse({
    code,
    ...part,
    electrical: { panel: [panel('main', circuits), ...(part.more ?? [])], ...part.electrical },
  });

describe('circuits of a house', () => {
  test('a charger takes a quarter more than its setting', () => {
    const c = circuit('c-evse', { length: 30 });
    const house = houseWith('nec-2023', [c], { electrical: { evse: [charger('ev', { on: c })] } });
    expect(circuitCurrent(house, c)).toBe(32);
    expect(circuitNeedOf(house, c).breaker).toBe(40);
    expect(circuitHeadroom(house, c)).toBe(0);
    expect(circuitAmpacity(house, c)).toBe(40);
    expect(circuitLargestBreaker(house, c)).toBe(40);
    // 2 * 32 A * 30 m * 0.778 ohm/kft / 240 V
    expect(circuitVoltageDrop(house, c)).toBeCloseTo((2 * 32 * 30 * 0.778) / 304.8 / 240, 9);
  });

  test('a strip on two circuits is shared by them, with the blower where it is', () => {
    const [one, two] = [circuit('c-one', { breaker: 60 }), circuit('c-two', { breaker: 30 })];
    const house = houseWith('nec-2023', [one, two], {
      heating: {
        auxiliary: [auxiliary('strip', { output: 9600, on: [one, two] })],
        airHandler: [airHandler('ahu', { blower: 480, on: one })],
      },
    });
    expect(circuitNeedOf(house, two).breaker).toBeCloseTo(25, 9);
    expect(circuitNeedOf(house, one).breaker).toBeCloseTo(27.5, 9);
  });

  test('strips at another voltage', () => {
    const c = circuit('c', { breaker: 60 });
    const house = houseWith('nec-2023', [c], {
      heating: { auxiliary: [auxiliary('strip', { output: 10000, supplyVoltage: 208, on: [c] })] },
    });
    expect(circuitCurrent(house, c)).toBeCloseTo(36.11, 2);
  });

  test('a heat pump has its nameplate figures, else those computed from its rated-load current', () => {
    const c = circuit('c-hp', { breaker: 40, conductor: 'awg-10' });
    const plate = houseWith('cec-2024', [c], {
      heating: { heatPump: [heatPump('hp', { rla: 18, fanFla: 1.5, mca: 25, mocp: 40, on: c })] },
    });
    expect(circuitNeedOf(plate, c)).toMatchObject({ load: 19.5, conductor: 25, largestBreaker: 40 });
    // The nameplate's breaker may be larger than a 10 AWG conductor has for other loads.
    expect(circuitLargestBreaker(plate, c)).toBe(40);
    const bare = houseWith('cec-2024', [c], {
      heating: { heatPump: [heatPump('hp', { rla: 21, fanFla: 1.5, on: c })] },
    });
    expect(circuitNeedOf(bare, c)).toMatchObject({ conductor: 27.75, largestBreaker: 35 });
    const tabled = houseWith('cec-2024', [c], {
      heating: { heatPump: [heatPump('hp', { performance: [{ outdoor: -15, output: 8000, input: 3600 }], on: c })] },
    });
    expect(circuitNeedOf(tabled, c).load).toBe(15);
  });

  test('water heaters by the mode they are set to', () => {
    const c = circuit('c-tank', { breaker: 30 });
    const tank = (part: object) =>
      houseWith('nec-2023', [c], {
        waterHeaters: [
          waterHeater('tank', { kind: 'heat-pump', volume: 0.19, element: 4500, compressorInput: 480, on: c, ...part }),
        ],
      });
    expect(circuitNeedOf(tank({}), c).breaker).toBeCloseTo(23.4375, 9);
    expect(circuitNeedOf(tank({ simultaneous: true }), c).load).toBeCloseTo(20.75, 9);
    expect(circuitNeedOf(tank({ mode: 'heat-pump-only' }), c).breaker).toBeCloseTo(2.5, 9);
    // A tank of more than 120 US gallons is no continuous load by the clause on storage tanks.
    expect(circuitNeedOf(tank({ volume: 0.6 }), c).breaker).toBeCloseTo(18.75, 9);
  });

  test('baseboards by the Canadian code: conductor for the load, breaker for a quarter more', () => {
    const c = circuit('c-heat', { breaker: 20, conductor: 'awg-14' });
    const house = houseWith('cec-2021', [c], {
      heating: { baseboard: [baseboard('room', { output: 3600, on: [c] })] },
    });
    expect(circuitNeedOf(house, c)).toMatchObject({ conductor: 15, breaker: 18.75 });
    expect(circuitLargestBreaker(house, c)).toBe(20);
    const mixed = houseWith('cec-2021', [c], {
      heating: { baseboard: [baseboard('room', { output: 2000, on: [c] })] },
      electrical: { load: [load('pump', { kind: 'pump', rating: 500, on: c })] },
    });
    expect(circuitLargestBreaker(mixed, c)).toBe(15);
  });

  test('the thinnest conductor that carries the load behind the breaker', () => {
    const c = circuit('c-strip', { breaker: 60 });
    const house = houseWith('nec-2023', [c], {
      heating: { auxiliary: [auxiliary('strip', { output: 10000, on: [c] })] },
    });
    // 52.1 A behind 60 A: 6 AWG has 55 A at 60 °C, and 60 A is its next standard rating.
    expect(conductorFor(house, c, { breaker: 60, current: 52.1 })).toBe('awg-6');
    expect(conductorFor(house, { ...c, metal: 'aluminium' }, { breaker: 60, current: 52.1 })).toBe('awg-4');
    expect(conductorFor(house, c, { breaker: 30, current: 25 })).toBe('awg-10');
    expect(conductorFor(house, c, { breaker: 350, current: 340 })).toBe('kcmil-600');
    expect(conductorFor(house, c, { breaker: 600, current: 590 })).toBeUndefined();
  });

  test('a circuit without a load takes 80 % of its breaker for the voltage drop and withholds the rest', () => {
    const c = circuit('c-plugs', { breaker: 15, poles: 1, conductor: 'awg-14', length: 14.6 });
    const house = houseWith('cec-2021', [c]);
    expect(circuitVoltageDrop(house, c)).toBeCloseTo(0.03, 3);
    expect(() => circuitNeedOf(house, c)).toThrow(Withheld);
    expect(() => circuitVoltageDrop(house, { ...c, length: undefined })).toThrow('length');
  });

  test('a feeder is not judged by the sum of what hangs on it', () => {
    const feeder = circuit('c-garage', { breaker: 60 });
    const sub = panel('garage', [circuit('c-door')], { fedBy: feeder });
    const house = houseWith('nec-2023', [feeder], { more: [sub] });
    expect(() => circuitNeedOf(house, feeder)).toThrow('feeder');
  });

  test('damage to one load hides no other circuit', () => {
    const [good, bad] = [circuit('c-good'), circuit('c-bad')];
    const house = houseWith('cec-2021', [good, bad], {
      electrical: {
        evse: [charger('ev', { on: good })],
        load: [load('range', { kind: 'range', rating: undefined, on: bad })],
      },
    });
    expect(circuitCurrent(house, good)).toBe(32);
    expect(() => circuitCurrent(house, bad)).toThrow('rating');
  });
});

describe('panels', () => {
  test('spaces by poles, tandem halves by pairs', () => {
    const single = circuit('a', { poles: 1 });
    const half = circuit('b', { poles: 1, tandem: true });
    expect(panelSpacesLeft(panel('p', [circuit('c'), single, half, half, half], { spaces: 8 }))).toBe(3);
    expect(panelSpacesLeft(panel('p', [circuit('c'), circuit('d')], { spaces: 2 }))).toBe(-2);
  });

  test('a two-pole breaker needs two neighbours on one side', () => {
    expect(freePairs(8, [])).toBe(4);
    expect(freePairs(8, [{ position: 1, poles: 2 }])).toBe(3);
    // 3 and 7 are taken: 1 and 5 are alone on the odd side; the even side has two pairs.
    expect(
      freePairs(8, [
        { position: 3, poles: 1 },
        { position: 7, poles: 1 },
      ]),
    ).toBe(2);
  });
});

test('the load of a circuit says where it comes from', () => {
  const [kitchen, outside] = [circuit('c-range'), circuit('c-hp')];
  const lineOf = (code: Parts['code'], c: Block<'circuit'>) => {
    const house = houseWith(code, [kitchen, outside], {
      heating: { heatPump: [heatPump('hp', { rla: 18, fanFla: 1.5, basePanHeater: 120, on: outside })] },
      electrical: {
        panel: [panel('main', [kitchen, outside])],
        load: [load('range', { kind: 'range', rating: 12000, on: kitchen })],
      },
    });
    const steps = stepsOf(sheet => circuitCurrent(house, c, sheet));
    checkSheet(steps);
    return steps[0];
  };
  // A range of 12 kW has a demand of 8 kW on its circuit by both families.
  expect(lineOf('cec-2024', kitchen)).toMatchObject({ source: 'CEC 2024 8-300 (from memory, confirm)' });
  expect(lineOf('nec-2023', kitchen).source).toContain('220.55');
  expect(lineOf('nec-2023', kitchen).value).toBeCloseTo(8000 / 240, 9);
  expect(lineOf('cec-2024', outside).formula).toBe('((rla + fan) * voltage + heaters) / voltage');
  expect(lineOf('cec-2024', outside).value).toBeCloseTo(20, 9);
});

test.each(['nec-2023', 'cec-2024'] as const)('%s: worksheets of circuits and panels evaluate and end', code => {
  const strip = circuit('c-strip', { breaker: 60, conductor: 'awg-6', length: 12 });
  const ahu = circuit('c-mixed', { breaker: 30, conductor: 'awg-10', length: 8 });
  const house = houseWith(code, [strip, ahu], {
    heating: {
      auxiliary: [auxiliary('strip', { output: 10000, on: [strip] })],
      airHandler: [airHandler('ahu', { blower: 450, on: ahu })],
    },
    electrical: {
      panel: [panel('main', [strip, ahu])],
      load: [load('pump', { kind: 'pump', rating: 500, on: ahu })],
    },
  });
  let checked = 0;
  for (const result of electricalResults) {
    const subjects: readonly Block[] =
      result.of === 'circuit' ? [strip, ahu] : result.of === 'panel' ? house.electrical.panel : [];
    for (const subject of subjects) {
      let value = NaN;
      const steps = stepsOf(sheet => (value = result.compute(subject, house, sheet)));
      checkSheet(steps);
      expect(steps.every(({ source }) => source)).toBe(true);
      expect(value, result.name).toBe(result.compute(subject, house));
      expect(steps.at(-1)?.dimension, result.name).toBe(result.dimension);
      expect(steps.at(-1)?.value, result.name).toBeCloseTo(value, 9);
      checked++;
    }
  }
  expect(checked).toBe(17);
});
