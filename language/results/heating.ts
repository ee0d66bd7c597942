import { smallestStrip } from '../engine/heating/auxiliary.js';
import { codeLoad } from '../engine/heating/design-load.js';
import { fuelOutput, installedResistance } from '../engine/heating/equipment.js';
import {
  extrapolatedAtDesign,
  heatPumpAtDesign,
  houseAuxiliaryRequired,
  houseBalancePoint,
  houseMargin,
  installedAtDesign,
} from '../engine/heating/house-balance.js';
import { backupMargin } from '../engine/heating/shortfall.js';
import type { Sheet } from '../engine/worksheet.js';
import { Withheld, type House } from '../model/index.js';
import { result } from './define.js';
import { loadResults } from './heating-load.js';
import { shortfallResults } from './heating-shortfall.js';

const voltageOf = (house: House) => house.heating.auxiliary[0]?.supplyVoltage ?? 240;

/** Sizes are rated at 240 V, so that both sides of the difference are taken at the voltage of the house. */
function surplus(house: House, sheet?: Sheet): number {
  const { central, rooms } = installedResistance(house, sheet);
  const required = houseAuxiliaryRequired(house, sheet);
  const size = smallestStrip(required, voltageOf(house));
  if (size === undefined) throw new Withheld('no usual size of electric heat is large enough');
  const enough = size * (voltageOf(house) / 240) ** 2;
  const value = Math.max(0, central + rooms - enough);
  sheet?.(() => ({
    label: 'Beyond the smallest usual size that is enough',
    formula: 'max(0, Q_c + Q_r - Q_s * (V / 240)^2)',
    inputs: {
      Q_c: [central, 'heat-flow'],
      Q_r: [rooms, 'heat-flow'],
      Q_s: [size, 'heat-flow'],
      V: [voltageOf(house), 'voltage'],
    },
    value,
    dimension: 'heat-flow',
    role: 'total',
  }));
  return value;
}

/** Heating of the house: load, what carries it, and what is left over. */
export const heatingResults = [
  ...loadResults,
  result('heating.heat-pump-at-design', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'more',
    doc: "Output of the heat pumps at the code's design temperature: straight lines between the points of the table, nothing below its last point or where a cut-out or lockout keeps them off.",
    compute: (house, _, sheet) => heatPumpAtDesign(house, sheet),
  }),
  result('heating.heat-pump-beyond-table', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: "What the line of the last two points of the table would give at the code's design temperature, where the table ends above it. Information: it is credited nowhere.",
    compute: (house, _, sheet) => extrapolatedAtDesign(house, sheet),
  }),
  result('heating.load-share', 'house', {
    dimension: 'ratio',
    tier: 'design',
    better: 'more',
    doc: "Part of the design load that the heat pumps carry at the code's design temperature; more than 100 % when they have heat over.",
    compute: (house, _, sheet) => {
      const output = heatPumpAtDesign(house, sheet);
      const { total } = codeLoad(house);
      if (!(total > 0)) throw new Withheld('there is no load at the design condition');
      sheet?.(() => ({
        label: 'Share of the load',
        formula: 'Q_hp / q',
        inputs: { Q_hp: [output, 'heat-flow'], q: [total, 'heat-flow'] },
        value: output / total,
        dimension: 'ratio',
        role: 'total',
      }));
      return output / total;
    },
  }),
  result('heating.balance-point', 'house', {
    dimension: 'temperature',
    tier: 'design',
    headline: true,
    better: 'less',
    doc: 'Outdoor temperature at which the heat pumps just carry the load, by their tables alone. Where a table ends while they still carry it, its last point.',
    compute: (house, _, sheet) => houseBalancePoint(house, sheet),
  }),
  result('heating.auxiliary-required', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'The most that the heat pumps leave uncovered at any outdoor temperature from the design temperature of the code up, lockouts and cut-outs counted.',
    compute: (house, _, sheet) => houseAuxiliaryRequired(house, sheet),
  }),
  result('heating.auxiliary-size', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Smallest usual size of electric heat (3, 5, 8, 10, 15, 20, 25 kW at 240 V: common practice) that carries what the heat pumps leave uncovered at the voltage of the house.',
    compute: (house, _, sheet) => {
      const required = houseAuxiliaryRequired(house, sheet);
      const size = smallestStrip(required, voltageOf(house));
      if (size === undefined) throw new Withheld('no usual size of electric heat is large enough');
      sheet?.(() => ({
        label: 'Smallest usual size',
        value: size,
        dimension: 'heat-flow',
        source: 'common practice: sizes in which electric heat is sold',
        role: 'total',
      }));
      return size;
    },
  }),
  result('heating.auxiliary-installed', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Electric resistance heat of the stage at the voltage of the house: strips and room heaters.',
    compute: (house, _, sheet) => {
      const { central, rooms } = installedResistance(house, sheet);
      sheet?.(() => ({
        label: 'Electric resistance heat',
        formula: 'Q_c + Q_r',
        inputs: { Q_c: [central, 'heat-flow'], Q_r: [rooms, 'heat-flow'] },
        value: central + rooms,
        dimension: 'heat-flow',
        role: 'total',
      }));
      return central + rooms;
    },
  }),
  result('heating.fuel-installed', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Heat of furnaces and boilers of the stage at full fire. Wood stoves are not counted.',
    compute: (house, _, sheet) => {
      const output = fuelOutput(house, sheet);
      sheet?.(() => ({
        label: 'Furnaces and boilers together',
        value: output,
        dimension: 'heat-flow',
        role: 'total',
      }));
      return output;
    },
  }),
  result('heating.output-at-design', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'more',
    doc: "All heat that is there at the code's design temperature, lockouts and cut-outs counted.",
    compute: (house, _, sheet) => installedAtDesign(house, sheet),
  }),
  result('heating.worst-margin', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    headline: true,
    better: 'more',
    doc: 'Smallest heat left over at any outdoor temperature from the design temperature of the code to the balance point, on both sides of cut-outs and lockouts; negative when it is short.',
    compute: (house, _, sheet) => houseMargin(house, sheet).margin,
  }),
  result('heating.worst-margin-temperature', 'house', {
    dimension: 'temperature',
    tier: 'design',
    doc: 'Outdoor temperature at which the margin is smallest.',
    compute: (house, _, sheet) => houseMargin(house, sheet).outdoor,
  }),
  result('heating.worst-margin-load', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Load at the outdoor temperature at which the margin is smallest.',
    compute: (house, _, sheet) => houseMargin(house, sheet).load,
  }),
  result('heating.worst-margin-heat-pump', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Output credited to the heat pumps at the outdoor temperature at which the margin is smallest.',
    compute: (house, _, sheet) => houseMargin(house, sheet).heatPump,
  }),
  result('heating.worst-margin-auxiliary', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Auxiliary and other heat allowed at the outdoor temperature at which the margin is smallest.',
    compute: (house, _, sheet) => houseMargin(house, sheet).auxiliary,
  }),
  result('heating.auxiliary-needed-below', 'house', {
    dimension: 'temperature',
    tier: 'design',
    doc: 'Outdoor temperature below which the heat pumps, with their lockouts and cut-outs, do not carry the load at every temperature: an auxiliary must be allowed to run up to it.',
    compute: (house, _, sheet) => houseMargin(house, sheet).upTo,
  }),
  result('heating.backup-margin', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'more',
    doc: 'Heat that the auxiliary of role full-backup has over when it carries the design load of the code alone; negative when it is short.',
    compute: (house, _, sheet) => backupMargin(house, sheet),
  }),
  result('heating.auxiliary-surplus', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Electric resistance heat beyond the smallest usual size that covers what the heat pumps leave; nothing when there is none.',
    compute: (house, _, sheet) => surplus(house, sheet),
  }),
  result('heating.auxiliary-surplus-current', 'house', {
    dimension: 'current',
    tier: 'design',
    doc: 'Current of that surplus at the voltage of the house: what the larger strip costs the service.',
    compute: (house, _, sheet) => {
      const watts = surplus(house, sheet);
      const volts = voltageOf(house);
      sheet?.(() => ({
        label: 'Current of the surplus',
        formula: 'P / V',
        inputs: { P: [watts, 'heat-flow'], V: [volts, 'voltage'] },
        value: watts / volts,
        dimension: 'current',
        role: 'total',
      }));
      return watts / volts;
    },
  }),
  ...shortfallResults,
];
