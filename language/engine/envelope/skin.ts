import { Withheld, type Block, type House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import { constructionU, type Construction } from './construction.js';
import { named } from './named.js';
import { notNegative, positive } from './positive.js';
import type { HeatFlow } from './surface-films.js';

export type SkinBlock = Block<
  'ceiling' | 'wall' | 'rim-joist' | 'floor' | 'window' | 'skylight' | 'door' | 'basement-wall' | 'thermal-bridge'
>;

/** A surface above ground: what it conducts per kelvin, and to where. */
export interface SkinItem {
  readonly block: SkinBlock;
  readonly label: string;
  readonly area: Si<'area'>;
  readonly u: Si<'u-value'>;
  readonly conductance: Si<'conductance'>;
  readonly toward: 'outdoors' | Block<'buffer-space'>;
}

/** Everything above ground that conducts heat out of the house, opening by opening. */
export function skin(house: House, whole?: Sheet): readonly SkinItem[] {
  const { envelope } = house;
  const sheet = whole && eachOnce(whole);
  return [
    ...envelope.ceiling.flatMap(c => [
      opaque(c, c.area, c.skylight, 'up', c.nextTo, sheet),
      ...c.skylight.map(s => glazed(s, c.nextTo, sheet)),
    ]),
    ...envelope.wall.flatMap(w => [
      opaque(w, w.area, [...w.window, ...w.door], 'horizontal', w.nextTo, sheet),
      ...w.window.map(x => glazed(x, w.nextTo, sheet)),
      ...w.door.map(x => door(x, w.nextTo, sheet)),
    ]),
    ...envelope.rimJoist.map(r => opaque(r, r.area, [], 'horizontal', 'outdoors', sheet)),
    ...envelope.floor.map(f => opaque(f, f.area, [], 'down', f.nextTo, sheet)),
    ...envelope.basementWall.flatMap(w => aboveGrade(w, sheet)),
    ...envelope.thermalBridge.map(b => bridge(b, sheet)),
  ];
}

/** A sheet that shows a line only once: walls of the same assembly share the lines of its U-value. */
function eachOnce(sheet: Sheet): Sheet {
  const seen = new Set<string>();
  return make => {
    const step = make();
    const key = JSON.stringify([step.label, step.inputs, step.value]);
    if (seen.has(key)) return;
    seen.add(key);
    sheet(() => step);
  };
}

/** The opaque part of an element: its area less its openings. */
function opaque(
  block: SkinBlock & Construction,
  gross: Si<'area'>,
  openings: readonly { readonly area: Si<'area'> }[],
  flow: HeatFlow,
  toward: SkinItem['toward'],
  sheet?: Sheet,
): SkinItem {
  const cut = openings.reduce((sum, o) => sum + o.area, 0);
  const area = gross - cut;
  if (area < 0) throw new Withheld(`the openings of ${named(block)} are larger than its area`);
  if (cut > 0)
    sheet?.(() => ({
      label: `Area of ${named(block)} without its openings`,
      formula: 'A - A_o',
      inputs: { A: [gross, 'area'], A_o: [cut, 'area'] },
      value: area,
      dimension: 'area',
    }));
  const u = constructionU(block, flow, toward === 'outdoors' ? 'outdoors' : 'buffer-space', sheet);
  return item(block, area, u, toward, sheet);
}

/** The U-value of a window or skylight as a whole product. */
export function glazingU(block: Block<'window' | 'skylight'>): Si<'u-value'> {
  const u = block.uValue ?? block.glazing?.uValue;
  if (u === undefined) throw new Withheld(`${named(block)} says neither glazing nor u-value`);
  return positive(u, `the u-value of ${named(block)}`);
}

function glazed(block: Block<'window' | 'skylight'>, toward: SkinItem['toward'], sheet?: Sheet): SkinItem {
  return item(block, block.area, glazingU(block), toward, sheet);
}

function door(block: Block<'door'>, toward: SkinItem['toward'], sheet?: Sheet): SkinItem {
  return item(block, block.area, block.uValue, toward, sheet);
}

/** The part of a basement wall that stands above the ground, with its windows and doors. */
function aboveGrade(wall: Block<'basement-wall'>, sheet?: Sheet): readonly SkinItem[] {
  const { length, height, belowGrade } = wall;
  if (belowGrade > height) throw new Withheld(`${named(wall)} reaches deeper below the ground than it is high`);
  const openings = [...wall.window, ...wall.door];
  const gross = length * (height - belowGrade);
  const cut = openings.reduce((sum, o) => sum + o.area, 0);
  // Openings may reach into wells below the ground line: what the strip above cannot hold is not taken off twice.
  const area = Math.max(0, gross - cut);
  const opening = [
    ...wall.window.map(w => glazed(w, 'outdoors', sheet)),
    ...wall.door.map(d => door(d, 'outdoors', sheet)),
  ];
  if (area === 0) return opening;
  sheet?.(() => ({
    label: `Part of ${named(wall)} above the ground`,
    formula: 'L * (h - z) - A_o',
    inputs: { L: [length, 'length'], h: [height, 'length'], z: [belowGrade, 'length'], A_o: [cut, 'area'] },
    value: area,
    dimension: 'area',
  }));
  return [item(wall, area, constructionU(wall, 'horizontal', 'outdoors', sheet), 'outdoors', sheet), ...opening];
}

function item(
  block: SkinBlock,
  area: Si<'area'>,
  u: Si<'u-value'>,
  toward: SkinItem['toward'],
  sheet?: Sheet,
): SkinItem {
  const label = named(block);
  notNegative(area, `the area of ${label}`);
  sheet?.(() => ({
    label,
    formula: 'U * A',
    inputs: { U: [u, 'u-value'], A: [area, 'area'] },
    value: u * area,
    dimension: 'conductance',
    role: 'item',
    ...(toward === 'outdoors' ? {} : { note: `Towards ${named(toward)}.` }),
  }));
  return { block, label, area, u, conductance: u * area, toward };
}

function bridge(block: Block<'thermal-bridge'>, sheet?: Sheet): SkinItem {
  const { psi, length } = block;
  sheet?.(() => ({
    label: named(block),
    formula: 'psi * L',
    inputs: { psi: [psi, 'linear-transmittance'], L: [length, 'length'] },
    value: psi * length,
    dimension: 'conductance',
    source: 'ISO 14683:2017',
    role: 'item',
  }));
  return { block, label: named(block), area: 0, u: 0, conductance: psi * length, toward: 'outdoors' };
}
