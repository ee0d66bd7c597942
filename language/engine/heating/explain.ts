import type { Block, House } from '../../model/index.js';
import { print, type Si } from '../../units/index.js';
import { named } from '../envelope/named.js';
import type { Sheet } from '../worksheet.js';
import { at, runsAt, type Range } from './curve.js';
import { DEFROST, keptInDefrost } from './defrost.js';
import type { DesignLoad } from './design-load.js';
import { performancePoints, stopIn, tableOutput, whyStopped } from './equipment.js';
import { extrapolatedOutput, type Stop } from './heat-pump.js';

/** The load at an outdoor temperature as a line of the worksheet. */
export function explainLoad(design: DesignLoad, outdoor: Si<'temperature'>, sheet: Sheet): void {
  sheet(() => ({
    label: 'Load at this outdoor temperature',
    formula: 'H * (t_i - t_o) + q_0',
    inputs: {
      H: [design.perKelvin, 'conductance'],
      t_i: [design.indoor, 'temperature'],
      t_o: [outdoor, 'temperature'],
      q_0: [design.steady, 'heat-flow'],
    },
    value: design.perKelvin * (design.indoor - outdoor) + design.steady,
    dimension: 'heat-flow',
    note: 'Air flow of the design hour; the ground does not follow the outdoor air.',
  }));
}

/** What each heat pump is credited with at an outdoor temperature, and why. */
export function explainHeatPumps(
  house: House,
  range: Range,
  outdoor: Si<'temperature'>,
  side: 'warmer' | 'colder',
  sheet: Sheet,
): void {
  for (const hp of house.heating.heatPump) explainOne(hp, stopIn(hp, house, range.from), range, outdoor, side, sheet);
}

/** What the table of each heat pump gives at an outdoor temperature, whether or not it is allowed to run there. */
export function explainTables(house: House, range: Range, outdoor: Si<'temperature'>, sheet: Sheet): void {
  for (const hp of house.heating.heatPump) explainOne(hp, undefined, range, outdoor, 'warmer', sheet);
}

function explainOne(
  hp: Block<'heat-pump'>,
  stop: Stop | undefined,
  range: Range,
  outdoor: Si<'temperature'>,
  side: 'warmer' | 'colder',
  sheet: Sheet,
): void {
  const points = performancePoints(hp);
  const label = `${named(hp)} at ${print(outdoor, 'temperature')}`;
  const nothing = (note: string) => sheet(() => ({ label, value: 0, dimension: 'heat-flow', role: 'item', note }));
  if (stop && !runsAt(stop.from, outdoor, side)) return nothing(`It is ${whyStopped(stop)}.`);
  if (!runsAt(points[0].outdoor, outdoor, side)) {
    const beyond = extrapolatedOutput(points, outdoor);
    const line =
      beyond === undefined ? '' : ` The line of its last two points would give ${print(beyond, 'heat-flow')}.`;
    return nothing(
      `Below the last point of its table, ${print(points[0].outdoor, 'temperature')}, nothing is credited.${line}`,
    );
  }
  const next = points.findIndex(p => p.outdoor >= outdoor);
  const warm = points[next === -1 ? points.length - 1 : Math.max(next, 1)];
  const cold = points[points.indexOf(warm) - 1];
  const credited = at(tableOutput(hp, range), outdoor, side);
  const source = 'straight lines between the points of the table';
  if (next === -1)
    return sheet(() => ({
      label,
      value: credited,
      dimension: 'heat-flow',
      role: 'item',
      note: 'Above the warmest point of its table; the value there is held.',
    }));
  const frost = hp.defrostIncluded || keptInDefrost(outdoor) === 1;
  if (frost)
    return sheet(() => ({
      label,
      formula: 'Q_1 + (Q_2 - Q_1) * (t - t_1) / (t_2 - t_1)',
      inputs: {
        Q_1: [cold.output, 'heat-flow'],
        Q_2: [warm.output, 'heat-flow'],
        t: [outdoor, 'temperature'],
        t_1: [cold.outdoor, 'temperature'],
        t_2: [warm.outdoor, 'temperature'],
      },
      value: credited,
      dimension: 'heat-flow',
      source,
      role: 'item',
    }));
  // The bends of the loss are points of the curve too: the piece that holds this temperature has its ends on them.
  const piece = tableOutput(hp, { from: points[0].outdoor, to: DEFROST.points[2][0] + 60 }).find(p => outdoor < p.to)!;
  sheet(() => ({
    label,
    formula: 'Q_1 + (Q_2 - Q_1) * (t - t_1) / (t_2 - t_1)',
    inputs: {
      Q_1: [piece.start, 'heat-flow'],
      Q_2: [piece.end, 'heat-flow'],
      t: [outdoor, 'temperature'],
      t_1: [piece.from, 'temperature'],
      t_2: [piece.to, 'temperature'],
    },
    value: credited,
    dimension: 'heat-flow',
    source: `${source}; ${DEFROST.source}`,
    role: 'item',
    note: 'The table leaves defrost out: both outputs are taken after its loss, between −7 and 5 °C',
  }));
}
