import { lockedOutOutput, lockoutGap, marginWithAllAuxiliary } from '../engine/heating/shortfall.js';
import { result } from './define.js';

/** What is missing on the cold day, and whether a size or a setting is the cause. */
export const shortfallResults = [
  result('heating.shortfall', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'Heat that is missing at worst even with every auxiliary allowed at every temperature; nothing when there is enough.',
    compute: (house, _, sheet) => Math.max(0, 0 - marginWithAllAuxiliary(house, sheet).margin),
  }),
  result('heating.shortfall-temperature', 'house', {
    dimension: 'temperature',
    tier: 'design',
    doc: 'Outdoor temperature at which the margin with all auxiliary heat is smallest.',
    compute: (house, _, sheet) => marginWithAllAuxiliary(house, sheet).outdoor,
  }),
  result('heating.shortfall-load', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Load at the outdoor temperature of the shortfall.',
    compute: (house, _, sheet) => marginWithAllAuxiliary(house, sheet).load,
  }),
  result('heating.shortfall-heat-pump', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Output credited to the heat pumps at the outdoor temperature of the shortfall.',
    compute: (house, _, sheet) => marginWithAllAuxiliary(house, sheet).heatPump,
  }),
  result('heating.shortfall-auxiliary', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'All auxiliary and other heat at the outdoor temperature of the shortfall.',
    compute: (house, _, sheet) => marginWithAllAuxiliary(house, sheet).auxiliary,
  }),
  result('heating.lockout-gap', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'Heat that is missing only because a lockout of the thermostat keeps something off, at worst.',
    compute: (house, _, sheet) => lockoutGap(house, sheet).gap,
  }),
  result('heating.lockout-gap-temperature', 'house', {
    dimension: 'temperature',
    tier: 'design',
    doc: 'Outdoor temperature at which the gap of the lockouts is largest.',
    compute: (house, _, sheet) => lockoutGap(house, sheet).outdoor,
  }),
  result('heating.lockout-gap-load', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Load at the outdoor temperature of the gap of the lockouts.',
    compute: (house, _, sheet) => lockoutGap(house, sheet).load,
  }),
  result('heating.lockout-gap-allowed', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    doc: 'Heat that may run at the outdoor temperature of the gap of the lockouts.',
    compute: (house, _, sheet) => lockoutGap(house, sheet).allowed,
  }),
  result('heating.locked-out-output', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'Output that the tables still credit just below the compressor lockout of the thermostat.',
    compute: (house, _, sheet) => lockedOutOutput(house, sheet),
  }),
];
