import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Constants I0, I1, I2 of eq. (10) with the wind they stand for, in L/s per cm², m and K. */
const CONSTANTS = {
  heating: { wind: 6.7, i0: 51, i1: 0.35, i2: 0.23 },
  cooling: { wind: 3.4, i0: 25, i1: 0.38, i2: 0.12 },
} as const;

/**
 * Infiltration driving factor of the design hour, in m³/s per m² of leakage area (numerically ten times the handbook's
 * L/s per cm²). ASHRAE Fundamentals 2021 ch. 17 eq. (10), Table 5. Houses of 2.5 to 8 m and ordinary shelter; `flueShare`
 * is the part of the leakage area that is flue. The form with a flue is reconstructed from a garbled print.
 */
export function infiltrationDrivingFactor(
  season: keyof typeof CONSTANTS,
  height: Si<'length'>,
  difference: Si<'temperature-difference'>,
  flueShare: Si<'ratio'> = 0,
): number {
  const { i0, i1, i2 } = CONSTANTS[season];
  return (10 * (height * Math.abs(difference) * (i1 + i2 * flueShare) + i0)) / 1000;
}

/** Infiltration of the design hour, in m³/s. */
export function designInfiltration(
  season: keyof typeof CONSTANTS,
  house: {
    readonly leakageArea: Si<'area'>;
    readonly height: Si<'length'>;
    readonly difference: Si<'temperature-difference'>;
    readonly flueShare?: Si<'ratio'>;
  },
  sheet?: Sheet,
): Si<'air-flow'> {
  const { leakageArea, height, difference, flueShare = 0 } = house;
  const { i0, i1, i2, wind } = CONSTANTS[season];
  const flow = leakageArea * infiltrationDrivingFactor(season, height, difference, flueShare);
  sheet?.(() => ({
    label: 'Infiltration of the design hour',
    formula: 'A * 10 * (H * abs(dt) * (I_1 + I_2 * f) + I_0) / 1000',
    inputs: {
      A: [leakageArea, 'area'],
      H: [height, 'length'],
      dt: [difference, 'temperature-difference'],
      I_1: [i1, 'number'],
      I_2: [i2, 'number'],
      f: [flueShare, 'ratio'],
      I_0: [i0, 'number'],
    },
    value: flow,
    dimension: 'air-flow',
    source: 'ASHRAE Fundamentals 2021 ch. 17 eq. (10)',
    note: `Wind of ${wind} m/s is in the constants.`,
  }));
  return flow;
}
