import { cite, type StandardDwelling } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { listLoads, shareOf, sumOf } from './amount.js';
import { ofKind, totalPower, type Demand, type Dwelling, type Load } from './loads.js';
import { rangesDemand } from './ranges.js';
import { lightAndOutlets, vehicleLoad } from './unit-loads.js';

/** VA that the neutral of the service carries, beside the demand of the service. */
export interface StandardDemand extends Demand {
  readonly neutral: number;
}

/** Load of one dwelling by the standard American method: each kind of load by its own table. VA. */
export function standardDwelling(dwelling: Dwelling, rule: StandardDwelling, sheet?: Sheet): StandardDemand {
  const { loads } = dwelling;
  const light = lightingDemand(lightAndOutlets(dwelling, rule.units, sheet), rule, sheet);
  const fastened = fastenedAppliances(loads, rule, sheet);
  const dryer = dryers(ofKind(loads, 'dryer'), rule, sheet);
  const range = rangesDemand(
    ofKind(loads, 'range', 'cooking-unit').map(load => load.power),
    rule.range,
    sheet,
  );
  const vehicles = ofKind(loads, 'vehicle').reduce((sum, each) => sum + vehicleLoad(each, rule.units, sheet), 0);
  const climate = heatingOrCooling(loads, rule, sheet);
  const parts = { light, fastened, dryer, range, vehicles, climate };
  const power = sumOf('Calculated load', parts, cite(rule.total), sheet);
  return { power, continuous: vehicles, neutral: neutral(loads, { light, dryer, range }, rule, sheet) };
}

/** Light, outlets, small-appliance and laundry circuits with the shares of the table. */
export function lightingDemand(load: number, { lighting }: StandardDwelling, sheet?: Sheet): number {
  let value = 0;
  let from = 0;
  for (const step of lighting.steps) {
    value += step.factor * Math.max(0, Math.min(load, step.upTo) - from);
    from = step.upTo;
  }
  const [first, second, third] = lighting.steps;
  sheet?.(() => ({
    label: 'Light, outlets, small appliances and laundry with their demand factors',
    formula: 'first * min(load, limit1) + second * max(0, min(load, limit2) - limit1) + third * max(0, load - limit2)',
    inputs: {
      load: [load, 'power'],
      first: [first.factor, 'ratio'],
      limit1: [first.upTo, 'power'],
      second: [second.factor, 'ratio'],
      limit2: [second.upTo, 'power'],
      third: [third.factor, 'ratio'],
    },
    value,
    dimension: 'power',
    source: cite(lighting.clause),
    role: 'item',
  }));
  return value;
}

/** Appliances fastened in place: at a share when there are enough of them; the small ones in full. */
export function fastenedAppliances(loads: readonly Load[], { fastened }: StandardDwelling, sheet?: Sheet): number {
  const all = ofKind(loads, 'water-heater', 'tankless', 'spa', 'appliance');
  if (all.length === 0) return 0;
  listLoads(all, fastened.clause, sheet);
  const counted = all.filter(load => load.power >= fastened.leastRating);
  const small = totalPower(all) - totalPower(counted);
  const factor = counted.length >= fastened.from ? fastened.factor : 1;
  const share = shareOf(
    {
      label: `${counted.length} appliances fastened in place`,
      load: totalPower(counted),
      factor,
      clause: fastened.clause,
    },
    sheet,
  );
  return share + small;
}

/** One to four dryers count in full, each with a least load. */
function dryers(loads: readonly Load[], { dryer }: StandardDwelling, sheet?: Sheet): number {
  return loads.reduce((sum, load) => {
    const value = Math.max(load.power, dryer.atLeast);
    sheet?.(() => ({
      label: load.label,
      formula: 'max(rating, least)',
      inputs: { rating: [load.power, 'power'], least: [dryer.atLeast, 'power'] },
      value,
      dimension: 'power',
      source: cite(dryer.clause),
      role: 'item',
    }));
    return sum + value;
  }, 0);
}

function heatingOrCooling(loads: readonly Load[], rule: StandardDwelling, sheet?: Sheet): number {
  const heat = ofKind(loads, 'heat-pump', 'supplementary', 'room-heat', 'central-heat', 'storage-heat');
  const cooling = ofKind(loads, 'cooling');
  const blower = totalPower(ofKind(loads, 'blower'));
  if (heat.length + cooling.length === 0 && blower === 0) return 0;
  listLoads([...heat, ...cooling, ...ofKind(loads, 'blower')], rule.heat.clause, sheet);
  const heating = rule.heat.factor * totalPower(heat);
  const cooled = totalPower(cooling);
  const larger = Math.max(heating, cooled) + blower;
  sheet?.(() => ({
    label: 'Heating or cooling, the larger, with the blower',
    formula: 'max(heating, cooling) + blower',
    inputs: { heating: [heating, 'power'], cooling: [cooled, 'power'], blower: [blower, 'power'] },
    value: larger,
    dimension: 'power',
    source: cite(rule.larger),
    role: 'item',
  }));
  const motors = (heating >= cooled ? ofKind(loads, 'heat-pump') : cooling).map(load => load.power);
  if (motors.length === 0) return larger;
  return larger + shareOf({ label: 'Largest motor', load: Math.max(...motors), ...rule.largestMotor }, sheet);
}

/** The neutral carries light and 120 V appliances in full, and a share of range and dryer. */
function neutral(
  loads: readonly Load[],
  { light, dryer, range }: { readonly light: number; readonly dryer: number; readonly range: number },
  { neutral: rule }: StandardDwelling,
  sheet?: Sheet,
): number {
  const LINE_TO_NEUTRAL = 150;
  const single = totalPower(
    ofKind(loads, 'appliance', 'water-heater', 'blower').filter(load => load.voltage < LINE_TO_NEUTRAL),
  );
  const value = light + single + rule.factor * (range + dryer);
  sheet?.(() => ({
    label: 'Neutral',
    formula: 'light + single + factor * (range + dryer)',
    inputs: {
      light: [light, 'power'],
      single: [single, 'power'],
      factor: [rule.factor, 'ratio'],
      range: [range, 'power'],
      dryer: [dryer, 'power'],
    },
    value,
    dimension: 'power',
    source: cite(rule.clause),
    note: 'beside the load of the service, not in it',
  }));
  return value;
}
