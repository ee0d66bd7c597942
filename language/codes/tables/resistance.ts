import type { ConductorSize, Metal } from './conductor-sizes.js';

const PER_THOUSAND_FEET = 304.8;

/**
 * Direct-current resistance of stranded conductors at 75 °C, ohm per 1000 ft: copper uncoated, aluminium.
 * Source: NEC chapter 9, Table 8 up to 4/0, seen in a copy; 250 to 600 kcmil from memory.
 */
const OHM_PER_KFT: Record<ConductorSize, readonly [copper: number, aluminium: number]> = {
  'awg-14': [3.14, 5.17],
  'awg-12': [1.98, 3.25],
  'awg-10': [1.24, 2.04],
  'awg-8': [0.778, 1.28],
  'awg-6': [0.491, 0.808],
  'awg-4': [0.308, 0.508],
  'awg-3': [0.245, 0.403],
  'awg-2': [0.194, 0.319],
  'awg-1': [0.154, 0.253],
  'awg-1-0': [0.122, 0.201],
  'awg-2-0': [0.0967, 0.159],
  'awg-3-0': [0.0766, 0.126],
  'awg-4-0': [0.0608, 0.1],
  'kcmil-250': [0.0515, 0.0847],
  'kcmil-300': [0.0429, 0.0707],
  'kcmil-350': [0.0367, 0.0605],
  'kcmil-400': [0.0321, 0.0529],
  'kcmil-500': [0.0258, 0.0424],
  'kcmil-600': [0.0214, 0.0353],
};

/** Resistance of one conductor, ohm per metre of its own length. */
export const resistancePerMetre = (size: ConductorSize, metal: Metal): number =>
  OHM_PER_KFT[size][metal === 'copper' ? 0 : 1] / PER_THOUSAND_FEET;
