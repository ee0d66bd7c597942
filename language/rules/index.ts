import { airRules } from './air/index.js';
import { circuitRules } from './circuit/index.js';
import type { Rule } from './define.js';
import { heatRules } from './heat/index.js';
import { inputRules } from './input/index.js';
import { managementRules } from './management/index.js';
import { panelRules } from './panel/index.js';
import { planRules } from './plan/index.js';
import { serviceRules } from './service/index.js';

/** Every rule of what a house is; what its text means is judged while it is built. */
export const rules: readonly Rule[] = [
  ...airRules,
  ...circuitRules,
  ...heatRules,
  ...inputRules,
  ...managementRules,
  ...panelRules,
  ...planRules,
  ...serviceRules,
];

export type { Change, Fix, Rule, Say, Severity, Spot, View } from './define.js';
