import { smallestStrip } from '../engine/heating/auxiliary.js';
import { codeLoad, comfortLoad, hasEnvelope } from '../engine/heating/design-load.js';
import { fuelOutput, installedResistance } from '../engine/heating/equipment.js';
import {
  extrapolatedAtDesign,
  heatPumpAtDesign,
  houseAuxiliaryRequired,
  houseBalancePoint,
  houseMargin,
  installedAtDesign,
} from '../engine/heating/house-balance.js';
import { Withheld, type House } from '../model/index.js';
import { result } from './define.js';

const voltageOf = (house: House) => house.heating.auxiliary[0]?.supplyVoltage ?? 240;

/** Heating of the house: load, what carries it, and what is left over. */
export const heatingResults = [
  result('heating.design-load', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    headline: true,
    better: 'less',
    doc: 'Heat that the house loses at the design condition of the code, without gains: transmission, ground, infiltration, ventilation, ducts. From the stated load alone when the envelope is not written.',
    compute: (house, _, sheet) => codeLoad(house, sheet).total,
  }),
  result('heating.design-load-comfort', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: "Heat that the house loses at the owner's design condition.",
    compute: (house, _, sheet) => comfortLoad(house, sheet).total,
  }),
  result('heating.loss-coefficient', 'house', {
    dimension: 'conductance',
    tier: 'design',
    better: 'less',
    doc: 'Design load per kelvin between indoors and outdoors at the condition of the code.',
    compute: (house, _, sheet) => {
      const load = codeLoad(house, sheet);
      const value = load.total / (load.indoor - load.outdoor);
      sheet?.(() => ({
        label: 'Loss coefficient',
        formula: 'q / (t_i - t_o)',
        inputs: {
          q: [load.total, 'heat-flow'],
          t_i: [load.indoor, 'temperature'],
          t_o: [load.outdoor, 'temperature'],
        },
        value,
        dimension: 'conductance',
        role: 'total',
      }));
      return value;
    },
  }),
  result('heating.stated-difference', 'house', {
    dimension: 'ratio',
    tier: 'design',
    doc: 'By how much the computed W/K differs from that of the stated load; positive when the calculation gives more.',
    compute: (house, _, sheet) => {
      const stated = house.statedLoad;
      if (!stated) throw new Withheld('there is no stated-load');
      if (!hasEnvelope(house)) throw new Withheld('the envelope is not written: the stated load is the load');
      const load = codeLoad(house, sheet);
      const computed = load.total / (load.indoor - load.outdoor);
      const difference = stated.indoor - stated.outdoor;
      if (!(difference > 0)) throw new Withheld('stated-load is not colder outdoors than indoors');
      const said = stated.heating / difference;
      sheet?.(() => ({
        label: 'Calculation against the stated load',
        formula: 'H / H_s - 1',
        inputs: { H: [computed, 'conductance'], H_s: [said, 'conductance'] },
        value: computed / said - 1,
        dimension: 'ratio',
        role: 'total',
      }));
      return computed / said - 1;
    },
  }),
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
    compute: (house, _, sheet) => fuelOutput(house, sheet),
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
];
