import type { Dimension } from './dimensions.js';
import { parseUnit } from './parse-unit.js';
import { isOf, quantity } from './quantity.js';

/** Units that are easily taken for one another; each offers the others. Common practice of mixed-unit trades. */
const CONFUSED: readonly (readonly string[])[] = [
  ['R', 'RSI'],
  ['°F', '°C', 'K'],
  ['cfm', 'L/s'],
  ['ft2', 'm2'],
  ['ft3', 'm3'],
  ['ft', 'm', 'in', 'mm', 'cm'],
  ['W', 'kW', 'BTU/h', 'MBH', 'ton'],
  ['Pa', 'kPa', 'inWC'],
  ['kWh', 'GJ', 'therm'],
  ['¢/kWh', 'CAD/kWh', 'USD/kWh'],
  ['%', ''],
];

/**
 * Other units for the written number that would make it a plausible value of the dimension, nearest habit first.
 * @param number the number as written
 * @param written its unit as written, '' for none
 * @param within limits in SI, both included
 */
export function likelyUnits(
  number: number,
  written: string,
  dimension: Dimension,
  within: readonly [number, number] | undefined,
): string[] {
  const own = written === '' ? '' : (parseUnit(written)?.symbol ?? written);
  const group = CONFUSED.find(g => g.includes(own));
  if (!group) return [];
  return group.filter(symbol => {
    if (symbol === own) return false;
    const q = quantity(number, symbol ? parseUnit(symbol) : undefined);
    return isOf(q, dimension) && (!within || (q.value >= within[0] && q.value <= within[1]));
  });
}
