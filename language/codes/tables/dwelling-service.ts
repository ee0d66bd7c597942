import type { ConductorSize, Metal } from './conductor-sizes.js';

/**
 * Smallest conductor for a service or feeder that carries the whole load of one dwelling, by its rating in A.
 * Source: NEC Table 310.12 (2020), seen in a copy; every row has a 75 °C ampacity of at least 0.83 times the rating.
 */
export const dwellingServiceConductors: readonly (readonly [rating: number, sizes: Record<Metal, ConductorSize>])[] = [
  [100, { copper: 'awg-4', aluminium: 'awg-2' }],
  [110, { copper: 'awg-3', aluminium: 'awg-1' }],
  [125, { copper: 'awg-2', aluminium: 'awg-1-0' }],
  [150, { copper: 'awg-1', aluminium: 'awg-2-0' }],
  [175, { copper: 'awg-1-0', aluminium: 'awg-3-0' }],
  [200, { copper: 'awg-2-0', aluminium: 'awg-4-0' }],
  [225, { copper: 'awg-3-0', aluminium: 'kcmil-250' }],
  [250, { copper: 'awg-4-0', aluminium: 'kcmil-300' }],
  [300, { copper: 'kcmil-250', aluminium: 'kcmil-350' }],
  [350, { copper: 'kcmil-350', aluminium: 'kcmil-500' }],
  [400, { copper: 'kcmil-400', aluminium: 'kcmil-600' }],
];
