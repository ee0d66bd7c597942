import { describe, expect, test } from 'vitest';
import { edition, type EditionName } from '../../../language/codes/index.js';
import { basicAndAppliances, basicLoad, rangeLoad } from '../../../language/engine/electrical/basic-and-appliances.js';
import { standardRatingFrom } from '../../../language/engine/electrical/breaker.js';
import { serviceConductor } from '../../../language/engine/electrical/conductor.js';
import { livingArea, type Storey } from '../../../language/engine/electrical/living-area.js';
import { minimumRating } from '../../../language/engine/electrical/service-load.js';
import { check } from './checks.js';
import { dwelling, load, method } from './dwellings.js';

const editions: readonly EditionName[] = ['cec-2021', 'cec-2024'];
const rule = method('cec-2021', 'basic-and-appliances');

const storey = (level: Storey['level'], area: number, height = 2.4): Storey => ({
  label: level,
  level,
  area,
  height,
  finish: 'finished',
});

/** W of the greater of the itemized load and the smallest service, as the rule asks for. */
const calculated = (itemized: number, floorArea: number, name: EditionName = 'cec-2021') =>
  Math.max(itemized, minimumRating(floorArea, edition(name)) * 240);

describe('single dwelling, 8-200 1), against published and rebuilt examples', () => {
  const basic = check('CEC-basic-269m2');
  test(basic.title, () => {
    expect(basicLoad(basic.inputs.living_m2, rule)).toBe(basic.expected.basic_W);
  });

  const large = check('CEC-examprep-mansion');
  test.each(editions)(`%s: ${large.title}`, name => {
    const { ground_m2, above_m2, below_m2 } = large.inputs;
    const storeys = [
      storey('above-grade', ground_m2),
      storey('above-grade', above_m2),
      storey('below-grade', below_m2),
      // Too low to live in, so that it does not count.
      storey('below-grade', 50, 1.7),
    ];
    const area = livingArea(storeys, edition(name));
    expect(area).toBeCloseTo(large.expected.living_m2, 9);
    expect(basicLoad(area, method(name, 'basic-and-appliances'))).toBe(large.expected.basic_W);
    expect(rangeLoad(17000, rule)).toBe(large.expected.range_17kW_W);
  });

  const rebuilt = check('CEC-8-110-built');
  test(rebuilt.title, () => {
    const { ground_m2, above_m2, below_m2 } = rebuilt.inputs;
    const area = livingArea(
      [storey('above-grade', ground_m2), storey('above-grade', above_m2), storey('below-grade', below_m2)],
      edition('cec-2021'),
    );
    expect(area).toBeCloseTo(rebuilt.expected.living_m2, 9);
    expect(basicLoad(area, rule)).toBe(rebuilt.expected.basic_W);
  });

  const range = check('CEC-range');
  test(range.title, () => {
    expect((range.inputs.P_W as number[]).map(watts => rangeLoad(watts, rule))).toEqual(range.expected.demand_W);
  });

  const heat = check('CEC-62-118');
  test(heat.title, () => {
    const without = basicAndAppliances(dwelling(80, []), rule).power;
    const heatOf = (kind: 'room-heat' | 'central-heat') =>
      (heat.inputs.heat_W as number[]).map(
        watts => basicAndAppliances(dwelling(80, [load(kind, watts)]), rule).power - without,
      );
    expect(heatOf('room-heat')).toEqual(heat.expected.room_controlled_W);
    expect(heatOf('central-heat')).toEqual(heat.expected.central_W);
  });

  // The printed total of this example does not follow from its own items; the items do.
  const items = check('CEC-example-2900ft2');
  test(`items alone: ${items.title}`, () => {
    const { inputs, expected } = items;
    const { power } = basicAndAppliances(
      dwelling(inputs.living_m2, [
        load('cooling', inputs.ac_W),
        load('range', inputs.range_W),
        load('spa', inputs.hot_tub_W),
        load('vehicle', inputs.EVSE_W),
        load('dryer', inputs.dryer_W),
        load('water-heater', inputs.storage_water_heater_W),
      ]),
      rule,
    );
    expect(rangeLoad(inputs.range_W, rule)).toBe(expected.range_W);
    expect(power).toBe(expected.item_a_W);
    const others = expected.basic_W + expected.range_W + expected.heat_ac_W + expected.full100_W + expected.evse_W;
    expect(power - others).toBe(expected.other_W);
  });

  const baseboards = check('CEC-built-A-baseboard');
  test.each(editions)(`%s: ${baseboards.title}`, name => {
    const { inputs, expected } = baseboards;
    const { power } = basicAndAppliances(
      dwelling(inputs.living_m2, [
        load('range', inputs.range_W),
        load('room-heat', inputs.baseboard_W),
        load('dryer', inputs.dryer_W),
        load('water-heater', inputs.water_heater_W),
      ]),
      method(name, 'basic-and-appliances'),
    );
    expect(power).toBe(expected.item_a_W);
    const load_W = calculated(power, inputs.living_m2, name);
    expect(load_W).toBe(expected.calculated_load_W);
    expect(load_W / 240).toBeCloseTo(expected.calculated_A, 1);
    expect(standardRatingFrom(load_W / 240, edition(name))).toBe(expected.main_A);
  });

  const gasRange = check('CEC-built-C-gas-range');
  test(gasRange.title, () => {
    const { inputs, expected } = gasRange;
    const { power } = basicAndAppliances(
      dwelling(inputs.living_m2, [
        load('cooling', inputs.ac_W),
        load('water-heater', inputs.water_heater_W),
        load('dryer', inputs.dryer_W),
      ]),
      rule,
    );
    expect(power).toBe(expected.item_a_W);
    expect(calculated(power, inputs.living_m2)).toBe(expected.calculated_load_W);
  });

  const smallest = check('CEC-TSBC-1');
  test(smallest.title, () => {
    const { inputs, expected } = smallest;
    const cec = edition('cec-2021');
    const rating = Math.max(minimumRating(inputs.floor_m2, cec), inputs.load_A);
    expect(rating).toBe(expected.min_rating_A);
    expect(serviceConductor(rating, 'aluminium', cec)).toBe(`awg-${expected.conductor}`);
    expect(minimumRating(79.9, cec)).toBe(60);
  });

  const copper = check('CEC-TSBC-2');
  test(copper.title, () => {
    expect(serviceConductor(copper.inputs.load_A, 'copper', edition('cec-2021'))).toBe('awg-3-0');
    expect(copper.expected.conductor).toBe('3/0');
  });
});
