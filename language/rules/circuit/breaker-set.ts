import { conductorSizes, sizeInWords, type Edition } from '../../codes/index.js';
import { standardRatingFrom } from '../../engine/electrical/breaker.js';
import { circuitNeedOf, conductorFor } from '../../engine/electrical/house-circuits.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import type { Block } from '../../model/index.js';
import { print } from '../../units/index.js';
import { at, type Change, type Fix, type View } from '../define.js';

/** Smallest breaker in use for branch circuits, A: common practice, although a smaller one has become standard. */
const SMALLEST_IN_USE = 15;

/** The standard breaker to offer for a need in A. */
export const breakerFor = (needed: number, edition: Edition): number | undefined =>
  standardRatingFrom(Math.max(needed, SMALLEST_IN_USE), edition);

/**
 * The smallest standard breaker that carries what hangs on a circuit, and with it the conductor where the present one is
 * too thin: breaker, conductor and the nameplate's largest breaker move together or not at all.
 */
export function largerBreaker(circuit: Block<'circuit'>, { house }: View): readonly Fix[] {
  const need = circuitNeedOf(house, circuit);
  const breaker = breakerFor(need.breaker, editionFor(house));
  if (breaker === undefined || breaker > (need.largestBreaker ?? Infinity)) return [];
  const thinnest = conductorFor(house, circuit, { breaker, current: need.conductor });
  if (!thinnest) return [];
  const set: Change = { set: at(circuit, 'breaker'), to: print(breaker, 'current') };
  const title = `Set the breaker to ${print(breaker, 'current')}`;
  if (conductorSizes.indexOf(circuit.conductor) >= conductorSizes.indexOf(thinnest))
    return [{ title, changes: [set], preferred: true }];
  return [
    {
      title: `${title} with ${sizeInWords(thinnest)} ${circuit.metal}`,
      changes: [set, { set: at(circuit, 'conductor'), to: thinnest }],
      preferred: true,
    },
  ];
}
