import type { Rule } from '../define.js';
import circuitAfterLoad from './circuit-after-load.js';
import gasStillUsed from './gas-still-used.js';
import loadBeforeCapacity from './load-before-capacity.js';
import notMeasuredFirst from './not-measured-first.js';
import shellAfterHeat from './shell-after-heat.js';
import solarBeforeLoads from './solar-before-loads.js';

export const planRules: readonly Rule[] = [
  circuitAfterLoad,
  gasStillUsed,
  loadBeforeCapacity,
  notMeasuredFirst,
  shellAfterHeat,
  solarBeforeLoads,
];
