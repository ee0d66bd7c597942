import { expect, test } from 'vitest';
import { edition } from '../../../language/codes/index.js';
import { standardRatingFrom } from '../../../language/engine/electrical/breaker.js';
import {
  largestSetPoint,
  managedLoad,
  sharedCircuit,
  type Manager,
} from '../../../language/engine/electrical/management.js';
import { ratingNeeded } from '../../../language/engine/electrical/service-load.js';
import { check } from './checks.js';
import { dwelling, load, method } from './dwellings.js';

const VOLTS = 240;
const holding = (setPoint: number, loads: readonly { readonly name: string }[]): Manager => ({
  label: 'manager',
  setPoint,
  senses: 'service',
  credit: 'by-edition',
  sheds: loads.map(each => each.name),
});

const setPoint = check('NEC-220.70-EMS');
test(setPoint.title, () => {
  const nec = edition('nec-2023');
  const charger = load('vehicle', 19200);
  const service = {
    dwelling: dwelling(100, [load('range', 12000), charger]),
    managers: [holding(setPoint.inputs.setpoint_A, [charger])],
    edition: nec,
    method: method('nec-2023', 'optional-dwelling'),
    voltage: VOLTS,
  };
  const demand = managedLoad(service);
  expect(demand.governs).toBe('set-point');
  expect(demand.power / VOLTS).toBeCloseTo(setPoint.expected.calc_load_A, 9);
  const needed = ratingNeeded(demand, VOLTS, nec);
  expect(standardRatingFrom(needed, nec)).toBe(setPoint.expected.min_ocpd_A_for_setpoint);
});

const shared = check('NEC-625.42-EMS-3x30');
test(shared.title, () => {
  const { branch_A, evse_max_A } = shared.inputs;
  const each = (active: number) =>
    sharedCircuit({ breaker: branch_A, largest: evse_max_A, active }, edition('nec-2023'));
  expect(each(1)).toBe(shared.expected.one_active_A);
  expect(each(2)).toBe(shared.expected.two_active_A_each);
  expect(each(3)).toBeCloseTo(shared.expected.three_active_A_each, 2);
  expect(edition('nec-2023').circuits.continuous.share * branch_A).toBe(shared.expected.limit_A);
});

const powerControl = check('NEC26-D15');
test(powerControl.title, () => {
  const { inputs, expected } = powerControl;
  const nec = edition('nec-2026');
  const rule = method('nec-2026', 'optional-dwelling');
  // The article quotes totals only: a dwelling whose uncontrolled loads come to the quoted total stands for its items.
  const charger = load('vehicle', inputs.controlled_EVSE_VA);
  const shell = dwelling(100, [charger]);
  const bare = managedLoad({
    dwelling: shell,
    managers: [holding(1, [])],
    edition: nec,
    method: rule,
    voltage: inputs.V,
  }).power;
  const rest = load('heat-pump', inputs.total_VA - bare);
  const house = { ...shell, loads: [charger, rest] };
  const service = { dwelling: house, edition: nec, method: rule, voltage: inputs.V };
  const none = managedLoad({ ...service, managers: [holding(80, [])] });
  expect(Math.round(none.power / inputs.V)).toBe(expected.total_A);

  const limit = largestSetPoint(inputs.service_A, nec);
  expect(limit).toBe(expected['control_setting_max_if_80pct_A']);
  const tight = managedLoad({ ...service, managers: [holding(1, [charger])] });
  expect(tight.power).toBeCloseTo(expected.uncontrolled_VA, 6);
  expect(Math.round(tight.power / inputs.V)).toBe(expected.uncontrolled_A);
  const held = managedLoad({ ...service, managers: [holding(limit, [charger])] });
  expect(held.power / inputs.V - tight.power / inputs.V).toBeCloseTo(
    expected.headroom_for_EVSE_at_full_uncontrolled_A,
    6,
  );
  expect(ratingNeeded(held, inputs.V, nec)).toBeCloseTo(inputs.service_A, 9);
});

const canadian = check('CEC-EVEMS-80');
test(canadian.title, () => {
  const { inputs, expected } = canadian;
  const cec = edition('cec-2021');
  expect(largestSetPoint(inputs.service_A, cec)).toBe(expected.threshold_A);
  const charger = load('vehicle', inputs.EVSE_A * VOLTS);
  const shell = dwelling(100, [charger]);
  const service = {
    edition: cec,
    method: method('cec-2021', 'basic-and-appliances'),
    voltage: VOLTS,
    managers: [holding(expected.threshold_A, [charger])],
  };
  const basic = managedLoad({ ...service, dwelling: shell }).power;
  const house = { ...shell, loads: [charger, load('central-heat', inputs.house_A * VOLTS - basic)] };
  const demand = managedLoad({ ...service, dwelling: house });
  expect(demand.power / VOLTS).toBeCloseTo(inputs.house_A, 9);
  const all = managedLoad({ ...service, dwelling: house, managers: [holding(expected.threshold_A, [])] });
  expect(all.power / VOLTS).toBeCloseTo(expected.sum_A, 9);
  expect(all.power / VOLTS > expected.threshold_A).toBe(expected.sheds);
  expect(demand.power / VOLTS < expected.threshold_A).toBe(expected.house_alone_below);
});
