import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Conductivity of ordinary soil, in W/mK, ASHRAE Fundamentals 2021 ch. 18. */
const TYPICAL_SOIL: Si<'conductivity'> = 1.4;

/** A logarithm has no unit to itself: lengths printed in mm go into it in m. */
const IN_METRES = 'All lengths go into the logarithms in metres';

/** A bare concrete wall or floor with its inside film, in m²K/W: the handbook's own tables rest on it. */
export const BARE_CONCRETE: Si<'r-value'> = 0.259;

/**
 * Average U-value of a basement wall between two depths below grade, heat flowing along circular arcs to the surface.
 * `resistance` is wall, insulation and inside film. ASHRAE Fundamentals 2021 ch. 18 eq. (38); uniform soil, no ground
 * water, steady state.
 */
export function belowGradeWallU(
  {
    top,
    bottom,
    resistance,
    soil = TYPICAL_SOIL,
  }: {
    readonly top: Si<'length'>;
    readonly bottom: Si<'length'>;
    readonly resistance: Si<'r-value'>;
    readonly soil?: Si<'conductivity'>;
  },
  sheet?: Sheet,
): Si<'u-value'> {
  const shift = (2 * soil * resistance) / Math.PI;
  const u = ((2 * soil) / (Math.PI * (bottom - top))) * (Math.log(bottom + shift) - Math.log(top + shift));
  sheet?.(() => ({
    label: 'Average U-value of the wall below grade',
    formula:
      top === 0
        ? '2*k / (pi*z_2) * (ln(z_2 + 2*k*R/pi) - ln(2*k*R/pi))'
        : '2*k / (pi*(z_2 - z_1)) * (ln(z_2 + 2*k*R/pi) - ln(z_1 + 2*k*R/pi))',
    inputs: {
      k: [soil, 'conductivity'],
      R: [resistance, 'r-value'],
      ...(top === 0 ? {} : { z_1: [top, 'length'] as const }),
      z_2: [bottom, 'length'],
    },
    note: IN_METRES,
    value: u,
    dimension: 'u-value',
    source: 'ASHRAE Fundamentals 2021 ch. 18 eq. (38)',
  }));
  return u;
}

/** A band of wall between two depths; insulation that stops part of the way down makes two of them. */
export interface Band {
  readonly top: Si<'length'>;
  readonly bottom: Si<'length'>;
  readonly resistance: Si<'r-value'>;
}

/** Bands of a wall whose insulation ends at a depth (at or below the bottom: one band, insulated). */
export function bandsOf(wall: {
  readonly depth: Si<'length'>;
  readonly bare: Si<'r-value'>;
  readonly insulation: Si<'r-value'>;
  readonly insulatedTo: Si<'length'>;
}): readonly Band[] {
  const end = Math.min(Math.max(wall.insulatedTo, 0), wall.depth);
  const bands = [
    { top: 0, bottom: end, resistance: wall.bare + wall.insulation },
    { top: end, bottom: wall.depth, resistance: wall.bare },
  ];
  return bands.filter(b => b.bottom > b.top);
}

/** Conductance per metre of wall length, in W/mK: each band by its own average U-value. */
export function bandedWallConductance(
  bands: readonly Band[],
  soil: Si<'conductivity'> = TYPICAL_SOIL,
  sheet?: Sheet,
): Si<'linear-transmittance'> {
  return bands.reduce((sum, b) => sum + (b.bottom - b.top) * belowGradeWallU({ ...b, soil }, sheet), 0);
}

/**
 * Average U-value of a basement floor by the shorter side of the plan and the depth of the floor below grade.
 * ASHRAE Fundamentals 2021 ch. 18 eq. (39). The printed table was made with a soil of 1.385 W/mK.
 */
export function belowGradeFloorU(
  {
    width,
    depth,
    resistance,
    soil = TYPICAL_SOIL,
  }: {
    readonly width: Si<'length'>;
    readonly depth: Si<'length'>;
    readonly resistance: Si<'r-value'>;
    readonly soil?: Si<'conductivity'>;
  },
  sheet?: Sheet,
): Si<'u-value'> {
  const shift = (soil * resistance) / Math.PI;
  const u = ((2 * soil) / (Math.PI * width)) * (Math.log(width / 2 + depth / 2 + shift) - Math.log(depth / 2 + shift));
  sheet?.(() => ({
    label: 'Average U-value of the floor below grade',
    formula: '2*k / (pi*w) * (ln(w/2 + z/2 + k*R/pi) - ln(z/2 + k*R/pi))',
    inputs: {
      k: [soil, 'conductivity'],
      R: [resistance, 'r-value'],
      w: [width, 'length'],
      z: [depth, 'length'],
    },
    note: IN_METRES,
    value: u,
    dimension: 'u-value',
    source: 'ASHRAE Fundamentals 2021 ch. 18 eq. (39)',
  }));
  return u;
}

/**
 * Ground surface temperature at the winter design: the annual mean less the amplitude of the year.
 * ASHRAE Fundamentals 2021 ch. 18 eq. (37); the amplitude is 5 to 13 K in North America (range from memory).
 */
export function designGroundTemperature(
  annualMean: Si<'temperature'>,
  amplitude: Si<'temperature-difference'>,
  sheet?: Sheet,
): Si<'temperature'> {
  const ground = annualMean - amplitude;
  sheet?.(() => ({
    label: 'Ground surface at the winter design',
    formula: 't_m - A',
    inputs: { t_m: [annualMean, 'temperature'], A: [amplitude, 'temperature-difference'] },
    value: ground,
    dimension: 'temperature',
    source: 'ASHRAE Fundamentals 2021 ch. 18 eq. (37)',
    note: 'The amplitude is assumed to be 10 K where the site says none; it is 5 to 13 K in North America (range from memory)',
  }));
  return ground;
}
