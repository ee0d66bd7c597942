import { conductorSizes, sizeInWords } from '../../codes/index.js';
import { standardRatingFrom } from '../../engine/electrical/breaker.js';
import { circuitNeedOf, conductorFor } from '../../engine/electrical/house-circuits.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import type { Block } from '../../model/index.js';
import { print } from '../../units/index.js';
import { at, type Change, type Fix, type View } from '../define.js';

/**
 * The smallest standard breaker that carries what hangs on a circuit, and with it the conductor where the present one is
 * too thin: breaker, conductor and the nameplate's largest breaker move together or not at all.
 */
export function largerBreaker(circuit: Block<'circuit'>, { house }: View): readonly Fix[] {
  const need = circuitNeedOf(house, circuit);
  const breaker = standardRatingFrom(need.breaker, editionFor(house));
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
