import { describe, expect, test } from 'vitest';
import { airLayerResistance } from '../../../language/engine/envelope/air-layers.js';
import { typicalWindow, FRAMES, glazings, centreOfGlass } from '../../../language/engine/envelope/fenestration.js';
import { combinedMethod, isothermalPlanes, parallelPath } from '../../../language/engine/envelope/framed-assembly.js';
import { ASHRAE_SUMMER_OUTSIDE, ashraeFilms, isoFilms } from '../../../language/engine/envelope/surface-films.js';
import { check, off } from './checks.js';

describe('assemblies against published values', () => {
  const frame = check('uval-frame-parallel');
  const wall = (c: typeof frame) => {
    const [outside, siding, foam, board, inside] = c.inputs.R_common.value;
    const insulation = (c.inputs.R_cavity_insul ?? c.inputs.R_insul).value;
    return {
      films: { inside, outside, source: c.source },
      layers: [
        { label: 'siding', resistance: siding },
        { label: 'sheathing', resistance: foam },
        { label: 'cavity', resistance: insulation, framing: c.inputs.R_stud.value },
        { label: 'board', resistance: board },
      ],
      framingFraction: c.inputs.f_framing,
    };
  };

  test(frame.title, () => {
    const u = parallelPath(wall(frame));
    expect(Math.abs(u - frame.expected.U_assembly.value)).toBeLessThan(0.005);
    expect(Math.abs(1 / u - frame.expected.R_assembly.value)).toBeLessThan(0.04);
    const cavity = parallelPath({ ...wall(frame), framingFraction: 0 });
    expect(Math.abs(1 / cavity - frame.expected.R1.value)).toBeLessThan(0.04);
    const stud = parallelPath({ ...wall(frame), framingFraction: 1 });
    expect(Math.abs(1 / stud - frame.expected.R2.value)).toBeLessThan(0.04);
  });

  const planes = check('uval-frame-isothermal');
  test(planes.title, () => {
    const u = isothermalPlanes(wall(planes));
    expect(off(u, planes.expected.U_assembly.value)).toBeLessThan(0.005);
    expect(off(1 / u, planes.expected.R_assembly.value)).toBeLessThan(0.005);
  });

  const timber = check('uval-iso6946-timber');
  test(timber.title, () => {
    const layers = timber.inputs.layers.value as [string, number | [number, number]][];
    const assembly = {
      films: { outside: layers[0][1] as number, inside: layers[layers.length - 1][1] as number, source: timber.source },
      layers: layers.slice(1, -1).map(([label, r]) => {
        if (typeof r === 'number') return { label, resistance: r };
        return { label, resistance: r[0], framing: r[1] };
      }),
      framingFraction: 0.095,
    };
    const result = combinedMethod(assembly);
    expect(off(result.upper, timber.expected.R_upper.value)).toBeLessThan(0.001);
    expect(off(result.lower, timber.expected.R_lower.value)).toBeLessThan(0.001);
    expect(off(result.u, timber.expected.U.value)).toBeLessThan(0.001);
    expect(result.valid).toBe(true);
    const insulated = 1 / parallelPath({ ...assembly, framingFraction: 0 });
    const stud = 1 / parallelPath({ ...assembly, framingFraction: 1 });
    expect(off(insulated, timber.expected.R_section_insul.value)).toBeLessThan(0.001);
    expect(off(stud, timber.expected.R_section_stud.value)).toBeLessThan(0.001);
  });

  const surfaces = check('surf-res-iso6946');
  test(surfaces.title, () => {
    expect(isoFilms('up').inside).toBe(surfaces.expected.Rsi_up.value);
    expect(isoFilms('horizontal').inside).toBe(surfaces.expected.Rsi_horizontal.value);
    expect(isoFilms('down').inside).toBe(surfaces.expected.Rsi_down.value);
    expect(isoFilms('up').outside).toBe(surfaces.expected.Rse.value);
  });

  const films = check('film-ashrae');
  test(films.title, () => {
    expect(ashraeFilms('horizontal').inside).toBe(films.expected.indoor_vertical.value);
    expect(ashraeFilms('down').inside).toBe(films.expected.indoor_horizontal_down.value);
    expect(ashraeFilms('down').outside).toBe(films.expected.outdoor_winter_6_7ms.value);
    expect(ASHRAE_SUMMER_OUTSIDE).toBe(films.expected.outdoor_3_4ms.value);
  });

  const air = check('airlayer-iso6946');
  test(air.title, () => {
    air.inputs.thickness.value.forEach((mm: number, i: number) => {
      for (const flow of ['up', 'horizontal', 'down'] as const)
        expect(airLayerResistance(mm / 1000, flow)).toBe(air.expected[flow].value[i]);
    });
  });

  const windows = check('window-typical');
  test(windows.title, () => {
    const names: Record<string, (typeof glazings)[number]> = {
      '1 clear': 'single-clear',
      '2 clear': 'double-clear',
      '3 clear': 'triple-clear',
      '2 low-e low-solar': 'double-low-e-low-solar',
      '3 low-e low-solar': 'triple-low-e-low-solar',
      '2 low-e high-solar': 'double-low-e-high-solar',
      '3 low-e high-solar': 'triple-low-e-high-solar',
    };
    expect(Object.values(names).sort()).toEqual([...glazings].sort());
    for (const [printed, glazing] of Object.entries(names)) {
      const { U, SHGC } = windows.expected.table.value[printed];
      expect(centreOfGlass(glazing)).toEqual({ u: U[0], shgc: SHGC[0] });
      FRAMES.forEach((f, i) => {
        expect(typicalWindow(glazing, f, 'operable')).toEqual({ u: U[1 + i], shgc: SHGC[1 + i] });
        expect(typicalWindow(glazing, f, 'fixed')).toEqual({ u: U[6 + i], shgc: SHGC[6 + i] });
      });
    }
  });
});
