import type { Si } from '../../units/index.js';

/** Which way heat flows through the surface in winter: up through a ceiling, horizontally through a wall, down through a floor. */
export type HeatFlow = 'up' | 'horizontal' | 'down';

/** Resistances of the still air at the surfaces, in m²K/W. */
export interface Films {
  readonly inside: Si<'r-value'>;
  readonly outside: Si<'r-value'>;
  readonly source: string;
}

/**
 * Winter films of the handbook: non-reflective surfaces, 6.7 m/s of wind outside. ASHRAE Fundamentals 2021 ch. 18 Table 18
 * (0.12, 0.16 and 0.03 seen); the upward value is from memory of ch. 26 Table 10.
 */
const ASHRAE_INSIDE: Readonly<Record<HeatFlow, number>> = { up: 0.11, horizontal: 0.12, down: 0.16 };
const ASHRAE_OUTSIDE = 0.03;
/** Outdoor film of the cooling season, 3.4 m/s of wind. */
export const ASHRAE_SUMMER_OUTSIDE: Si<'r-value'> = 0.04;

/** Conventional surface resistances, ISO 6946:2017 Table 7 (from memory). */
const ISO_INSIDE: Readonly<Record<HeatFlow, number>> = { up: 0.1, horizontal: 0.13, down: 0.17 };
const ISO_OUTSIDE = 0.04;

export function ashraeFilms(flow: HeatFlow): Films {
  return {
    inside: ASHRAE_INSIDE[flow],
    outside: ASHRAE_OUTSIDE,
    source: 'ASHRAE Fundamentals 2021 ch. 18 Table 18, ch. 26',
  };
}

export function isoFilms(flow: HeatFlow): Films {
  return { inside: ISO_INSIDE[flow], outside: ISO_OUTSIDE, source: 'ISO 6946:2017 Table 7' };
}

/** A surface towards an unheated space (attic, garage, crawl space) has still air on both sides. */
export function facingBufferSpace(films: Films): Films {
  return { ...films, outside: films.inside };
}
