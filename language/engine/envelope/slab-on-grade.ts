import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/**
 * Heat loss coefficients of a slab on grade by metre of its exposed edge, in W/mK, towards the outdoor air.
 * ASHRAE Fundamentals 2021 ch. 18 Table 24: without insulation, and with 0.95 m²K/W from the edge to the footing.
 */
export const SLAB_EDGE = {
  'block-brick': { bare: 1.17, insulated: 0.86, of: '200 mm block wall, brick facing' },
  'thin-block-brick': { bare: 1.45, insulated: 0.85, of: '100 mm block wall, brick facing' },
  'metal-stud': { bare: 2.07, insulated: 0.92, of: 'metal stud wall, stucco' },
  'poured-concrete-duct': { bare: 3.67, insulated: 1.24, of: 'poured concrete wall, duct near the perimeter' },
} as const;
export type SlabEdge = keyof typeof SLAB_EDGE;

/** Conductance of a slab on grade to the outdoor air, in W/K: the factor times the exposed perimeter; eq. (41). */
export function slabConductance(
  edge: SlabEdge,
  insulation: 'bare' | 'insulated',
  perimeter: Si<'length'>,
  sheet?: Sheet,
): Si<'conductance'> {
  const factor = SLAB_EDGE[edge][insulation];
  const conductance = factor * perimeter;
  sheet?.(() => ({
    label: 'Slab edge',
    formula: 'F_p * p',
    inputs: { F_p: [factor, 'linear-transmittance'], p: [perimeter, 'length'] },
    value: conductance,
    dimension: 'conductance',
    source: 'ASHRAE Fundamentals 2021 ch. 18 eq. (41), Table 24',
    note: SLAB_EDGE[edge].of,
  }));
  return conductance;
}
