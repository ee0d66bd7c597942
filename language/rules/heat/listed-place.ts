import { nearestDesignPlace, type DesignPlace } from '../../engine/climate/design-temperatures.js';
import type { Block } from '../../model/index.js';
import { at, type Say, type Telling, type View } from '../define.js';

/** Tables differ by a degree or two among editions and stations; beyond this a design temperature is questioned. */
const TOLERANCE = 2;

export interface Milder {
  readonly design: Block<'design'>;
  readonly place: DesignPlace;
  readonly distance: number;
}

/** A listed place near the site that is colder than the code pair of the house. */
export function milderThan(
  design: Block<'design'>,
  { house }: View,
  status: DesignPlace['status'],
): Milder | undefined {
  const { latitude, longitude, elevation } = house.site;
  if (design.name !== 'code' || latitude === undefined || longitude === undefined) return undefined;
  const near = nearestDesignPlace({ latitude, longitude, elevation }, p => p.status === status);
  return near && design.outdoor > near.place.outdoor + TOLERANCE ? { design, ...near } : undefined;
}

export const tellMilder = ({ design, place, distance }: Milder, say: Say): Telling => ({
  at: at(design, 'outdoor'),
  message: `the design temperature of ${say(design.outdoor, 'temperature')} is ${say(design.outdoor - place.outdoor, 'temperature-difference')} milder than ${say(place.outdoor, 'temperature')} (${place.basis}) at ${place.place}, ${Math.round(distance / 1000)} km away${place.status === 'memory' ? ', a value from memory' : ''}`,
});
