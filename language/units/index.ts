export { dimensions, type Dimension, type DimensionEntry, type Si } from './dimensions.js';
export { nearest, nearestUnit, parseUnit } from './parse-unit.js';
export { figures, print, printed, unitFor, type PrintOptions, type UnitSystem } from './print.js';
export { add, inUnit, isOf, multiply, quantity, read, spell, type Outcome, type Quantity } from './quantity.js';
export { likelyUnits } from './slips.js';
export { isCurrency, type Unit } from './unit-table.js';
export { sameVector, type Vector } from './vector.js';
