import type { Rule } from '../define.js';
import creditNotInEdition from './credit-not-in-edition.js';
import heldByManagement from './held-by-management.js';
import overloaded from './overloaded.js';

export const serviceRules: readonly Rule[] = [creditNotInEdition, heldByManagement, overloaded];
