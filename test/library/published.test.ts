import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { docComment } from '../../language/grammar/index.js';
import { named, written } from './files.js';

const data = JSON.parse(
  readFileSync(fileURLToPath(new URL('../published/data/building.json', import.meta.url)), 'utf8'),
) as readonly { readonly id: string; readonly expected: Record<string, { readonly value: unknown }> }[];
const published = (id: string, key: string) => data.find(entry => entry.id === id)!.expected[key].value;

type Row = readonly [name: string, k: number, density: number, heat: number, thickness?: number | null];

/** Our names for the rows of the two tables; rows that are not here are not in the library. */
const ASHRAE: readonly (readonly [ours: string, theirs: string])[] = [
  ['wood-boards', '13 mm (12.7) wood'],
  ['gypsum-board', '16 mm gypsum board'],
  ['plywood', '16 mm plywood'],
  ['fibreboard', 'fibreboard sheathing 12.7 mm'],
  ['eps-dense', 'expanded polystyrene board'],
  ['fibreglass-batt', 'glass-fibre batt'],
  ['brick', 'fired clay brick'],
  ['concrete', 'heavyweight concrete'],
  ['lightweight-concrete', 'lightweight concrete'],
  ['wood-siding', 'wood siding'],
  ['asphalt-shingles', 'asphalt shingles'],
  ['stucco', 'stucco 25 mm'],
  ['built-up-roofing', 'built-up roofing'],
];
const ISO: readonly (readonly [ours: string, theirs: string])[] = [
  ['softwood', 'softwood (500)'],
  ['hardwood', 'hardwood (700)'],
  ['osb', 'OSB (650)'],
  ['reinforced-concrete', 'concrete reinforced 1 % steel'],
  ['steel', 'steel'],
  ['aluminium', 'aluminium alloys'],
  ['glass', 'soda-lime glass'],
  ['soil-clay', 'soil clay or silt'],
  ['soil-sand', 'soil sand or gravel'],
];

const properties = (name: string) => ({
  conductivity: written(named('material', name), 'conductivity'),
  density: written(named('material', name), 'density'),
  heat: written(named('material', name), 'specific-heat'),
});
const row = (id: string, name: string) => (published(id, 'materials') as readonly Row[]).find(r => r[0] === name)!;
const asPublished = ([, k, density, heat]: Row) => ({
  conductivity: [k, 'W/mK'],
  density: [density, 'kg/m3'],
  heat: [heat, 'J/kgK'],
});

test.each(ASHRAE)('%s is that of ASHRAE Fundamentals (SI) 2021, ch. 18, Table 18', (ours, theirs) => {
  expect(properties(ours)).toEqual(asPublished(row('mat-ashrae', theirs)));
  expect(docComment(named('material', ours))).toContain('ASHRAE Fundamentals (SI) 2021, ch. 18, Table 18');
});

test('the concrete block of 200 mm has the resistance of ASHRAE Fundamentals (SI) 2021, ch. 18, Table 18', () => {
  const [, k, density, heat, thickness] = row('mat-ashrae', '200 mm normal-weight concrete block');
  const block = named('material', 'concrete-block-200');
  expect(written(block, 'r-value')![0]).toBeCloseTo(thickness! / k, 3);
  expect([written(block, 'density')![0], written(block, 'specific-heat')![0]]).toEqual([density, heat]);
});

test.each(ISO)('%s is that of ISO 10456:2007, Table 3, as remembered', (ours, theirs) => {
  expect(properties(ours)).toEqual(asPublished(row('mat-iso10456', theirs)));
  expect(docComment(named('material', ours))).toMatch(/ISO 10456:2007, Table 3.*from memory/);
});

test.each([
  ['horizontal', 'air-layer-'],
  ['up', 'air-layer-up-'],
  ['down', 'air-layer-down-'],
])('air layers with heat flowing %s are those of ISO 6946:2017, Table 8, as remembered', (direction, prefix) => {
  const column = published('airlayer-iso6946', direction) as readonly number[];
  const thicknesses = data.find(e => e.id === 'airlayer-iso6946') as unknown as {
    readonly inputs: { readonly thickness: { readonly value: readonly number[] } };
  };
  const kept = thicknesses.inputs.thickness.value
    .map((mm, i) => [mm, column[i]] as const)
    .filter(([mm]) => mm > 0 && mm <= 100);
  expect(kept.length).toBe(7);
  for (const [mm, r] of kept) expect(written(named('material', prefix + mm), 'r-value')).toEqual([r, 'RSI']);
});

/** Our name, row, and column of ASHRAE Fundamentals (SI) 2021, ch. 17, Table 2 (names of frame columns from memory). */
const WINDOWS: readonly (readonly [ours: string, glass: string, frame: string])[] = [
  ['single-clear', '1 clear', 'operable: wood/vinyl'],
  ['single-clear-fixed', '1 clear', 'fixed: wood/vinyl'],
  ['single-clear-aluminium', '1 clear', 'operable: aluminium'],
  ['double-clear', '2 clear', 'operable: wood/vinyl'],
  ['double-clear-fixed', '2 clear', 'fixed: wood/vinyl'],
  ['double-clear-aluminium', '2 clear', 'operable: aluminium'],
  ['double-clear-thermal-break', '2 clear', 'operable: al. thermal break'],
  ['double-low-e-high-solar', '2 low-e high-solar', 'operable: wood/vinyl'],
  ['double-low-e-low-solar', '2 low-e low-solar', 'operable: wood/vinyl'],
  ['triple-clear', '3 clear', 'operable: wood/vinyl'],
  ['triple-low-e-high-solar', '3 low-e high-solar', 'operable: wood/vinyl'],
  ['triple-low-e-low-solar', '3 low-e low-solar', 'operable: wood/vinyl'],
  ['triple-low-e-insulated-frame', '3 low-e low-solar', 'operable: insulated fibreglass/vinyl'],
];

test.each(WINDOWS)('%s is that of ASHRAE Fundamentals (SI) 2021, ch. 17, Table 2', (ours, glass, frame) => {
  const table = published('window-typical', 'table') as { readonly columns: readonly string[] } & Readonly<
    Record<string, { readonly U: readonly number[]; readonly SHGC: readonly number[] }>
  >;
  const column = table.columns.indexOf(frame);
  expect(column).toBeGreaterThanOrEqual(0);
  const glazing = named('glazing', ours);
  expect(written(glazing, 'u-value')).toEqual([table[glass].U[column], 'W/m2K']);
  expect(written(glazing, 'shgc')![0] / 100).toBeCloseTo(table[glass].SHGC[column], 9);
  expect(written(glazing, 'panes')![0]).toBe(Number(glass[0]));
});
