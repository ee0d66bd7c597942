import type { RatedTemperature } from './conductor-sizes.js';

/** Air around the conductor up to `upTo` °C, and the factor for insulation of 60, 75 and 90 °C (0: not permitted). */
export interface AmbientBand {
  readonly upTo: number;
  readonly factors: Readonly<Record<RatedTemperature, number>>;
}

/** Up to this many conductors that carry current together, and the factor. */
export interface CountBand {
  readonly upTo: number;
  readonly factor: number;
}

const band = (upTo: number, at60: number, at75: number, at90: number): AmbientBand => ({
  upTo,
  factors: { 60: at60, 75: at75, 90: at90 },
});

/**
 * Correction for the air around the conductor, from memory; each factor is the square root of
 * (insulation − air) / (insulation − 30 °C), which a test computes.
 */
const WARM: readonly AmbientBand[] = [
  band(30, 1, 1, 1),
  band(35, 0.91, 0.94, 0.96),
  band(40, 0.82, 0.88, 0.91),
  band(45, 0.71, 0.82, 0.87),
  band(50, 0.58, 0.75, 0.82),
  band(55, 0.41, 0.67, 0.76),
  band(60, 0, 0.58, 0.71),
  band(65, 0, 0.47, 0.65),
  band(70, 0, 0.33, 0.58),
  band(75, 0, 0, 0.5),
  band(80, 0, 0, 0.41),
  band(85, 0, 0, 0.29),
];

/** NEC Table 310.15(B)(1), from memory: air below 30 °C gives more. */
export const necAmbient: readonly AmbientBand[] = [
  band(10, 1.29, 1.2, 1.15),
  band(15, 1.22, 1.15, 1.12),
  band(20, 1.15, 1.11, 1.08),
  band(25, 1.08, 1.05, 1.04),
  ...WARM,
];

/** CEC Table 5A, from memory: nothing is gained below 30 °C. */
export const cecAmbient: readonly AmbientBand[] = WARM;

/** NEC Table 310.15(C)(1), from memory. */
export const necCount: readonly CountBand[] = [
  { upTo: 3, factor: 1 },
  { upTo: 6, factor: 0.8 },
  { upTo: 9, factor: 0.7 },
  { upTo: 20, factor: 0.5 },
  { upTo: 30, factor: 0.45 },
  { upTo: 40, factor: 0.4 },
  { upTo: Infinity, factor: 0.35 },
];

/** CEC Table 5C, from memory. */
export const cecCount: readonly CountBand[] = [
  { upTo: 3, factor: 1 },
  { upTo: 6, factor: 0.8 },
  { upTo: 24, factor: 0.7 },
  { upTo: 42, factor: 0.6 },
  { upTo: Infinity, factor: 0.5 },
];
