import type { Rule } from '../define.js';
import spaces from './spaces.js';

export const panelRules: readonly Rule[] = [spaces];
