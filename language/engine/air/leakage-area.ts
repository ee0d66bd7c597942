import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Density of air for which leakage areas are stated, in kg/m³. */
const DENSITY = 1.2;

/** The law of the leaks at reference density: C in m³/(s·Paⁿ) and n. */
export interface Leakage {
  readonly coefficient: number;
  readonly exponent: number;
}

/** Area of one round hole that leaks as much at a reference pressure, in m². ASHRAE Fundamentals 2021 ch. 16 eq. (40). */
function areaAt(leakage: Leakage, pressure: number, discharge: number): number {
  const flow = leakage.coefficient * pressure ** leakage.exponent;
  return (flow / discharge) * Math.sqrt(DENSITY / (2 * pressure));
}

/** Effective leakage area: at 4 Pa, discharge coefficient 1. */
export function effectiveLeakageArea(leakage: Leakage, sheet?: Sheet): Si<'area'> {
  const area = areaAt(leakage, 4, 1);
  sheet?.(() => ({
    label: 'Effective leakage area at 4 Pa',
    formula: 'C * 4^n * sqrt(1.2 / (2*4))',
    inputs: { C: [leakage.coefficient, 'air-flow'], n: [leakage.exponent, 'number'] },
    value: area,
    dimension: 'area',
    source: 'ASHRAE Fundamentals 2021 ch. 16 eq. (40)',
  }));
  return area;
}

/** Equivalent leakage area: at 10 Pa, discharge coefficient 0.611. CAN/CGSB-149.10 (from memory). */
export function equivalentLeakageArea(leakage: Leakage, sheet?: Sheet): Si<'area'> {
  const area = areaAt(leakage, 10, 0.611);
  sheet?.(() => ({
    label: 'Equivalent leakage area at 10 Pa',
    formula: 'C * 10^n / 0.611 * sqrt(1.2 / (2*10))',
    inputs: { C: [leakage.coefficient, 'air-flow'], n: [leakage.exponent, 'number'] },
    value: area,
    dimension: 'area',
    source: 'CAN/CGSB-149.10',
  }));
  return area;
}

/** Normalized leakage of a house: 1000 times leakage area over floor area, with the height to a power. ASHRAE 62.2-2016 § 4.1.2 and, with 0.3, ASHRAE 119-1988 (from memory). */
export function normalizedLeakage(
  house: { readonly area: Si<'area'>; readonly floor: Si<'area'>; readonly height: Si<'length'> },
  standard: '62.2' | '119' = '62.2',
): number {
  return ((1000 * house.area) / house.floor) * (house.height / 2.5) ** (standard === '62.2' ? 0.4 : 0.3);
}

/** Air changes per second at a flow: printed per hour. */
export function airChanges(flow: Si<'air-flow'>, volume: Si<'volume'>): Si<'air-change-rate'> {
  return flow / volume;
}

/**
 * Leakage area per exposed surface, ratio of m² to m², for houses that were not tested. ASHRAE Fundamentals 2021 ch. 17
 * Table 3. An assumption, never a measurement: the classes span a factor of fifteen.
 */
export const UNIT_LEAKAGE = {
  tight: 0.7e-4,
  good: 1.4e-4,
  average: 2.8e-4,
  leaky: 5.6e-4,
  'very-leaky': 10.4e-4,
} as const;
export type Tightness = keyof typeof UNIT_LEAKAGE;

/** Leaks of an untested house: the unit leakage of its class times the exposed surface, taken with the usual exponent 0.65. */
export function assumedLeakage(tightness: Tightness, exposed: Si<'area'>, exponent = 0.65): Leakage {
  const area = UNIT_LEAKAGE[tightness] * exposed;
  return { coefficient: (area * Math.sqrt((2 * 4) / DENSITY)) / 4 ** exponent, exponent };
}

/** A round duct left open, as leaks: area, discharge coefficient 0.6 (common practice), exponent one half. */
export function openDuct(diameter: Si<'length'>): Leakage {
  const area = (Math.PI / 4) * diameter ** 2;
  return { coefficient: 0.6 * area * Math.sqrt(2 / DENSITY), exponent: 0.5 };
}
