import type { Si } from '../../units/index.js';

/**
 * Typical whole-product U-values (W/m²K) and solar heat gain coefficients of windows, ASHRAE Fundamentals 2021 ch. 17
 * Table 2. The names of the frame columns are from memory. A rated product's own figures go before these.
 */

export const FRAMES = [
  'aluminium',
  'aluminium-thermal-break',
  'reinforced-vinyl',
  'wood-vinyl',
  'insulated-fibreglass',
] as const;
export type Frame = (typeof FRAMES)[number];
export type Opening = 'operable' | 'fixed';

/** Centre of glass, then the five frames of operable and the five of fixed windows. */
type Columns = readonly [number, number, number, number, number, number, number, number, number, number, number];

const GLAZINGS = {
  'single-clear': {
    u: [5.91, 7.24, 6.12, 5.14, 5.05, 4.61, 6.42, 6.07, 5.55, 5.55, 5.35],
    shgc: [0.86, 0.75, 0.75, 0.64, 0.64, 0.64, 0.78, 0.78, 0.75, 0.75, 0.75],
  },
  'double-clear': {
    u: [2.73, 4.62, 3.42, 3.0, 2.87, 2.53, 3.61, 3.22, 2.86, 2.84, 2.72],
    shgc: [0.76, 0.67, 0.67, 0.57, 0.57, 0.57, 0.69, 0.69, 0.67, 0.67, 0.67],
  },
  'triple-clear': {
    u: [1.76, 3.8, 2.6, 2.25, 2.19, 1.91, 2.76, 2.39, 2.05, 2.01, 1.93],
    shgc: [0.68, 0.6, 0.6, 0.51, 0.51, 0.51, 0.62, 0.62, 0.6, 0.6, 0.6],
  },
  'double-low-e-low-solar': {
    u: [1.7, 3.83, 2.68, 2.33, 2.21, 1.89, 2.75, 2.36, 2.03, 2.01, 1.9],
    shgc: [0.41, 0.37, 0.37, 0.31, 0.31, 0.31, 0.38, 0.38, 0.36, 0.36, 0.36],
  },
  'triple-low-e-low-solar': {
    u: [1.02, 3.22, 2.07, 1.76, 1.71, 1.45, 2.13, 1.76, 1.44, 1.4, 1.33],
    shgc: [0.27, 0.25, 0.25, 0.21, 0.21, 0.21, 0.25, 0.25, 0.24, 0.24, 0.24],
  },
  'double-low-e-high-solar': {
    u: [1.99, 4.05, 2.89, 2.52, 2.39, 2.07, 2.99, 2.6, 2.26, 2.24, 2.13],
    shgc: [0.7, 0.62, 0.62, 0.52, 0.52, 0.52, 0.64, 0.64, 0.61, 0.61, 0.61],
  },
  'triple-low-e-high-solar': {
    u: [1.42, 3.54, 2.36, 2.02, 1.97, 1.7, 2.47, 2.1, 1.77, 1.73, 1.66],
    shgc: [0.62, 0.55, 0.55, 0.46, 0.46, 0.46, 0.56, 0.56, 0.54, 0.54, 0.54],
  },
} as const satisfies Record<string, { u: Columns; shgc: Columns }>;

export type Glazing = keyof typeof GLAZINGS;
export const glazings = Object.keys(GLAZINGS) as readonly Glazing[];

export interface WindowRating {
  readonly u: Si<'u-value'>;
  readonly shgc: Si<'ratio'>;
}

/** A typical window as a whole product, frame included. */
export function typicalWindow(glazing: Glazing, frame: Frame, opening: Opening): WindowRating {
  const column = 1 + FRAMES.indexOf(frame) + (opening === 'fixed' ? FRAMES.length : 0);
  return { u: GLAZINGS[glazing].u[column], shgc: GLAZINGS[glazing].shgc[column] };
}

/** The middle of the glass alone, for comparison with a maker's glass figures; never the U-value of a window. */
export function centreOfGlass(glazing: Glazing): WindowRating {
  return { u: GLAZINGS[glazing].u[0], shgc: GLAZINGS[glazing].shgc[0] };
}
