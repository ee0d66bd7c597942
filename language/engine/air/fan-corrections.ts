import type { Si } from '../../units/index.js';
import { dryAirDensity } from '../climate/atmosphere.js';
import type { LeakageFit, Reading } from './blower-door.js';

/** Density of the air that leakage is stated for: 20 °C and 101 325 Pa, in kg/m³. */
const REFERENCE_DENSITY: Si<'density'> = 1.204;

export type Direction = 'depressurize' | 'pressurize';

export interface TestAir {
  readonly direction: Direction;
  readonly indoor: Si<'temperature'>;
  readonly outdoor: Si<'temperature'>;
  readonly barometer: Si<'pressure'>;
}

/** Pressures less the mean of the zero-flow pressures before and after, all with the sign they were read with. ISO 9972:2015 § 5.3.3. */
export function withoutZeroFlow(
  readings: readonly Reading[],
  before: Si<'pressure'>,
  after: Si<'pressure'>,
): readonly Reading[] {
  const offset = (before + after) / 2;
  return readings.map(r => ({ ...r, pressure: r.pressure - offset }));
}

/**
 * Factor from the flow through the fan to the flow through the leaks: the fan moves indoor air out when it depressurizes
 * while outdoor air comes in, and the other way round. ISO 9972:2015 § 6.2 (from memory).
 */
export function leakFlowFactor(air: TestAir): number {
  const inside = dryAirDensity(air.indoor, air.barometer);
  const outside = dryAirDensity(air.outdoor, air.barometer);
  return air.direction === 'depressurize' ? inside / outside : outside / inside;
}

/** Factor from the coefficient found at the test to that at reference density, (ρ/ρ₀)^(1−n) of the air in the leaks. ISO 9972:2015 § 6.2. */
export function referenceFactor(air: TestAir, exponent: number): number {
  const inLeaks = dryAirDensity(air.direction === 'depressurize' ? air.outdoor : air.indoor, air.barometer);
  return (inLeaks / REFERENCE_DENSITY) ** (1 - exponent);
}

/** The fit at reference density: coefficient, its limits and flows scaled alike. */
export function atReference(fit: LeakageFit, air: TestAir): LeakageFit {
  const factor = referenceFactor(air, fit.exponent);
  return scaled(fit, factor);
}

/** A fit whose coefficient is multiplied, for densities and for leaks found or closed after the test. */
function scaled(fit: LeakageFit, factor: number): LeakageFit {
  return {
    ...fit,
    coefficient: fit.coefficient * factor,
    coefficientLimits: { low: fit.coefficientLimits.low * factor, high: fit.coefficientLimits.high * factor },
    flowAt: pressure => fit.flowAt(pressure) * factor,
    flowLimitsAt: pressure => {
      const { low, high } = fit.flowLimitsAt(pressure);
      return { low: low * factor, high: high * factor };
    },
  };
}
