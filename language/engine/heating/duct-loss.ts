import type { Si } from '../../units/index.js';

/**
 * Part of the load that ducts outside the heated space lose, ASHRAE Fundamentals 2021 ch. 17 Table 6, heating. Six columns:
 * leakage of 11 % of the flow on each side with duct insulation of 0, 0.7 and 1.4 m²K/W, then 5 % with the same. Guidance: a
 * measured duct leakage goes before it.
 */
const FACTORS = {
  one: {
    attic: {
      furnace: [0.49, 0.29, 0.25, 0.34, 0.16, 0.13],
      'heat-pump': [0.56, 0.37, 0.34, 0.34, 0.19, 0.16],
    },
    basement: {
      furnace: [0.28, 0.18, 0.16, 0.19, 0.1, 0.08],
      'heat-pump': [0.23, 0.17, 0.16, 0.14, 0.09, 0.08],
    },
    'crawl-space': {
      furnace: [0.49, 0.29, 0.25, 0.34, 0.16, 0.13],
      'heat-pump': [0.56, 0.37, 0.34, 0.34, 0.19, 0.16],
    },
  },
  two: {
    attic: {
      furnace: [0.41, 0.26, 0.24, 0.27, 0.14, 0.12],
      'heat-pump': [0.49, 0.35, 0.33, 0.28, 0.17, 0.15],
    },
    basement: {
      furnace: [0.24, 0.17, 0.15, 0.16, 0.09, 0.08],
      'heat-pump': [0.2, 0.16, 0.15, 0.12, 0.08, 0.07],
    },
    'crawl-space': {
      furnace: [0.41, 0.26, 0.24, 0.27, 0.14, 0.12],
      'heat-pump': [0.49, 0.35, 0.33, 0.28, 0.17, 0.15],
    },
  },
} as const;

export type DuctLocation = keyof (typeof FACTORS)['one'];
export type DuctInsulation = 0 | 0.7 | 1.4;

/** The factor of the table. A house of three storeys is read in the column of two. */
export function ductLossFactor(ducts: {
  readonly location: DuctLocation;
  readonly storeys: 1 | 2 | 3;
  readonly heat: 'furnace' | 'heat-pump';
  readonly leakage: 0.05 | 0.11;
  readonly insulation: DuctInsulation;
}): Si<'ratio'> {
  const row = FACTORS[ducts.storeys === 1 ? 'one' : 'two'][ducts.location][ducts.heat];
  return row[(ducts.leakage === 0.11 ? 0 : 3) + ([0, 0.7, 1.4] as const).indexOf(ducts.insulation)];
}
