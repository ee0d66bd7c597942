import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Storeys above grade and shelter class: 1 open country to 5 closely surrounded. ASHRAE Fundamentals 2021 ch. 16 Table 5. */
export type Storeys = 1 | 2 | 3;
export type ShelterClass = 1 | 2 | 3 | 4 | 5;

/** Stack coefficients in (L/s)²/(cm⁴·K), ASHRAE Fundamentals 2021 ch. 16 Table 4; houses of 2.5, 5 and 7.5 m. */
const STACK = [0.000145, 0.00029, 0.000435];

/** Wind coefficients in (L/s)²/(cm⁴·(m/s)²) by shelter class and storeys, Table 6. */
const WIND = [
  [0.000319, 0.00042, 0.000494],
  [0.000246, 0.000325, 0.000382],
  [0.000174, 0.000231, 0.000271],
  [0.000104, 0.000137, 0.000161],
  [0.000032, 0.000042, 0.000049],
];

export const stackCoefficient = (storeys: Storeys): number => STACK[storeys - 1];
export const windCoefficient = (storeys: Storeys, shelter: ShelterClass): number => WIND[shelter - 1][storeys - 1];

/**
 * Natural infiltration by the basic model, in m³/s: leakage area at 4 Pa, difference of temperatures in K, wind in m/s at the
 * weather station. ASHRAE Fundamentals 2021 ch. 16 eq. (48).
 */
export function basicInfiltration(
  house: {
    readonly leakageArea: Si<'area'>;
    readonly storeys: Storeys;
    readonly shelter: ShelterClass;
    readonly difference: Si<'temperature-difference'>;
    readonly wind: Si<'velocity'>;
  },
  sheet?: Sheet,
): Si<'air-flow'> {
  const { leakageArea, storeys, shelter, difference, wind } = house;
  const cs = stackCoefficient(storeys);
  const cw = windCoefficient(storeys, shelter);
  // From cm² and L/s of the tables: 1e4 cm² in a m², 1e3 L in a m³.
  const flow = leakageArea * 10 * Math.sqrt(cs * Math.abs(difference) + cw * wind ** 2);
  sheet?.(() => ({
    label: 'Infiltration, basic model',
    formula: '10 * A * sqrt(C_s * abs(dt) + C_w * v^2)',
    inputs: {
      A: [leakageArea, 'area'],
      C_s: [cs, 'number'],
      dt: [difference, 'temperature-difference'],
      C_w: [cw, 'number'],
      v: [wind, 'velocity'],
    },
    value: flow,
    dimension: 'air-flow',
    source: 'ASHRAE Fundamentals 2021 ch. 16 eq. (48), Tables 4 to 6',
    note: `${storeys} storeys, shelter class ${shelter}. The 10 turns cm² and L/s of the tables into m² and m³/s.`,
  }));
  return flow;
}
