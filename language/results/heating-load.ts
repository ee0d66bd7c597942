import { codeLoad, comfortLoad, hasEnvelope, statedPerKelvin } from '../engine/heating/design-load.js';
import { Withheld } from '../model/index.js';
import { result } from './define.js';

/** What the house loses. */
export const loadResults = [
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
  result('heating.stated-loss-coefficient', 'house', {
    dimension: 'conductance',
    tier: 'design',
    doc: 'Stated load per kelvin between its own indoor and outdoor temperatures.',
    compute: (house, _, sheet) => statedPerKelvin(house, sheet),
  }),
  result('heating.stated-difference', 'house', {
    dimension: 'ratio',
    tier: 'design',
    doc: 'By how much the computed W/K differs from that of the stated load; positive when the calculation gives more.',
    compute: (house, _, sheet) => {
      const said = statedPerKelvin(house, sheet);
      if (!hasEnvelope(house)) throw new Withheld('the envelope is not written: the stated load is the load');
      const load = codeLoad(house, sheet);
      const computed = load.total / (load.indoor - load.outdoor);
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
];
