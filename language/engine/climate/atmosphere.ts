import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Pressure of the standard atmosphere at sea level, in Pa. */
export const STANDARD_PRESSURE = 101325;

/**
 * Barometric pressure of the standard atmosphere at an elevation in m.
 * ASHRAE Fundamentals ch. 1 eq. (3); tabulated there from −500 m to 10 000 m.
 */
export function pressureAtElevation(elevation: Si<'length'>, sheet?: Sheet): Si<'pressure'> {
  const pressure = STANDARD_PRESSURE * (1 - 2.25577e-5 * elevation) ** 5.2559;
  sheet?.(() => ({
    label: 'Air pressure at the site',
    formula: '101325 * (1 - 2.25577e-5 * z)^5.2559',
    inputs: { z: [elevation, 'length'] },
    value: pressure,
    dimension: 'pressure',
    source: 'ASHRAE Fundamentals 2021 ch. 1 eq. (3)',
  }));
  return pressure;
}

/** Temperature of the standard atmosphere at an elevation in m, ASHRAE Fundamentals ch. 1 eq. (4). */
export function standardTemperature(elevation: Si<'length'>): Si<'temperature'> {
  return 15 - 0.0065 * elevation;
}

/**
 * Heat that a cubic metre of air carries per kelvin, in J/(m³K), at a barometric pressure. The handbook's 1.23 W per L/s
 * and K holds at sea level and goes down with the pressure.
 * ASHRAE Fundamentals ch. 17 eq. (1) and the rule for other elevations beside it.
 */
export function sensibleHeatOfAir(pressure: Si<'pressure'>): number {
  return (1230 * pressure) / STANDARD_PRESSURE;
}

/** Latent heat factor, in W per m³/s and kg/kg, at a barometric pressure: 3010 W per L/s at sea level; ASHRAE Fundamentals ch. 17 eq. (2). */
export function latentHeatOfAir(pressure: Si<'pressure'>): number {
  return (3.01e6 * pressure) / STANDARD_PRESSURE;
}

/**
 * Density of dry air, in kg/m³, from the law of ideal gases with 287.055 J/(kgK). Moisture changes it by less than one
 * per cent at indoor conditions, which is within what a blower-door test can tell.
 */
export function dryAirDensity(temperature: Si<'temperature'>, pressure: Si<'pressure'>): Si<'density'> {
  return pressure / (287.055 * (temperature + 273.15));
}
