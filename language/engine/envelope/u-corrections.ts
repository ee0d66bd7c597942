import type { Si } from '../../units/index.js';

/**
 * Additions to the U-value of a component, ISO 6946:2017 Annex F (from memory). Together they may be left out when they
 * are below 3 % of the U-value.
 */

/** Extra transmittance of gaps in the insulation, before the share of the layer, in W/m²K. */
export const AIR_GAPS = { none: 0, 'between-insulation': 0.01, 'with-circulation': 0.04 } as const;

/** Air gaps: ΔU″ times the square of the insulating layer's share of the total resistance. */
export function airGapCorrection(
  gaps: keyof typeof AIR_GAPS,
  layer: Si<'r-value'>,
  total: Si<'r-value'>,
): Si<'u-value'> {
  return AIR_GAPS[gaps] * (layer / total) ** 2;
}

/**
 * Metal fasteners through an insulating layer: α·λ·A·n/d times the square of the layer's share. `alpha` is 0.8 when the
 * fastener crosses the whole layer and 0.8 times the crossed part of the depth otherwise.
 */
export function fastenerCorrection(fastener: {
  readonly alpha: number;
  readonly conductivity: Si<'conductivity'>;
  readonly section: Si<'area'>;
  readonly perArea: number;
  readonly depth: Si<'length'>;
  readonly layer: Si<'r-value'>;
  readonly total: Si<'r-value'>;
}): Si<'u-value'> {
  const { alpha, conductivity, section, perArea, depth, layer, total } = fastener;
  return ((alpha * conductivity * section * perArea) / depth) * (layer / total) ** 2;
}

/** The U-value with its corrections, or as it was when they do not reach 3 % of it. */
export function corrected(u: Si<'u-value'>, corrections: readonly Si<'u-value'>[]): Si<'u-value'> {
  const sum = corrections.reduce((a, b) => a + b, 0);
  return sum < 0.03 * u ? u : u + sum;
}
