import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/**
 * Heat loss coefficients of a slab on grade by metre of its exposed edge, in W/mK, towards the outdoor air.
 * ASHRAE Fundamentals 2021 ch. 18 Table 24: without insulation, and with 0.95 m²K/W from the edge to the footing.
 */
export const SLAB_EDGE = {
  block: { bare: 1.17, insulated: 0.86, of: '200 mm block wall, brick facing' },
  brick: { bare: 1.45, insulated: 0.85, of: '100 mm block wall, brick facing' },
  stud: { bare: 2.07, insulated: 0.92, of: 'metal stud wall, stucco' },
  concrete: { bare: 3.67, insulated: 1.24, of: 'poured concrete wall, duct near the perimeter' },
} as const;
export type SlabEdge = keyof typeof SLAB_EDGE;

/** Edge insulation of the table's second column, in m²K/W. */
const TABULATED: Si<'r-value'> = 0.95;

/**
 * Conductance of a slab on grade to the outdoor air, in W/K: the factor times the exposed perimeter; eq. (41). Between the two
 * columns the edge is taken as a resistance to which the insulation adds in proportion; beyond the second column nothing
 * more is credited.
 */
export function slabEdgeConductance(
  edge: { readonly wall: SlabEdge; readonly insulation: Si<'r-value'>; readonly perimeter: Si<'length'> },
  sheet?: Sheet,
): Si<'conductance'> {
  const { bare, insulated, of } = SLAB_EDGE[edge.wall];
  const share = Math.min(Math.max(edge.insulation, 0), TABULATED) / TABULATED;
  const factor = 1 / (1 / bare + share * (1 / insulated - 1 / bare));
  const conductance = factor * edge.perimeter;
  sheet?.(() => ({
    label: 'Edge of the slab',
    formula: 'p / (1/F_0 + min(R, R_t)/R_t * (1/F_1 - 1/F_0))',
    inputs: {
      p: [edge.perimeter, 'length'],
      F_0: [bare, 'linear-transmittance'],
      R: [edge.insulation, 'r-value'],
      R_t: [TABULATED, 'r-value'],
      F_1: [insulated, 'linear-transmittance'],
    },
    value: conductance,
    dimension: 'conductance',
    source: 'ASHRAE Fundamentals 2021 ch. 18 eq. (41), Table 24',
    note: `The table's ${of}; nothing more is credited beyond its insulated edge.`,
  }));
  return conductance;
}
