import { describe, expect, test } from 'vitest';
import { constructionU, resistanceToSoil } from '../../../language/engine/envelope/construction.js';
import { combinedMethod, parallelPath, isothermalPlanes } from '../../../language/engine/envelope/framed-assembly.js';
import { groundItems } from '../../../language/engine/envelope/ground.js';
import { edgeInsulation } from '../../../language/engine/envelope/iso-13370.js';
import { skin } from '../../../language/engine/envelope/skin.js';
import { airGapCorrection, corrected, fastenerCorrection } from '../../../language/engine/envelope/u-corrections.js';
import { codeLoad } from '../../../language/engine/heating/design-load.js';
import { make, makeHouse } from '../../make-house.js';
import { checkSheet, stepsOf } from '../../worksheets.js';

const softwood = make('material', { conductivity: 0.13 }, 'softwood');
const cellulose = make('material', { conductivity: 0.04 }, 'cellulose');
const gypsum = make('material', { conductivity: 0.16 }, 'gypsum');
const framed = make(
  'assembly',
  {
    framing: make('framing', { material: softwood }),
    layer: [
      make('layer', { rValue: 0.11 }, 'cladding'),
      make('layer', { material: cellulose, thickness: 0.14, framed: true }, 'cavity'),
      make('layer', { material: gypsum, thickness: 0.0128 }, 'board'),
    ],
  },
  'wall-2x6',
);
const code = make('design', { outdoor: -30, indoor: 20 }, 'code');
const storey = make('storey', { area: 80, height: 2.5, level: 'above-grade' }, 'main');

describe('U-values of elements', () => {
  test('a framed wall by parallel path', () => {
    const wall = make('wall', { area: 10, assembly: framed }, 'south');
    // Films 0.12 and 0.03, cladding 0.11, board 0.08: 0.34 m²K/W; cavity 3.5, framing 1.0769.
    const expected = 0.75 / 3.84 + 0.25 / (0.34 + 0.14 / 0.13);
    expect(constructionU(wall, 'horizontal', 'outdoors')).toBeCloseTo(expected, 12);
  });

  test('a wall towards an unheated space has still air on both sides', () => {
    const wall = make('wall', { area: 10, assembly: framed }, 'south');
    const expected = 0.75 / 3.93 + 0.25 / (0.43 + 0.14 / 0.13);
    expect(constructionU(wall, 'horizontal', 'buffer-space')).toBeCloseTo(expected, 12);
  });

  test('the combined method of the framing block lies between the two simple ones', () => {
    const films = { inside: 0.12, outside: 0.03, source: 'test' };
    const layers = [{ label: 'cavity', resistance: 3.5, framing: 1.0769 }];
    const assembly = { films, layers, framingFraction: 0.25 };
    const { u, valid } = combinedMethod(assembly);
    expect(u).toBeGreaterThan(parallelPath(assembly));
    expect(u).toBeLessThan(isothermalPlanes(assembly));
    expect(valid).toBe(true);
    // Steel through the same cavity: far outside the validity of the method.
    const steel = {
      films: { ...films, inside: 0.8 },
      layers: [{ label: 'cavity', resistance: 3.5, framing: 0.003 }],
      framingFraction: 0.02,
    };
    expect(combinedMethod(steel).valid).toBe(false);
  });

  test('stated values go before the assembly', () => {
    const wall = make('wall', { area: 10, assembly: framed, uValue: 0.3 }, 'south');
    expect(constructionU(wall, 'horizontal', 'outdoors')).toBe(0.3);
    const by = make('ceiling', { area: 10, rValue: 8 }, 'attic');
    expect(constructionU(by, 'up', 'outdoors')).toBe(0.125);
    const whole = make('assembly', { rValue: 4 }, 'whole');
    expect(constructionU(make('ceiling', { area: 10, assembly: whole }), 'up', 'outdoors')).toBe(0.25);
    expect(resistanceToSoil(make('ceiling', { area: 10, assembly: whole }), 'down')).toBeCloseTo(3.97, 12);
  });

  test('what is missing is named', () => {
    const reason = (assembly: ReturnType<typeof make<'assembly'>> | undefined) => () =>
      constructionU(make('wall', { area: 1, assembly }, 'north'), 'horizontal', 'outdoors');
    expect(reason(undefined)).toThrow('wall north says neither assembly, nor u-value, nor r-value');
    expect(reason(make('assembly', {}, 'empty'))).toThrow(/neither layers/);
    const bare = make('layer', { material: gypsum }, 'board');
    expect(reason(make('assembly', { layer: [bare] }, 'a'))).toThrow('layer board says no thickness');
    const alone = make('layer', { material: cellulose, thickness: 0.1, framed: true }, 'cavity');
    expect(reason(make('assembly', { layer: [alone] }, 'a'))).toThrow(/no framing block/);
  });

  test('corrections under 3 % are left out, larger ones added (ISO 6946:2017 Annex F, from memory)', () => {
    expect(airGapCorrection('between-insulation', 3, 4)).toBeCloseTo(0.005625, 12);
    const fastener = { alpha: 0.8, conductivity: 50, section: 1.2e-5, perArea: 5, depth: 0.1, layer: 3, total: 4 };
    expect(fastenerCorrection(fastener)).toBeCloseTo(0.0135, 12);
    expect(corrected(0.25, [0.005])).toBe(0.25);
    expect(corrected(0.25, [0.005, 0.0135])).toBeCloseTo(0.2685, 12);
  });

  test('edge insulation always lowers the loss, and upright counts twice its depth (ISO 13370)', () => {
    const floor = { area: 100, perimeter: 40, resistance: 0.37 };
    const ground = { soil: 2, wall: 0.3, outside: 0.04 };
    const edge = { reach: 0.6, resistance: 1.5, thickness: 0.05 } as const;
    const flat = edgeInsulation({ ...edge, laid: 'horizontal' }, floor, ground);
    expect(flat).toBeLessThan(0);
    expect(edgeInsulation({ ...edge, laid: 'vertical' }, floor, ground)).toBe(
      edgeInsulation({ ...edge, reach: 1.2, laid: 'horizontal' }, floor, ground),
    );
  });
});

describe('the load of an envelope', () => {
  const garage = make('buffer-space', { lossOutdoors: 60 }, 'garage');
  const basement = make('basement-wall', { length: 36, height: 2.4, belowGrade: 1.8, rValue: 2.5 }, 'foundation');
  const envelope = make('envelope', {
    unitLeakage: 'average',
    thermalBridges: 0.02,
    ceiling: [make('ceiling', { area: 80, rValue: 7 }, 'attic')],
    wall: [
      make(
        'wall',
        { area: 80, assembly: framed, window: [make('window', { area: 6, uValue: 1.6 }, 'living')] },
        'south',
      ),
      make('wall', { area: 12, assembly: framed, nextTo: garage }, 'inner'),
    ],
    basementWall: [basement],
    basementFloor: [make('basement-floor', { area: 80, uValue: 2.5 }, 'slab')],
    thermalBridge: [make('thermal-bridge', { length: 20, psi: 0.1 }, 'edge')],
  });
  const site = make('site', { meanTemperature: 4, latitude: 0.87 });
  const house = makeHouse({ design: [code], storey: [storey], site, envelope });

  test('takes openings off their wall, and splits the basement wall at the ground', () => {
    const areas = Object.fromEntries(skin(house).map(i => [i.block.name, i.area]));
    expect(areas).toEqual({
      attic: 80,
      south: 74,
      living: 6,
      inner: 12,
      foundation: expect.closeTo(36 * 0.6, 9),
      edge: 0,
    });
    expect(groundItems(house).map(i => i.area)).toEqual([36 * 1.8, 80]);
  });

  test('a garage in balance passes less than the outdoors would', () => {
    const load = codeLoad(house);
    const inner = load.items.find(i => i.block.name === 'inner')!;
    const h = inner.conductance;
    // Temperature of the garage by its own balance: (H·20 + 60·(−30)) / (H + 60).
    const garageTemperature = (h * 20 + 60 * -30) / (h + 60);
    expect(inner.watts).toBeCloseTo(h * (20 - garageTemperature), 9);
  });

  test('the items add up, and the load follows the outdoor air as it says', () => {
    const load = codeLoad(house);
    const sum = load.items.reduce((s, i) => s + i.watts, 0);
    expect(load.total).toBeCloseTo(sum, 9);
    expect(load.perKelvin * 50 + load.steady).toBeCloseTo(load.total, 9);
    // The ground is the only part that does not follow: 4 − 10 = −6 °C at the soil.
    const ground = load.items.filter(i => i.part === 'ground').reduce((s, i) => s + i.conductance, 0);
    expect(load.steady).toBeCloseTo(ground * 26, 6);
    expect(load.items.find(i => i.label.startsWith('Thermal bridges'))!.conductance).toBeCloseTo(
      0.02 * (80 + 74 + 6 + 36 * 0.6),
      9,
    );
  });

  test('insulation half-way down loses more than whole, less than none', () => {
    const to = (insulatedTo: number | undefined) => {
      const wall = make('basement-wall', { ...basement, insulatedTo }, 'foundation');
      const half = makeHouse({ site, envelope: make('envelope', { basementWall: [wall] }) });
      return groundItems(half)[0].conductance;
    };
    expect(to(0)).toBeGreaterThan(to(0.9));
    expect(to(0.9)).toBeGreaterThan(to(undefined));
    expect(to(1.8)).toBeCloseTo(to(undefined), 9);
  });

  test('every line of the worksheet evaluates', () => {
    const combined = make('framing', { material: softwood, method: 'combined' });
    const other = make(
      'wall',
      { area: 20, assembly: make('assembly', { ...framed, framing: combined }, 'c') },
      'north',
    );
    const reduced = make('floor', {
      area: 9,
      rValue: 5,
      nextTo: make('buffer-space', { reductionFactor: 0.6 }, 'porch'),
    });
    const unknown = make('ceiling', { area: 9, rValue: 5, nextTo: make('buffer-space', {}, 'shed') }, 'low');
    const more = make('envelope', {
      ...envelope,
      wall: [...envelope.wall, other],
      floor: [reduced],
      ceiling: [...envelope.ceiling, unknown],
      slabOnGrade: [make('slab-on-grade', { area: 30, perimeter: 15, edgeInsulation: 0.5 }, 'annex')],
    });
    const all = makeHouse({
      design: [code],
      storey: [storey],
      site: make('site', { latitude: 0.87, elevation: 577 }),
      envelope: more,
    });
    const steps = stepsOf(sheet => codeLoad(all, sheet));
    checkSheet(steps);
    expect(steps.map(s => s.label)).toContain('Annual mean temperature, estimated from latitude and elevation');
  });

  test('withholds where a surface cannot be', () => {
    const wall = make('wall', { area: 5, uValue: 0.3, window: [make('window', { area: 6, uValue: 1.6 })] }, 'south');
    expect(() => skin(makeHouse({ envelope: make('envelope', { wall: [wall] }) }))).toThrow(/larger than its area/);
    const deep = make('basement-wall', { length: 5, height: 2, belowGrade: 3, uValue: 0.3 }, 'pit');
    expect(() => skin(makeHouse({ envelope: make('envelope', { basementWall: [deep] }) }))).toThrow(/deeper/);
    const nowhere = makeHouse({ ...house, site: make('site') });
    expect(() => codeLoad(nowhere)).toThrow(/neither mean-temperature nor latitude/);
  });
});
