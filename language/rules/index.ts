import type { Rule } from './define.js';

/** Every rule of what a house is; what its text means is judged while it is built. */
export const rules: readonly Rule[] = [];

export type { Change, Fix, Rule, Say, Severity, Spot, Telling, View } from './define.js';
