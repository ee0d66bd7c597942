import { Withheld, type Block, type House } from '../../model/index.js';
import { print, type Si } from '../../units/index.js';
import { named } from '../envelope/named.js';
import type { Sheet } from '../worksheet.js';
import { resistanceOutput } from './auxiliary.js';
import { larger, line, plus, type Curve, type Range } from './curve.js';
import {
  creditedOutput,
  inOrder,
  runningFrom,
  runningUpTo,
  runsFrom,
  stopOf,
  type PerformancePoint,
  type Stop,
} from './heat-pump.js';

/** The rows of a heat pump's table from cold to warm. */
export function performancePoints(heatPump: Block<'heat-pump'>): readonly PerformancePoint[] {
  const rows = inOrder(heatPump.performance);
  if ('error' in rows) throw new Withheld(`${named(heatPump)}: ${rows.error}`);
  return rows.ok;
}

/** Whether the lockouts of the thermostat count, or only what the equipment itself can do. */
export type Lockouts = 'kept' | 'ignored';

const limitsOf = ({ cutOut, cutIn }: Block<'heat-pump'>, house: House, lockouts: Lockouts) => ({
  cutOut,
  cutIn,
  lockoutBelow: lockouts === 'kept' ? house.heating.thermostat?.compressorLockoutBelow : undefined,
});

/** What keeps a heat pump of this house off, in weather down to `coldest`, lockouts counted. */
export const stopIn = (heatPump: Block<'heat-pump'>, house: House, coldest: Si<'temperature'>): Stop | undefined =>
  stopOf(limitsOf(heatPump, house, 'kept'), coldest);

/** Why a heat pump is not counted on below the temperature of a stop, as a clause. */
export function whyStopped({ by, from }: Stop): string {
  const there = print(from, 'temperature');
  if (by === 'cut-out') return `cut out below ${there}`;
  if (by === 'cut-in') return `off until its cut-in at ${there}, once it has cut out`;
  return `locked out by the thermostat below ${there}`;
}

const defrostOf = (heatPump: Block<'heat-pump'>) => (heatPump.defrostIncluded ? 'included' : 'left-out');

/** What the table credits, whether or not the heat pump is allowed to run. */
export function tableOutput(heatPump: Block<'heat-pump'>, range: Range): Curve {
  return creditedOutput(performancePoints(heatPump), defrostOf(heatPump), range);
}

/** What all heat pumps give at full speed where they run: their cut-out, cut-in and lockout counted. */
export function heatPumpOutput(house: House, range: Range, lockouts: Lockouts = 'kept'): Curve {
  return house.heating.heatPump.reduce(
    (sum, hp) => plus(sum, runningFrom(tableOutput(hp, range), runsFrom(limitsOf(hp, house, lockouts), range.from))),
    line(range, () => 0),
  );
}

/** Heat of one strip at the voltage of the house. */
export function stripOutput(strip: Block<'auxiliary'>, sheet?: Sheet): Si<'heat-flow'> {
  const { output, voltage, supplyVoltage } = strip;
  if (supplyVoltage === undefined || supplyVoltage === voltage) {
    sheet?.(() => ({ label: named(strip), value: output, dimension: 'heat-flow', role: 'item' }));
    return output;
  }
  return resistanceOutput({ label: named(strip), rated: output, ratedVoltage: voltage, supplyVoltage }, sheet);
}

/** Electric resistance that a heat pump or furnace does not need in order to run: strips and room heaters. */
export function installedResistance(house: House, sheet?: Sheet): { central: Si<'heat-flow'>; rooms: Si<'heat-flow'> } {
  const { auxiliary, baseboard } = house.heating;
  const strips = auxiliary.reduce((sum, s) => sum + stripOutput(s, sheet), 0);
  let central = strips;
  let rooms = 0;
  for (const b of baseboard) {
    sheet?.(() => ({ label: named(b), value: b.output, dimension: 'heat-flow', role: 'item' }));
    if (b.controlledBy === 'central') central += b.output;
    else rooms += b.output;
  }
  return { central, rooms };
}

/** Heat of furnaces and boilers at full fire. A wood stove is not counted: somebody must light it. */
export function fuelOutput(house: House, sheet?: Sheet): Si<'heat-flow'> {
  return [...house.heating.furnace, ...house.heating.boiler].reduce((sum, f) => {
    sheet?.(() => ({ label: named(f), value: f.output, dimension: 'heat-flow', role: 'item' }));
    return sum + f.output;
  }, 0);
}

/**
 * All that helps the heat pump, or stands in for it. Beside a heat pump, strips and fuel obey the thermostat's lockout, and fuel
 * replaces the heat pump instead of adding to it, as one coil follows the other in the same stream of air: it counts
 * with what it gives beyond the heat pump.
 */
export function auxiliaryOutput(house: House, heatPump: Curve, range: Range, lockouts: Lockouts, sheet?: Sheet): Curve {
  const { central, rooms } = installedResistance(house, sheet);
  const fuel = fuelOutput(house, sheet);
  const obeys = lockouts === 'kept' && house.heating.heatPump.length > 0;
  const lockout = obeys ? house.heating.thermostat?.auxiliaryLockoutAbove : undefined;
  const allowed = (watts: number) =>
    lockout === undefined
      ? line(range, () => watts)
      : runningUpTo(
          line(range, () => watts),
          lockout,
        );
  const negative = heatPump.map(p => ({ ...p, start: -p.start, end: -p.end }));
  const beyondHeatPump = larger(
    plus(allowed(fuel), negative),
    line(range, () => 0),
  );
  return plus(
    plus(
      allowed(central),
      line(range, () => rooms),
    ),
    beyondHeatPump,
  );
}
