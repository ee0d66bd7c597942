import type { Block, House } from '../../model/index.js';
import { heatingLoads } from './heating-loads.js';
import { once } from '../once.js';
import type { HouseLoad } from './house-load.js';
import { householdLoads } from './household-loads.js';

/** All loads of a house as it stands. They are worked out when asked for, so that damage to one hides no other circuit. */
export const loadsOf = once((house: House): readonly HouseLoad[] => [...heatingLoads(house), ...householdLoads(house)]);

/** The loads that name a circuit. */
export const loadsOn = (house: House, circuit: Block<'circuit'>): readonly HouseLoad[] =>
  loadsOf(house).filter(load => load.circuits.some(({ name }) => name === circuit.name));
