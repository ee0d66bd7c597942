import { Withheld, type Block, type House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import { airLoad } from '../air/house-air.js';
import { annualMeanTemperature } from '../climate/site.js';
import { designGroundTemperature } from '../envelope/below-grade.js';
import { groundItems } from '../envelope/ground.js';
import { skin, type SkinItem } from '../envelope/skin.js';
import { terms } from '../envelope/terms.js';
import { spaceTemperature } from '../envelope/unheated-space.js';
import { once } from '../once.js';
import type { Sheet } from '../worksheet.js';
import { condition } from './condition.js';
import { houseDuctLoss } from './house-ducts.js';
import { FOR_A_PERMIT, totalLoad } from './load-sum.js';

/** One line of the load: what a block loses at the design condition, ducts not counted. */
export interface LoadItem {
  readonly block: Block;
  readonly label: string;
  readonly part: 'transmission' | 'ground' | 'infiltration' | 'ventilation' | 'stated';
  readonly area?: Si<'area'>;
  readonly u?: Si<'u-value'>;
  readonly conductance: Si<'conductance'>;
  readonly watts: Si<'heat-flow'>;
}

export interface DesignLoad {
  readonly indoor: Si<'temperature'>;
  readonly outdoor: Si<'temperature'>;
  readonly total: Si<'heat-flow'>;
  readonly transmission: Si<'heat-flow'>;
  readonly ground: Si<'heat-flow'>;
  readonly infiltration: Si<'heat-flow'>;
  readonly ventilation: Si<'heat-flow'>;
  readonly ductLoss: Si<'ratio'>;
  readonly items: readonly LoadItem[];
  /**
   * The load at another outdoor temperature, with the air flow of the design hour: W/K towards the outdoors, and what does
   * not follow the outdoor air (the ground, an unheated space of known temperature). Both with duct losses.
   */
  readonly perKelvin: Si<'conductance'>;
  readonly steady: Si<'heat-flow'>;
}

/** The design heating load by the pair of the permit, and by the owner's. */
export const codeLoad = once((house: House, sheet?: Sheet) => designLoad(house, condition(house, 'code'), sheet));
export const comfortLoad = once((house: House, sheet?: Sheet) => designLoad(house, condition(house, 'comfort'), sheet));

/**
 * Whole-house design heating load, itemized: no gains and no storage. ASHRAE Fundamentals 2021 ch. 17. Without an envelope it
 * is the stated load, carried to the design difference by its W/K.
 */
function designLoad(house: House, design: Block<'design'>, sheet?: Sheet): DesignLoad {
  if (!hasEnvelope(house)) return fromStatedLoad(house, design, sheet);
  const { indoor, outdoor } = design;
  const aboveGround = skinLoad(house, design, sheet);
  const transmission = subtotal('Transmission above ground', aboveGround, sheet);
  const below = groundLoad(house, design, sheet);
  const ground = subtotal('Ground', below, sheet);
  const air = airItems(house, design, sheet);
  const infiltration = subtotal('Infiltration', air.infiltration, sheet);
  const ventilation = subtotal('Ventilation', air.ventilation, sheet);
  const items = [...aboveGround, ...below, ...air.infiltration, ...air.ventilation];
  const parts = { transmission, ground, infiltration, ventilation };
  const ductLoss = houseDuctLoss(house, sheet);
  const total = totalLoad({ ...parts, ductLoss }, sheet);
  const perKelvin = items.reduce((s, i) => s + i.followsOutdoors, 0) * (1 + ductLoss);
  return {
    indoor,
    outdoor,
    total,
    ...parts,
    ductLoss,
    items: items.map(({ followsOutdoors: _, ...i }) => i),
    perKelvin,
    steady: total - perKelvin * (indoor - outdoor),
  };
}

/** Whether the house says what it is made of; tests, openings and fans alone do not. */
export function hasEnvelope({ envelope: e }: House): boolean {
  return (
    e.ceiling.length + e.wall.length + e.rimJoist.length + e.floor.length > 0 ||
    e.basementWall.length + e.basementFloor.length + e.slabOnGrade.length > 0
  );
}

/** The stated load per kelvin of its own difference. */
export function statedPerKelvin(house: House, sheet?: Sheet): Si<'conductance'> {
  const stated = house.statedLoad;
  if (!stated) throw new Withheld('there is no stated-load');
  const difference = stated.indoor - stated.outdoor;
  if (!(difference > 0)) throw new Withheld('stated-load is not colder outdoors than indoors');
  const perKelvin = stated.heating / difference;
  sheet?.(() => ({
    label: 'Stated load per kelvin',
    formula: 'q_s / (t_is - t_os)',
    inputs: {
      q_s: [stated.heating, 'heat-flow'],
      t_is: [stated.indoor, 'temperature'],
      t_os: [stated.outdoor, 'temperature'],
    },
    value: perKelvin,
    dimension: 'conductance',
    source: 'stated load of the house file',
  }));
  return perKelvin;
}

function fromStatedLoad(house: House, { indoor, outdoor }: Block<'design'>, sheet?: Sheet): DesignLoad {
  const stated = house.statedLoad;
  if (!stated) throw new Withheld('neither the envelope nor a stated-load says what the house loses');
  const perKelvin = statedPerKelvin(house, sheet);
  const total = perKelvin * (indoor - outdoor);
  sheet?.(() => ({
    label: 'Design heating load, from the stated load',
    formula: 'H * (t_i - t_o)',
    inputs: { H: [perKelvin, 'conductance'], t_i: [indoor, 'temperature'], t_o: [outdoor, 'temperature'] },
    value: total,
    dimension: 'heat-flow',
    role: 'total',
    note: FOR_A_PERMIT,
  }));
  const item = { block: stated, label: 'Stated load', part: 'stated' as const, conductance: perKelvin, watts: total };
  return {
    indoor,
    outdoor,
    total,
    transmission: 0,
    ground: 0,
    infiltration: 0,
    ventilation: 0,
    ductLoss: 0,
    items: [item],
    perKelvin,
    steady: 0,
  };
}

/** A line together with the W/K by which it follows the outdoor air. */
type Line = LoadItem & { readonly followsOutdoors: Si<'conductance'> };

function skinLoad(house: House, design: Block<'design'>, sheet?: Sheet): readonly Line[] {
  const surfaces = skin(house, sheet);
  const beyond = new Map<SkinItem['toward'], number>([['outdoors', design.outdoor]]);
  for (const { toward } of surfaces) {
    if (toward === 'outdoors' || beyond.has(toward)) continue;
    const shared = surfaces.reduce((s, i) => (i.toward === toward ? s + i.conductance : s), 0);
    beyond.set(toward, spaceTemperature(toward, shared, design, sheet));
  }
  const allowance = house.envelope.thermalBridges;
  const lines = surfaces.map(s => {
    const temperature = beyond.get(s.toward)!;
    return line(s, 'transmission', temperature, design, follows(s.toward), sheet);
  });
  const area = surfaces.reduce((s, i) => (i.toward === 'outdoors' ? s + i.area : s), 0);
  if (allowance === 0 || area === 0) return lines;
  const bridges = { block: house.envelope, label: 'Thermal bridges, as an allowance', area, u: allowance };
  return [
    ...lines,
    line({ ...bridges, conductance: allowance * area }, 'transmission', design.outdoor, design, 'outdoors', sheet),
  ];
}

/** A space of stated temperature stays at it; any other follows the outdoors in proportion. */
function follows(toward: SkinItem['toward']): 'outdoors' | 'nothing' {
  return toward !== 'outdoors' && toward.temperature !== undefined ? 'nothing' : 'outdoors';
}

function groundLoad(house: House, design: Block<'design'>, sheet?: Sheet): readonly Line[] {
  const items = groundItems(house, sheet);
  if (items.length === 0) return [];
  const needsGround = items.some(i => i.toward === 'ground');
  const ground = needsGround
    ? designGroundTemperature(annualMeanTemperature(house, sheet), house.site.surfaceAmplitude, sheet)
    : design.outdoor;
  return items.map(i =>
    i.toward === 'ground'
      ? line(i, 'ground', ground, design, 'nothing', sheet)
      : line(i, 'ground', design.outdoor, design, 'outdoors', sheet),
  );
}

function subtotal(label: string, lines: readonly Line[], sheet?: Sheet): Si<'heat-flow'> {
  const watts = lines.map(l => l.watts);
  const sum = watts.reduce((s, w) => s + w, 0);
  if (lines.length > 0)
    sheet?.(() => ({ label, ...terms('q', watts, 'heat-flow'), value: sum, dimension: 'heat-flow', role: 'total' }));
  return sum;
}

function airItems(house: House, design: Block<'design'>, sheet?: Sheet) {
  const air = airLoad(house, design, sheet);
  const of = (label: string, conductance: number) => ({ block: house.envelope, label, conductance });
  const leaked = of('Infiltration and unbalanced ventilation', air.direct);
  const balanced = of('Balanced ventilation after recovery', air.recovered);
  const withRecovery = house.envelope.ventilation.some(v => v.kind === 'balanced');
  return {
    infiltration: [line(leaked, 'infiltration', design.outdoor, design, 'outdoors', sheet)],
    ventilation: withRecovery ? [line(balanced, 'ventilation', design.outdoor, design, 'outdoors', sheet)] : [],
  };
}

function line(
  item: Omit<LoadItem, 'part' | 'watts'>,
  part: LoadItem['part'],
  beyond: Si<'temperature'>,
  { indoor, outdoor }: Block<'design'>,
  followed: 'outdoors' | 'nothing',
  sheet?: Sheet,
): Line {
  const { block, label, area, u, conductance } = item;
  const watts = conductance * (indoor - beyond);
  sheet?.(() => ({
    label,
    formula: 'H * (t_i - t_x)',
    inputs: { H: [conductance, 'conductance'], t_i: [indoor, 'temperature'], t_x: [beyond, 'temperature'] },
    value: watts,
    dimension: 'heat-flow',
    source: 'ASHRAE Fundamentals 2021 ch. 17',
    role: 'item',
  }));
  return {
    block,
    label,
    part,
    ...(area === undefined ? {} : { area }),
    ...(u === undefined ? {} : { u }),
    conductance,
    watts,
    followsOutdoors: followed === 'outdoors' ? watts / (indoor - outdoor) : 0,
  };
}
