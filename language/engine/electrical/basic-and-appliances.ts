import { cite, type BasicAndAppliances } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { listLoads, shareOf, sumOf, tiered } from './amount.js';
import { ofKind, totalPower, type Demand, type Dwelling, type Load } from './loads.js';

/**
 * Load of a single dwelling, itemized by the Canadian rule: a basic load for the living area, then heating or cooling,
 * the range, heaters that count in full, vehicle charging, and the other loads of some size. W. The smallest service that
 * the rule sets beside it is `minimumRating`. For one dwelling; two or more follow another rule.
 */
export function basicAndAppliances(dwelling: Dwelling, rule: BasicAndAppliances, sheet?: Sheet): Demand {
  const { loads } = dwelling;
  const { range, beside } = cooking(loads);
  const vehicles = ofKind(loads, 'vehicle');
  const rest = [...beside, ...ofKind(loads, 'dryer', 'water-heater', 'appliance')];
  const parts = {
    basic: basicLoad(dwelling.livingArea, rule, sheet),
    climate: heatingOrCooling(loads, rule, sheet),
    range: rangeLoad(range, rule, sheet),
    heaters: listed(ofKind(loads, 'tankless', 'spa'), rule.inFull, sheet),
    vehicles: listed(vehicles, rule.vehicle, sheet),
    others: otherLoads(rest, range > 0, rule, sheet),
  };
  const power = sumOf('Itemized load', parts, cite(rule.total), sheet);
  return { power, continuous: totalPower(vehicles) * rule.vehicle.factor };
}

/** W for the first square metres and each further part begun. */
export function basicLoad(livingArea: number, { basic }: BasicAndAppliances, sheet?: Sheet): number {
  const value = basic.first + basic.step * Math.max(0, Math.ceil((livingArea - basic.area) / basic.area));
  sheet?.(() => ({
    label: 'Basic load for the living area',
    formula: 'first + step * max(0, ceil((living - each) / each))',
    inputs: {
      first: [basic.first, 'power'],
      step: [basic.step, 'power'],
      living: [livingArea, 'area'],
      each: [basic.area, 'area'],
    },
    value,
    dimension: 'power',
    source: cite(basic.clause),
    role: 'item',
  }));
  return value;
}

/** Heat with its demand factors or cooling, whichever is larger: the two do not run together. */
function heatingOrCooling(loads: readonly Load[], rule: BasicAndAppliances, sheet?: Sheet): number {
  const room = ofKind(loads, 'room-heat');
  const central = ofKind(loads, 'central-heat', 'storage-heat', 'supplementary', 'heat-pump', 'blower');
  const cooling = ofKind(loads, 'cooling', 'blower');
  const heats = room.length > 0 || central.some(load => load.kind !== 'blower');
  const cools = cooling.some(load => load.kind === 'cooling');
  if (!heats && !cools) return 0;
  listLoads([...room, ...central], rule.heatAndCooling, sheet);
  const heating = heats ? roomHeat(room, rule, sheet) + centralHeat(central, rule, sheet) : 0;
  if (!cools) return heating;
  const cooled = totalPower(cooling);
  listLoads(ofKind(loads, 'cooling'), rule.heatAndCooling, sheet);
  const value = Math.max(heating, cooled);
  sheet?.(() => ({
    label: 'Heating or cooling, the larger',
    formula: 'max(heating, cooling)',
    inputs: { heating: [heating, 'power'], cooling: [cooled, 'power'] },
    value,
    dimension: 'power',
    source: cite(rule.larger),
    role: 'item',
  }));
  return value;
}

function roomHeat(loads: readonly Load[], { roomHeat: tier }: BasicAndAppliances, sheet?: Sheet): number {
  if (loads.length === 0) return 0;
  return tiered({ label: 'Heat with a thermostat in each room', load: totalPower(loads), ...tier }, sheet);
}

function centralHeat(loads: readonly Load[], { centralHeat: rule }: BasicAndAppliances, sheet?: Sheet): number {
  if (loads.length === 0) return 0;
  return shareOf(
    {
      label: 'Heat pump, supplementary and central heat with their blower, running together',
      load: totalPower(loads),
      ...rule,
    },
    sheet,
  );
}

/**
 * The range of the rule, W, and the cooking appliances that are counted beside it. Without a range of one piece, cooktop
 * and oven count as one range together (from memory).
 */
function cooking(loads: readonly Load[]): { readonly range: number; readonly beside: readonly Load[] } {
  const ranges = [...ofKind(loads, 'range')].sort((a, b) => b.power - a.power);
  const units = ofKind(loads, 'cooking-unit');
  if (ranges.length === 0) return { range: totalPower(units), beside: [] };
  return { range: ranges[0].power, beside: [...ranges.slice(1), ...units] };
}

/** W for one range of a rating in W; nothing for none. */
export function rangeLoad(rating: number, { range }: BasicAndAppliances, sheet?: Sheet): number {
  if (rating <= 0) return 0;
  const value = range.load + range.beyond * Math.max(0, rating - range.upTo);
  sheet?.(() => ({
    label: 'Range',
    formula: 'base + beyond * max(0, rating - limit)',
    inputs: {
      base: [range.load, 'power'],
      beyond: [range.beyond, 'ratio'],
      rating: [rating, 'power'],
      limit: [range.upTo, 'power'],
    },
    value,
    dimension: 'power',
    source: cite(range.clause),
    role: 'item',
  }));
  return value;
}

const listed = (loads: readonly Load[], rule: BasicAndAppliances['vehicle'], sheet?: Sheet): number =>
  loads.reduce((sum, load) => sum + shareOf({ label: load.label, load: load.power, ...rule }, sheet), 0);

function otherLoads(loads: readonly Load[], hasRange: boolean, { others }: BasicAndAppliances, sheet?: Sheet): number {
  const large = loads.filter(load => load.power > others.over);
  if (large.length === 0) return 0;
  const load = totalPower(large);
  if (!hasRange) {
    listLoads(large, others.withoutRange.clause, sheet);
    return tiered({ label: 'Other loads, no electric range', load, ...others.withoutRange }, sheet);
  }
  return large.reduce(
    (sum, each) => sum + shareOf({ label: each.label, load: each.power, ...others.withRange }, sheet),
    0,
  );
}
