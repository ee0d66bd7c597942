import type { Rule } from '../define.js';
import heatOffOnFault from './heat-off-on-fault.js';
import limitBelowUncontrolled from './limit-below-uncontrolled.js';
import limitTooHigh from './limit-too-high.js';
import sharesCircuit from './shares-circuit.js';
import shedsHeatFirst from './sheds-heat-first.js';

export const managementRules: readonly Rule[] = [
  heatOffOnFault,
  limitBelowUncontrolled,
  limitTooHigh,
  sharesCircuit,
  shedsHeatFirst,
];
