import type { Si } from '../../units/index.js';

/**
 * Output kept while frost is melted off the coil, where a maker's table leaves defrost out: none is lost below −7 °C,
 * where the air is too dry, nor above 5 °C, and a tenth is lost at 1.7 °C, straight lines between. Common practice: the
 * nine tenths at 1.7 °C are those of the rating procedure for units without a test at that point (AHRI 210/240, from
 * memory); the ends are from memory too.
 */
export const DEFROST = {
  source: 'common practice: nine tenths at 1.7 °C, after AHRI 210/240',
  points: [
    [-7, 1],
    [1.7, 0.9],
    [5, 1],
  ],
} as const;

export function keptInDefrost(outdoor: Si<'temperature'>): Si<'ratio'> {
  const [[cold, whole], [worst, least], [warm]] = DEFROST.points;
  if (outdoor <= cold || outdoor >= warm) return whole;
  const [from, to] = outdoor <= worst ? [cold, worst] : [warm, worst];
  return whole + ((least - whole) * (outdoor - from)) / (to - from);
}
