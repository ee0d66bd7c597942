import type { Si } from '../../units/index.js';
import type { HeatFlow } from './surface-films.js';

/**
 * Resistance of an unventilated air layer between ordinary (high-emissivity) surfaces, in m²K/W, by its thickness in m.
 * ISO 6946:2017 Table 8 (from memory); layers of intermediate thickness are interpolated as the standard allows.
 */
const THICKNESS = [0, 0.005, 0.007, 0.01, 0.015, 0.025, 0.05, 0.1, 0.3];
const RESISTANCE: Readonly<Record<HeatFlow, readonly number[]>> = {
  up: [0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16],
  horizontal: [0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18],
  down: [0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23],
};

/** Beyond 300 mm the table ends: the last value is kept, although so thick a space is a room rather than a layer. */
export function airLayerResistance(thickness: Si<'length'>, flow: HeatFlow): Si<'r-value'> {
  const column = RESISTANCE[flow];
  const above = THICKNESS.findIndex(t => t >= thickness);
  if (above === -1) return column[column.length - 1];
  if (above === 0) return column[0];
  const below = above - 1;
  const share = (thickness - THICKNESS[below]) / (THICKNESS[above] - THICKNESS[below]);
  return column[below] + share * (column[above] - column[below]);
}
