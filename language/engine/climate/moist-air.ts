import type { Si } from '../../units/index.js';

/**
 * Moist air from its dry-bulb temperature, by the perfect-gas relations of ASHRAE Fundamentals ch. 1 (2017, 2021).
 * Temperatures in °C, pressures in Pa, humidity ratios in kg of water to kg of dry air, enthalpies in J per kg of dry air.
 * Valid from −100 °C to 200 °C; against the handbook's real-gas tables the humidity ratio is low by about 0.5 %.
 */

const RATIO_OF_MASSES = 0.621945;

/** Coefficients C1 to C7 over ice and C8 to C13 over water of eqs. (5) and (6), in the natural logarithm of the pressure in Pa. */
const OVER_ICE = [-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019];
const OVER_WATER = [-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673];

/** Saturation pressure over ice below the triple point (0.01 °C) and over water above it, eqs. (5) and (6). */
export function saturationPressure(temperature: Si<'temperature'>): Si<'pressure'> {
  const t = temperature + 273.15;
  if (temperature <= 0.01) {
    const [c1, c2, c3, c4, c5, c6, c7] = OVER_ICE;
    return Math.exp(c1 / t + c2 + c3 * t + c4 * t ** 2 + c5 * t ** 3 + c6 * t ** 4 + c7 * Math.log(t));
  }
  const [c8, c9, c10, c11, c12, c13] = OVER_WATER;
  return Math.exp(c8 / t + c9 + c10 * t + c11 * t ** 2 + c12 * t ** 3 + c13 * Math.log(t));
}

/** Humidity ratio from the partial pressure of the vapour, eq. (20). */
function humidityRatio(vapourPressure: Si<'pressure'>, pressure: Si<'pressure'>): number {
  return (RATIO_OF_MASSES * vapourPressure) / (pressure - vapourPressure);
}

/** Humidity ratio of saturated air, eq. (21). */
export function saturationHumidityRatio(temperature: Si<'temperature'>, pressure: Si<'pressure'>): number {
  return humidityRatio(saturationPressure(temperature), pressure);
}

/** Humidity ratio from the relative humidity, a fraction. */
export function humidityRatioAt(
  temperature: Si<'temperature'>,
  relativeHumidity: Si<'ratio'>,
  pressure: Si<'pressure'>,
): number {
  return humidityRatio(relativeHumidity * saturationPressure(temperature), pressure);
}

/** Partial pressure of the vapour, eq. (20) turned round. */
function vapourPressure(ratio: number, pressure: Si<'pressure'>): Si<'pressure'> {
  return (pressure * ratio) / (RATIO_OF_MASSES + ratio);
}

/** Relative humidity as a fraction, eqs. (12) and (22). */
export function relativeHumidity(temperature: Si<'temperature'>, ratio: number, pressure: Si<'pressure'>): Si<'ratio'> {
  return vapourPressure(ratio, pressure) / saturationPressure(temperature);
}

/** Enthalpy, eq. (30). */
export function enthalpy(temperature: Si<'temperature'>, ratio: number): Si<'energy'> {
  return 1000 * (1.006 * temperature + ratio * (2501 + 1.86 * temperature));
}

/** Volume in m³ of the air that holds a kilogram of dry air, eq. (26). */
export function specificVolume(temperature: Si<'temperature'>, ratio: number, pressure: Si<'pressure'>): Si<'volume'> {
  return (287.042 * (temperature + 273.15) * (1 + 1.607858 * ratio)) / pressure;
}

/** Density of the mixture, eq. (11). */
export function moistAirDensity(
  temperature: Si<'temperature'>,
  ratio: number,
  pressure: Si<'pressure'>,
): Si<'density'> {
  return (1 + ratio) / specificVolume(temperature, ratio, pressure);
}

/** Humidity ratio from the thermodynamic wet-bulb temperature, eqs. (33) above and (35) below freezing; never less than none. */
export function humidityRatioFromWetBulb(
  temperature: Si<'temperature'>,
  wetBulb: Si<'temperature'>,
  pressure: Si<'pressure'>,
): number {
  const saturated = saturationHumidityRatio(wetBulb, pressure);
  const [latent, slope, own] = wetBulb >= 0 ? [2501, 2.326, 4.186] : [2830, 0.24, 2.1];
  const ratio =
    ((latent - slope * wetBulb) * saturated - 1.006 * (temperature - wetBulb)) /
    (latent + 1.86 * temperature - own * wetBulb);
  return Math.max(ratio, 0);
}

/** Dew point (frost point below freezing), found by bisection of the saturation pressure to 0.0001 K. */
export function dewPoint(ratio: number, pressure: Si<'pressure'>): Si<'temperature'> {
  const wanted = vapourPressure(ratio, pressure);
  return rising(saturationPressure, wanted, 200);
}

/** Thermodynamic wet-bulb temperature, found by bisection to 0.0001 K. */
export function wetBulb(temperature: Si<'temperature'>, ratio: number, pressure: Si<'pressure'>): Si<'temperature'> {
  return rising(wb => humidityRatioFromWetBulb(temperature, wb, pressure), ratio, temperature);
}

/** Where a rising function between −100 °C and `top` reaches a value. */
function rising(value: (t: number) => number, wanted: number, top: number): number {
  let low = -100;
  let high = top;
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (value(middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
