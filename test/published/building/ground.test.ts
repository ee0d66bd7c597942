import { describe, expect, test } from 'vitest';
import {
  BARE_CONCRETE,
  belowGradeFloorU,
  belowGradeWallU,
  designGroundTemperature,
} from '../../../language/engine/envelope/below-grade.js';
import { equivalentFloorU } from '../../../language/engine/envelope/ground-equivalent.js';
import {
  characteristicDimension,
  equivalentThickness,
  groundFloorU,
  groundWallU,
} from '../../../language/engine/envelope/iso-13370.js';
import { SLAB_EDGE, slabEdgeConductance, type SlabEdge } from '../../../language/engine/envelope/slab-on-grade.js';
import { check, off } from './checks.js';

describe('ground against published values', () => {
  const walls = check('below-wall');
  test(walls.title, () => {
    expect(walls.inputs.R_other_uninsulated.value).toBe(BARE_CONCRETE);
    for (const [insulation, row] of Object.entries<number[]>(walls.expected.U_by_Rinsul.value))
      row.forEach((printed, i) => {
        const u = belowGradeWallU({
          top: 0,
          bottom: walls.inputs.z2.value[i],
          resistance: BARE_CONCRETE + Number(insulation),
          soil: walls.inputs.k_soil.value,
        });
        expect(off(u, printed)).toBeLessThan(0.005);
      });
  });

  const floors = check('below-floor');
  test.each([
    [1.4, 0.013],
    [1.385, 0.005],
  ])(`${floors.title}, soil %d W/mK`, (soil, tolerance) => {
    for (const [width, row] of Object.entries<number[]>(floors.expected.U_by_width.value))
      row.forEach((printed, i) => {
        const u = belowGradeFloorU({
          width: Number(width),
          depth: floors.inputs.z_f.value[i],
          resistance: BARE_CONCRETE,
          soil,
        });
        expect(off(u, printed)).toBeLessThan(tolerance);
      });
  });

  const ground = check('below-tgr');
  test(ground.title, () => {
    // The equation alone is published: annual mean less amplitude.
    expect(designGroundTemperature(5.5, 10)).toBe(-4.5);
  });

  const slab = check('slab-Fp');
  test(slab.title, () => {
    const printed = slab.expected.F_p.value as [string, number, number][];
    const keys = Object.keys(SLAB_EDGE) as SlabEdge[];
    expect(keys.length).toBe(printed.length);
    printed.forEach(([of, bare, insulated], i) => {
      expect(SLAB_EDGE[keys[i]].of.replace('the ', '')).toBe(of.replace('the ', ''));
      expect(slabEdgeConductance({ wall: keys[i], insulation: 0, perimeter: 1 })).toBeCloseTo(bare, 12);
      expect(slabEdgeConductance({ wall: keys[i], insulation: 0.95, perimeter: 1 })).toBeCloseTo(insulated, 12);
    });
  });

  const iso = check('iso13370-slab');
  test(iso.title, () => {
    const at = { soil: iso.inputs.lambda_soil.value, wall: iso.inputs.w.value, outside: iso.inputs.Rse };
    for (const [area, perimeter, rf, b, d, u] of iso.expected.rows.value) {
      const floor = { area, perimeter, resistance: iso.inputs.Rsi + rf };
      expect(characteristicDimension(floor)).toBeCloseTo(b, 10);
      expect(off(equivalentThickness(floor, at), d)).toBeLessThan(0.002);
      expect(off(groundFloorU(floor, at), u)).toBeLessThan(0.002);
    }
  });

  const basement = check('iso13370-basement');
  test(basement.title, () => {
    const { A, P, z, lambda_soil, w, Rsi_floor, Rsi_wall, Rse } = basement.inputs;
    const at = { soil: lambda_soil.value, wall: w.value, outside: Rse };
    for (const [rf, rw, , , , ubf, ubw, h] of basement.expected.rows.value) {
      const floor = { area: A.value, perimeter: P.value, resistance: Rsi_floor + rf };
      const floorU = groundFloorU(floor, at, z.value);
      const wallU = groundWallU({ depth: z.value, resistance: Rsi_wall + rw }, floor, at);
      expect(off(floorU, ubf)).toBeLessThan(0.002);
      expect(off(wallU, ubw)).toBeLessThan(0.002);
      expect(off(A.value * floorU + z.value * P.value * wallU, h)).toBeLessThan(0.002);
    }
  });

  const halfSpace = check('gc-slab-GC10a');
  test(halfSpace.title, () => {
    const [a, b] = halfSpace.inputs.slab.value;
    const u = groundFloorU(
      { area: a * b, perimeter: 2 * (a + b), resistance: 0 },
      { soil: halfSpace.inputs.k.value, wall: halfSpace.inputs.w.value, outside: 0 },
    );
    const flow = u * a * b * halfSpace.inputs.dT.value;
    expect(off(flow, halfSpace.expected.q_floor.value)).toBeLessThan(0.05);
    expect(flow).toBeCloseTo(2509, -1);
  });

  const equivalent = check('ueq-en12831');
  test(equivalent.title, () => {
    for (const [b, u, printed] of equivalent.expected.rows.value)
      expect(off(equivalentFloorU(u, b, equivalent.inputs.z.value), printed)).toBeLessThan(0.005);
  });
});
