import type { Clause, ClauseOf } from '../clause.js';
import type { OptionalDwelling, StandardDwelling, UnitLoads } from '../service-method.js';
import { rangeDemand } from '../tables/range-demand.js';

const SQUARE_FOOT = 0.3048 ** 2;

/** What differs from one edition of the American code to the next in the two dwelling methods. */
export interface NecServiceDifferences {
  readonly at: ClauseOf;
  /** VA per square foot. */
  readonly perSquareFoot: number;
  readonly lighting: Clause;
  readonly lightingDemand: Clause;
  /** The charger counts at least so many VA. */
  readonly vehicle: { readonly atLeast: number; readonly clause: Clause };
  readonly vehicleInOptional: Clause;
  /** VA of the pool of the optional method that count in full. */
  readonly poolInFull: number;
  /** Number of the article: 220 up to 2023, 120 from 2026 on. */
  readonly article: 120 | 220;
}

const unitLoads = ({ at, article, ...d }: NecServiceDifferences): UnitLoads => ({
  lighting: { perArea: d.perSquareFoot / SQUARE_FOOT, perSquareFoot: d.perSquareFoot, clause: d.lighting },
  smallAppliance: { each: 1500, atLeast: 2, clause: at(`${article}.52(A)`) },
  laundry: { each: 1500, atLeast: 1, clause: at(`${article}.52(B)`) },
  vehicle: d.vehicle,
});

/**
 * The optional method for one dwelling. The numbers of the selections for heating and cooling follow the order used since
 * 2008, from memory. That a blower counts in full beside the selection is common practice.
 */
export function optionalDwelling(d: NecServiceDifferences): OptionalDwelling {
  const { at, article } = d;
  const c = (item: number) => `${article}.82(C)(${item})`;
  return {
    method: 'optional-dwelling',
    title: `optional method, ${article}.82`,
    total: at(`${article}.82(A)`),
    leastRating: 100,
    units: unitLoads(d),
    nameplates: at(`${article}.82(B)(3)`),
    pool: { full: d.poolInFull, beyond: 0.4, clause: at(`${article}.82(B)`) },
    hvac: {
      clause: at(`${article}.82(C)`),
      selections: [
        { name: 'Air conditioning', inFull: ['cooling', 'blower'], reduced: [], factor: 0, clause: at(c(1)) },
        {
          name: 'Heat pump without supplementary heat',
          inFull: ['heat-pump', 'blower'],
          reduced: [],
          factor: 0,
          clause: at(c(2), 'memory'),
        },
        {
          name: 'Heat pump with supplementary heat',
          inFull: ['heat-pump', 'blower'],
          reduced: ['supplementary'],
          factor: 0.65,
          clause: at(c(3)),
        },
        {
          name: 'Electric heat, central or of fewer than four units',
          inFull: ['blower'],
          reduced: ['central-or-room'],
          factor: 0.65,
          heaters: { from: 1, below: 4 },
          clause: at(c(4), 'in-part'),
        },
        {
          name: 'Electric heat of four or more separately controlled units',
          inFull: ['blower'],
          reduced: ['central-or-room'],
          factor: 0.4,
          heaters: { from: 4, below: Infinity },
          clause: at(c(5)),
        },
        {
          name: 'Storage heat that runs at its full rating',
          inFull: ['storage', 'blower'],
          reduced: [],
          factor: 0,
          clause: at(c(6), 'memory'),
        },
      ],
    },
    vehicle: { factor: 1, reading: 'own-line', clause: d.vehicleInOptional },
  };
}

/** The standard method of Part III for one dwelling. */
export function standardDwelling(d: NecServiceDifferences): StandardDwelling {
  const { at, article } = d;
  return {
    method: 'standard-dwelling',
    title: `standard method, ${article} Part III`,
    total: at(`${article} Part III`),
    leastRating: 0,
    units: unitLoads(d),
    lighting: {
      steps: [
        { upTo: 3000, factor: 1 },
        { upTo: 120000, factor: 0.35 },
        { upTo: Infinity, factor: 0.25 },
      ],
      clause: d.lightingDemand,
    },
    fastened: { from: 4, leastRating: 500, factor: 0.75, clause: at(`${article}.53`) },
    dryer: { atLeast: 5000, clause: at(`${article}.54`) },
    range: { ...rangeDemand, clause: at(`${article}.55`, 'in-part') },
    heat: { factor: 1, clause: at(`${article}.51`) },
    larger: at(`${article}.60`),
    largestMotor: { factor: 0.25, clause: at('430.24') },
    neutral: { factor: 0.7, clause: at(`${article}.61`) },
  };
}
