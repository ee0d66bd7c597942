import type { Rule } from '../define.js';
import limitBelowUncontrolled from './limit-below-uncontrolled.js';
import limitTooHigh from './limit-too-high.js';
import sharesCircuit from './shares-circuit.js';
import shedsHeatFirst from './sheds-heat-first.js';

export const managementRules: readonly Rule[] = [limitBelowUncontrolled, limitTooHigh, sharesCircuit, shedsHeatFirst];
