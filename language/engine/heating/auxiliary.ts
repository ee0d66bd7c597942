import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Heat of a resistance at a voltage other than its rated one: the power follows the square. */
export function resistanceOutput(
  {
    label,
    rated,
    ratedVoltage,
    supplyVoltage,
  }: {
    readonly label: string;
    readonly rated: Si<'heat-flow'>;
    readonly ratedVoltage: Si<'voltage'>;
    readonly supplyVoltage: Si<'voltage'>;
  },
  sheet?: Sheet,
): Si<'heat-flow'> {
  const output = rated * (supplyVoltage / ratedVoltage) ** 2;
  sheet?.(() => ({
    label,
    formula: 'P * (V / V_r)^2',
    inputs: {
      P: [rated, 'heat-flow'],
      V: [supplyVoltage, 'voltage'],
      V_r: [ratedVoltage, 'voltage'],
    },
    value: output,
    dimension: 'heat-flow',
    source: 'power of a resistance, V²/R',
  }));
  return output;
}

/** Sizes in which electric heat for air handlers is usually sold, in W at 240 V. Common practice. */
const USUAL_STRIPS: readonly Si<'heat-flow'>[] = [3000, 5000, 8000, 10000, 15000, 20000, 25000];

/** The smallest usual size that carries a heat flow at the voltage of the house; undefined beyond the largest. */
export function smallestStrip(
  required: Si<'heat-flow'>,
  supplyVoltage: Si<'voltage'> = 240,
): Si<'heat-flow'> | undefined {
  if (required <= 0) return 0;
  return USUAL_STRIPS.find(size => size * (supplyVoltage / 240) ** 2 >= required);
}
