import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import type { ShelterClass, Storeys } from './infiltration-basic.js';
import type { Leakage } from './leakage-area.js';

export type Foundation = 'basement-or-slab' | 'crawl-space';
export type Flue = 'flue' | 'no-flue';

/**
 * Coefficients of the enhanced (AIM-2) model for one, two and three storeys of 2.5 m, half of the leaks in the walls and
 * n = 0.67. ASHRAE Fundamentals 2021 ch. 16 Tables 7 to 9.
 */
const WIND_HEIGHT = [0.48, 0.59, 0.67];
const STACK = { 'no-flue': [0.054, 0.078, 0.098], flue: [0.069, 0.089, 0.107] };
const WIND = {
  'basement-or-slab': { 'no-flue': [0.156, 0.17, 0.17], flue: [0.142, 0.156, 0.167] },
  'crawl-space': { 'no-flue': [0.128, 0.142, 0.151], flue: [0.128, 0.142, 0.154] },
};
const SHELTER = {
  'no-flue': [
    [1, 0.9, 0.7, 0.5, 0.3],
    [1, 0.9, 0.7, 0.5, 0.3],
    [1, 0.9, 0.7, 0.5, 0.3],
  ],
  flue: [
    [1.1, 1.02, 0.86, 0.7, 0.54],
    [1.07, 0.98, 0.81, 0.64, 0.47],
    [1.06, 0.97, 0.79, 0.61, 0.43],
  ],
};

export interface EnhancedCoefficients {
  /** Stack, (Pa/K)ⁿ. */
  readonly stack: number;
  /** Wind, (Pa·s²/m²)ⁿ. */
  readonly wind: number;
  /** Shelter factor on the wind. */
  readonly shelter: number;
  /** From the wind at the weather station to that at eaves height. */
  readonly windHeight: number;
}

export function enhancedCoefficients(
  storeys: Storeys,
  shelter: ShelterClass,
  foundation: Foundation,
  flue: Flue,
): EnhancedCoefficients {
  const i = storeys - 1;
  return {
    stack: STACK[flue][i],
    wind: WIND[foundation][flue][i],
    shelter: SHELTER[flue][i][shelter - 1],
    windHeight: WIND_HEIGHT[i],
  };
}

export interface Infiltration {
  readonly stack: Si<'air-flow'>;
  readonly wind: Si<'air-flow'>;
  readonly total: Si<'air-flow'>;
}

/**
 * Natural infiltration by the enhanced model: stack and wind add in quadrature. ASHRAE Fundamentals 2021 ch. 16 eqs. (47),
 * (49), (50). The wind is that of the weather station; the leaks include the flue when its column is chosen.
 */
export function enhancedInfiltration(
  leakage: Leakage,
  k: EnhancedCoefficients,
  difference: Si<'temperature-difference'>,
  wind: Si<'velocity'>,
  sheet?: Sheet,
): Infiltration {
  const { coefficient: c, exponent: n } = leakage;
  const byStack = c * k.stack * Math.abs(difference) ** n;
  const byWind = c * k.wind * (k.shelter * k.windHeight * wind) ** (2 * n);
  const total = Math.sqrt(byStack ** 2 + byWind ** 2);
  const source = 'ASHRAE Fundamentals 2021 ch. 16 eqs. (47), (49), (50), Tables 7 to 9';
  sheet?.(() => ({
    label: 'Stack flow',
    formula: 'C * C_s * abs(dt)^n',
    inputs: {
      C: [c, 'air-flow'],
      C_s: [k.stack, 'number'],
      dt: [difference, 'temperature-difference'],
      n: [n, 'number'],
    },
    value: byStack,
    dimension: 'air-flow',
    source,
  }));
  sheet?.(() => ({
    label: 'Wind flow',
    formula: 'C * C_w * (s * G * v)^(2*n)',
    inputs: {
      C: [c, 'air-flow'],
      C_w: [k.wind, 'number'],
      s: [k.shelter, 'number'],
      G: [k.windHeight, 'number'],
      v: [wind, 'velocity'],
      n: [n, 'number'],
    },
    value: byWind,
    dimension: 'air-flow',
    source,
  }));
  sheet?.(() => ({
    label: 'Infiltration, enhanced model',
    formula: 'sqrt(Q_s^2 + Q_w^2)',
    inputs: { Q_s: [byStack, 'air-flow'], Q_w: [byWind, 'air-flow'] },
    value: total,
    dimension: 'air-flow',
    source,
  }));
  return { stack: byStack, wind: byWind, total };
}
