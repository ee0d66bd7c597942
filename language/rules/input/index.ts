import type { Rule } from '../define.js';
import { noConstruction } from './no-construction.js';
import openingsExceedWall from './openings-exceed-wall.js';
import rowsOutOfOrder from './rows-out-of-order.js';

export const inputRules: readonly Rule[] = [...noConstruction, openingsExceedWall, rowsOutOfOrder];
