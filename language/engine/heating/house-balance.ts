import { Withheld, type House } from '../../model/index.js';
import { print, type Si } from '../../units/index.js';
import { named } from '../envelope/named.js';
import { once } from '../once.js';
import type { Sheet } from '../worksheet.js';
import { at, line, plus, type Curve, type Range } from './curve.js';
import { codeLoad, type DesignLoad } from './design-load.js';
import { auxiliaryOutput, heatPumpOutput, performancePoints, stopIn, tableOutput, whyStopped } from './equipment.js';
import { explainHeatPumps, explainLoad, explainTables } from './explain.js';
import { extrapolatedOutput } from './heat-pump.js';
import { auxiliaryRequired, balancePoint, worstMargin, type WorstMargin } from './margin.js';

/** Load and outputs of a house from the code's design temperature to the indoor temperature. */
export interface HouseBalance {
  readonly design: DesignLoad;
  readonly range: Range;
  readonly load: Curve;
  readonly heatPump: Curve;
  readonly auxiliary: Curve;
}

export const houseBalance = once((house: House): HouseBalance => {
  const design = codeLoad(house);
  const range = { from: design.outdoor, to: design.indoor };
  const load = line(range, t => design.perKelvin * (design.indoor - t) + design.steady);
  const heatPump = heatPumpOutput(house, range);
  return { design, range, load, heatPump, auxiliary: auxiliaryOutput(house, heatPump, range, 'kept') };
});

/** The worst margin of the house, with the parts at its temperature. */
export const houseMargin = once((house: House, sheet?: Sheet): WorstMargin => {
  const balance = houseBalance(house);
  const worst = worstMargin(balance);
  if (sheet) {
    sheet(() => ({
      label: 'Worst outdoor temperature',
      value: worst.outdoor,
      dimension: 'temperature',
      note:
        `The margin was looked at on every bend and both sides of every jump from ` +
        `${print(balance.range.from, 'temperature')} to ${print(worst.upTo, 'temperature')}; it is smallest here` +
        (worst.side === 'colder' ? ', just below a cut-out, lockout or end of the table.' : '.'),
    }));
    explainLoad(balance.design, worst.outdoor, sheet);
    explainHeatPumps(house, balance.range, worst.outdoor, worst.side, sheet);
    auxiliaryOutput(house, balance.heatPump, balance.range, 'kept', sheet);
    sheet(() => ({
      label: 'Auxiliary and other heat allowed at this temperature',
      value: worst.auxiliary,
      dimension: 'heat-flow',
      note: 'Above its lockout an auxiliary counts for nothing; fuel counts with what it gives beyond the heat pump.',
    }));
    sheet(() => ({
      label: 'Worst margin',
      formula: 'Q_hp + Q_aux - q',
      inputs: {
        Q_hp: [worst.heatPump, 'heat-flow'],
        Q_aux: [worst.auxiliary, 'heat-flow'],
        q: [worst.load, 'heat-flow'],
      },
      value: worst.margin,
      dimension: 'heat-flow',
      role: 'total',
    }));
  }
  return worst;
});

/** Output credited to the heat pumps at the code's design temperature. */
export function heatPumpAtDesign(house: House, sheet?: Sheet): Si<'heat-flow'> {
  needHeatPump(house);
  const { range, heatPump } = houseBalance(house);
  if (sheet) explainHeatPumps(house, range, range.from, 'warmer', sheet);
  return at(heatPump, range.from);
}

/**
 * The outdoor temperature at which the heat pumps just carry the load, by their tables alone: lockouts and cut-outs are not
 * counted, since they change who heats, not who could.
 */
export function houseBalancePoint(house: House, sheet?: Sheet): Si<'temperature'> {
  needHeatPump(house);
  const { range, load, design } = houseBalance(house);
  const output = house.heating.heatPump.reduce(
    (sum, hp) => plus(sum, tableOutput(hp, range)),
    line(range, () => 0),
  );
  const point = balancePoint(load, output);
  if (!point)
    throw new Withheld(
      'the heat pump carries the load down to the design temperature: there is no balance point above it',
    );
  if (sheet) {
    explainLoad(design, point.outdoor, sheet);
    explainTables(house, range, point.outdoor, sheet);
    sheet(() => ({
      label: 'Output of the heat pumps at this temperature, by their tables',
      value: at(output, point.outdoor),
      dimension: 'heat-flow',
      note:
        point.by === 'jump'
          ? `It exceeds the load of ${print(at(load, point.outdoor), 'heat-flow')}.`
          : 'It equals the load.',
    }));
    sheet(() => ({
      label: 'Balance point',
      value: point.outdoor,
      dimension: 'temperature',
      role: 'total',
      note:
        point.by === 'jump'
          ? 'The heat pump still carries the load at the end of its table; nothing is credited below it.'
          : 'The straight pieces of output and load cross here.',
    }));
  }
  return point.outdoor;
}

/** What the heat pumps leave uncovered at worst from the design temperature up, in W. */
export function houseAuxiliaryRequired(house: House, sheet?: Sheet): Si<'heat-flow'> {
  if (house.heating.auxiliary.length === 0) needHeatPump(house);
  const { design, range, load, heatPump } = houseBalance(house);
  const { required, outdoor } = auxiliaryRequired(load, heatPump);
  if (sheet) {
    explainLoad(design, outdoor, sheet);
    explainHeatPumps(house, range, outdoor, 'warmer', sheet);
    const side = at(heatPump, outdoor, 'warmer') - at(load, outdoor) + required <= 0 ? 'warmer' : 'colder';
    sheet(() => ({
      label: 'Auxiliary required',
      formula: 'max(0, q - Q_hp)',
      inputs: { q: [at(load, outdoor), 'heat-flow'], Q_hp: [at(heatPump, outdoor, side), 'heat-flow'] },
      value: required,
      dimension: 'heat-flow',
      role: 'total',
    }));
  }
  return required;
}

/** All heat at the code's design temperature. */
export function installedAtDesign(house: House, sheet?: Sheet): Si<'heat-flow'> {
  const { range, heatPump, auxiliary } = houseBalance(house);
  const [fromHeatPump, others] = [at(heatPump, range.from), at(auxiliary, range.from)];
  if (sheet) {
    explainHeatPumps(house, range, range.from, 'warmer', sheet);
    auxiliaryOutput(house, heatPump, range, 'kept', sheet);
    sheet(() => ({
      label: 'Heat at the design temperature',
      formula: 'Q_hp + Q_aux',
      inputs: { Q_hp: [fromHeatPump, 'heat-flow'], Q_aux: [others, 'heat-flow'] },
      value: fromHeatPump + others,
      dimension: 'heat-flow',
      role: 'total',
    }));
  }
  return fromHeatPump + others;
}

/** What the tables would give at the code's design temperature if their last lines went on; credited nowhere. */
export function extrapolatedAtDesign(house: House, sheet?: Sheet): Si<'heat-flow'> {
  needHeatPump(house);
  const { range } = houseBalance(house);
  const stopped = house.heating.heatPump.flatMap(hp => {
    const stop = stopIn(hp, house, range.from);
    return stop && range.from < stop.from ? [{ hp, stop }] : [];
  });
  const beyond = house.heating.heatPump.flatMap(hp => {
    if (stopped.some(s => s.hp === hp)) return [];
    const watts = extrapolatedOutput(performancePoints(hp), range.from);
    return watts === undefined ? [] : [{ hp, watts }];
  });
  if (beyond.length === 0 && stopped.length > 0)
    throw new Withheld(stopped.map(({ hp, stop }) => `${named(hp)} is ${whyStopped(stop)}`).join('; '));
  if (beyond.length === 0) throw new Withheld('the performance table reaches the design temperature');
  for (const { hp, watts } of beyond)
    sheet?.(() => ({
      label: `${named(hp)} beyond its table`,
      value: watts,
      dimension: 'heat-flow',
      role: 'item',
      note: 'The line of the two coldest points, carried on: information, not a credit.',
    }));
  return beyond.reduce((sum, b) => sum + b.watts, 0);
}

function needHeatPump(house: House): void {
  if (house.heating.heatPump.length === 0) throw new Withheld('there is no heat pump in this stage');
}
