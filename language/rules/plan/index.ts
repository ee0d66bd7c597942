import type { Rule } from '../define.js';
import loadBeforeCapacity from './load-before-capacity.js';

export const planRules: readonly Rule[] = [loadBeforeCapacity];
