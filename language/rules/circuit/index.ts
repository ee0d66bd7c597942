import type { Rule } from '../define.js';
import aboveMaximumBreaker from './above-maximum-breaker.js';
import breakerNotStandard from './breaker-not-standard.js';
import chargerSetting from './charger-setting.js';
import conductorTooSmall from './conductor-too-small.js';
import continuousLoad from './continuous-load.js';
import heaterSharesAirHandler from './heater-shares-air-handler.js';
import overloaded from './overloaded.js';
import voltageDrop from './voltage-drop.js';

export const circuitRules: readonly Rule[] = [
  aboveMaximumBreaker,
  breakerNotStandard,
  chargerSetting,
  conductorTooSmall,
  continuousLoad,
  heaterSharesAirHandler,
  overloaded,
  voltageDrop,
];
