import { expect, test } from 'vitest';
import { edition } from '../../../language/codes/index.js';
import { legCurrents, multiwireNeutral } from '../../../language/engine/electrical/legs.js';
import { spacesLeft, spacesUsed, type Breaker } from '../../../language/engine/electrical/panel-spaces.js';
import { check } from './checks.js';

const spaces = check('PANEL-spaces');
test(spaces.title, () => {
  const { inputs, expected } = spaces;
  const many = (count: number, breaker: Breaker) => Array.from({ length: count }, () => breaker);
  const breakers = [
    ...many(inputs.two_pole, { poles: 2, form: 'full' }),
    ...many(inputs.single, { poles: 1, form: 'full' }),
    ...many(2 * inputs.tandem, { poles: 1, form: 'half-of-tandem' }),
  ];
  expect(breakers.length).toBe(expected.circuits);
  expect(spacesUsed(breakers)).toBe(expected.used);
  expect(spacesLeft(inputs.spaces, breakers)).toBe(expected.free);
});

const legs = check('SPLIT-legs');
test(legs.title, () => {
  const { inputs, expected } = legs;
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  const currents = legCurrents(sum(inputs.leg_A_120_A), sum(inputs.leg_B_120_A), sum(inputs.two_pole_A));
  expect(currents.a).toBe(expected.I_A);
  expect(currents.b).toBe(expected.I_B);
  expect(currents.neutral).toBe(expected.I_N);
  expect(currents.controlling).toBe(expected.controlling_A);
  expect(currents.imbalance * 100).toBeCloseTo(expected.imbalance_pct_of_mean, 1);
});

const multiwire = check('SPLIT-mwbc');
test(multiwire.title, () => {
  const { I1, I2 } = multiwire.inputs;
  expect(multiwireNeutral(I1, I2, 'different')).toBe(multiwire.expected.opposite_legs_N);
  expect(multiwireNeutral(I1, I2, 'same')).toBe(multiwire.expected.same_leg_N);
});

const positions = check('CEC-8-108');
test(positions.title, () => {
  const asked = (positions.inputs.rating_A_up_to as number[]).map(
    rating => edition('cec-2021').panel.positions.find(({ upTo }) => rating <= upTo)?.positions,
  );
  expect(asked).toEqual(positions.expected.positions);
});
