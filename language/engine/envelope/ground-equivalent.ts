import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/**
 * Ground losses as EN 12831-1:2017 § 6.3.2.6 counts them (from memory): an equivalent U-value, a correction for the swing
 * of the year, the share of the temperature difference that the annual mean leaves, and one for ground water.
 */

/** Correction for the yearly swing of the outdoor temperature, the default of Annex B. */
const YEARLY_SWING = 1.45;

export function groundConductance(
  {
    area,
    equivalentU,
    indoor,
    outdoor,
    annualMean,
    waterTable,
  }: {
    readonly area: Si<'area'>;
    readonly equivalentU: Si<'u-value'>;
    readonly indoor: Si<'temperature'>;
    readonly outdoor: Si<'temperature'>;
    readonly annualMean: Si<'temperature'>;
    /** Ground water within one metre of the floor takes 15 % more. */
    readonly waterTable: 'deep' | 'within-1-m';
  },
  sheet?: Sheet,
): Si<'conductance'> {
  const share = (indoor - annualMean) / (indoor - outdoor);
  const water = waterTable === 'deep' ? 1 : 1.15;
  const conductance = YEARLY_SWING * area * equivalentU * share * water;
  sheet?.(() => ({
    label: 'Ground, as a conductance to the outdoor air',
    formula: 'f_a * A * U * (t_i - t_m) / (t_i - t_o) * f_w',
    inputs: {
      f_a: [YEARLY_SWING, 'number'],
      A: [area, 'area'],
      U: [equivalentU, 'u-value'],
      t_i: [indoor, 'temperature'],
      t_m: [annualMean, 'temperature'],
      t_o: [outdoor, 'temperature'],
      f_w: [water, 'number'],
    },
    value: conductance,
    dimension: 'conductance',
    source: 'EN 12831-1:2017 § 6.3.2.6',
  }));
  return conductance;
}

/**
 * Equivalent U-value of a floor from its own U-value (thermal bridges included), its characteristic dimension B′ in m and
 * its depth in m. EN 12831-1:2017 Annex E Table E.2; coefficients from memory, within about 6 % of ISO 13370.
 */
export function equivalentFloorU(
  u: Si<'u-value'>,
  characteristicDimension: Si<'length'>,
  depth: Si<'length'>,
): Si<'u-value'> {
  const sum =
    -7.455 + (10.76 + characteristicDimension) ** 0.5532 + (9.773 + depth) ** 0.6027 + (0.0265 + u) ** -0.9296;
  return 0.9671 / sum - 0.0203;
}
