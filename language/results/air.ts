import { infiltrationAtDesign } from '../engine/air/house-air.js';
import { fitOfTest, testedLeakage, houseLeakage, type TestedLeakage } from '../engine/air/house-leakage.js';
import {
  airChanges,
  effectiveLeakageArea,
  equivalentLeakageArea,
  normalizedLeakage,
} from '../engine/air/leakage-area.js';
import { requiredVentilation } from '../engine/air/ventilation-required.js';
import { condition } from '../engine/heating/condition.js';
import { heatedFloor, heatedVolume, heightAboveGrade } from '../engine/envelope/volume.js';
import type { Sheet } from '../engine/worksheet.js';
import { Withheld, type House } from '../model/index.js';
import { result } from './define.js';

function tested(house: House, sheet?: Sheet): TestedLeakage {
  const found = testedLeakage(house, sheet);
  if (!found) throw new Withheld('there is no blower-door-test in this stage');
  return found;
}

/** Leakage and ventilation of the house. */
export const airResults = [
  result('air.flow-50', 'house', {
    dimension: 'air-flow',
    tier: 'design',
    better: 'less',
    doc: 'Air that leaks at 50 Pa, by the fit of the latest blower-door test at reference density.',
    compute: (house, _, sheet) => {
      const { fit } = tested(house, sheet);
      const flow = fit.flowAt(50);
      const { low, high } = fit.flowLimitsAt(50);
      sheet?.(() => ({
        label: 'Flow at 50 Pa',
        formula: 'C * 50^n',
        inputs: { C: [fit.coefficient, 'air-flow'], n: [fit.exponent, 'number'] },
        value: flow,
        dimension: 'air-flow',
        source: 'ISO 9972:2015',
        role: 'total',
        note: `95 % limits ${Math.round(low * 1000)} and ${Math.round(high * 1000)} L/s.`,
      }));
      return flow;
    },
  }),
  result('air.ach50', 'house', {
    dimension: 'air-change-rate',
    tier: 'design',
    headline: true,
    better: 'less',
    doc: 'Air changes per hour at 50 Pa: the flow of the latest blower-door test over the heated volume.',
    compute: (house, _, sheet) => {
      const flow = tested(house, sheet).fit.flowAt(50);
      const volume = heatedVolume(house);
      const rate = airChanges(flow, volume);
      sheet?.(() => ({
        label: 'Air changes at 50 Pa',
        formula: 'Q_50 / V',
        inputs: { Q_50: [flow, 'air-flow'], V: [volume, 'volume'] },
        value: rate,
        dimension: 'air-change-rate',
        source: 'ISO 9972:2015',
        role: 'total',
      }));
      return rate;
    },
  }),
  result('air.exponent', 'house', {
    dimension: 'number',
    tier: 'design',
    doc: 'Exponent of the leaks by the latest blower-door test; between 0.5 (holes) and 1 (fine cracks).',
    compute: (house, _, sheet) => tested(house, sheet).fit.exponent,
  }),
  result('air.exponent-uncertainty', 'house', {
    dimension: 'number',
    tier: 'design',
    better: 'less',
    doc: 'Half-width of the 95 % interval of the exponent.',
    compute: (house, _, sheet) => {
      const { exponentLimits } = tested(house, sheet).fit;
      return (exponentLimits.high - exponentLimits.low) / 2;
    },
  }),
  result('air.correlation', 'house', {
    dimension: 'number',
    tier: 'design',
    doc: 'Correlation of the logarithms of flow and pressure in the latest blower-door test; 1 when the readings lie on a line.',
    compute: (house, _, sheet) => tested(house, sheet).fit.correlation,
  }),
  result('air.leakage-area', 'house', {
    dimension: 'area',
    tier: 'design',
    better: 'less',
    doc: 'Effective leakage area at 4 Pa of the house as it is lived in: the test and the openings that were sealed in it, or the leakage class of the envelope.',
    compute: (house, _, sheet) => effectiveLeakageArea(houseLeakage(house, sheet), sheet),
  }),
  result('air.equivalent-leakage-area', 'house', {
    dimension: 'area',
    tier: 'design',
    better: 'less',
    doc: 'Equivalent leakage area at 10 Pa by the latest blower-door test, as Canadian reports print it.',
    compute: (house, _, sheet) => equivalentLeakageArea(tested(house, sheet).fit, sheet),
  }),
  result('air.normalized-leakage', 'house', {
    dimension: 'number',
    tier: 'design',
    better: 'less',
    doc: 'Leakage area over floor area, with the height above grade (ASHRAE 62.2).',
    compute: (house, _, sheet) => {
      const area = effectiveLeakageArea(houseLeakage(house, sheet), sheet);
      const floor = heatedFloor(house);
      const height = heightAboveGrade(house);
      const value = normalizedLeakage({ area, floor, height });
      sheet?.(() => ({
        label: 'Normalized leakage',
        formula: '1000 * A / A_f * (H / 2.5)^0.4',
        inputs: { A: [area, 'area'], A_f: [floor, 'area'], H: [height, 'length'] },
        value,
        dimension: 'number',
        source: 'ASHRAE 62.2-2016 § 4.1.2',
        role: 'total',
      }));
      return value;
    },
  }),
  result('air.infiltration-design', 'house', {
    dimension: 'air-flow',
    tier: 'design',
    better: 'less',
    doc: 'Natural infiltration of the design hour of the code: the enhanced model from a test, the design equation from a leakage class.',
    compute: (house, _, sheet) => infiltrationAtDesign(house, condition(house, 'code'), sheet),
  }),
  result('air.ventilation-required', 'house', {
    dimension: 'air-flow',
    tier: 'design',
    doc: 'Whole-dwelling ventilation by ASHRAE 62.2, from floor area and bedrooms.',
    compute: (house, _, sheet) => {
      if (house.bedrooms === undefined) throw new Withheld('the house says no number of bedrooms');
      return requiredVentilation(heatedFloor(house), house.bedrooms, sheet);
    },
  }),
  result('air.ventilation-installed', 'house', {
    dimension: 'air-flow',
    tier: 'design',
    doc: 'Outdoor air that the fans of the stage move on average: balanced, exhaust and supply counted each, the larger of exhaust and supply where both are written.',
    compute: (house, _, sheet) => {
      const moved = (kind: 'balanced' | 'exhaust' | 'supply') =>
        house.envelope.ventilation.filter(v => v.kind === kind).reduce((sum, v) => sum + v.flow * v.runs, 0);
      const [balanced, exhaust, supply] = [moved('balanced'), moved('exhaust'), moved('supply')];
      const flow = balanced + Math.max(exhaust, supply);
      sheet?.(() => ({
        label: 'Ventilation installed',
        formula: 'Q_b + max(Q_e, Q_s)',
        inputs: { Q_b: [balanced, 'air-flow'], Q_e: [exhaust, 'air-flow'], Q_s: [supply, 'air-flow'] },
        value: flow,
        dimension: 'air-flow',
        role: 'total',
      }));
      return flow;
    },
  }),
  result('exponent', 'blower-door-test', {
    dimension: 'number',
    tier: 'design',
    doc: 'Exponent of the leaks by the readings of this test.',
    compute: (test, house, sheet) => fitOfTest(test, house, sheet).exponent,
  }),
  result('correlation', 'blower-door-test', {
    dimension: 'number',
    tier: 'design',
    doc: 'Correlation of the logarithms of flow and pressure of this test; 1 when the readings lie on a line.',
    compute: (test, house, sheet) => fitOfTest(test, house, sheet).correlation,
  }),
];
