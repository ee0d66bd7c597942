import type { Edition } from '../../codes/index.js';
import type { Block } from '../../model/index.js';
import type { CircuitLoad } from './circuit-load.js';
import type { Load } from './loads.js';

export type LoadBlock = Block<
  | 'load'
  | 'evse'
  | 'water-heater'
  | 'hot-tub'
  | 'battery'
  | 'ventilation'
  | 'heat-pump'
  | 'air-handler'
  | 'auxiliary'
  | 'baseboard'
  | 'air-conditioner'
  | 'furnace'
  | 'boiler'
  | 'humidifier'
>;

/** A block that takes electricity, with the circuits that feed it. */
export interface HouseLoad {
  readonly block: LoadBlock;
  readonly circuits: readonly Block<'circuit'>[];
  /** As the service sees it, at running amperes; undefined for what the load of the living area already holds. */
  readonly service: () => Load | undefined;
  /** As each of its circuits sees it, with the nameplate's least ampacity and largest breaker. */
  readonly onCircuit: (edition: Edition) => CircuitLoad;
}
