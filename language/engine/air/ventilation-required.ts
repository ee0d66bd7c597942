import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Whole-dwelling ventilation, in m³/s: 0.15 L/s per m² and 3.5 L/s per bedroom and one more. ASHRAE 62.2 § 4.1.1 (SI form, as ASHRAE Fundamentals 2021 ch. 17 eq. (11)). */
export function requiredVentilation(floor: Si<'area'>, bedrooms: Si<'number'>, sheet?: Sheet): Si<'air-flow'> {
  const flow = (0.15 * floor + 3.5 * (bedrooms + 1)) / 1000;
  sheet?.(() => ({
    label: 'Ventilation required',
    formula: '(0.15 * A + 3.5 * (N + 1)) / 1000',
    inputs: { A: [floor, 'area'], N: [bedrooms, 'number'] },
    value: flow,
    dimension: 'air-flow',
    source: 'ASHRAE 62.2 § 4.1.1',
  }));
  return flow;
}

/**
 * Infiltration that 62.2 lets count against the fan, in m³/s: normalized leakage times the weather and shielding factor of
 * the station times floor area in ft², over 7.3, in cfm. ASHRAE 62.2-2016 § 4.1.2 (from memory).
 */
export function creditedInfiltration(
  normalizedLeakage: number,
  weatherFactor: number,
  floor: Si<'area'>,
): Si<'air-flow'> {
  const squareFeet = floor / 0.09290304;
  const cfm = (normalizedLeakage * weatherFactor * squareFeet) / 7.3;
  return cfm * 0.00047194745;
}
