import type { ConductorSize, Metal } from './conductor-sizes.js';

/**
 * Largest breaker over a small conductor, A, whatever its ampacity at 75 or 90 °C.
 * Source: NEC 240.4(D), seen quoted; CEC 14-104 2) gives the same, seen in part.
 */
export const smallConductorLimits: Partial<Record<ConductorSize, Readonly<Partial<Record<Metal, number>>>>> = {
  'awg-14': { copper: 15 },
  'awg-12': { copper: 20, aluminium: 15 },
  'awg-10': { copper: 30, aluminium: 25 },
};
