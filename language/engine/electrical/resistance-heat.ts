import type { Edition } from '../../codes/index.js';

/** Power of a resistance heater away from its rated voltage, W: it follows the square of the voltage. */
export const atVoltage = (power: number, rated: number, supplied: number): number => power * (supplied / rated) ** 2;

/** Groups into which heater elements are divided so that none exceeds the edition's limit. */
export const subdivisions = (current: number, { circuits }: Edition): number =>
  Math.max(1, Math.ceil(current / circuits.heat.element));
