import type { Rule } from '../define.js';
import openDuctLeft from './open-duct-left.js';
import orphanedFlue from './orphaned-flue.js';
import testDoesNotFit from './test-does-not-fit.js';
import tightWithoutVentilation from './tight-without-ventilation.js';
import ventilationBelowStandard from './ventilation-below-standard.js';

export const airRules: readonly Rule[] = [
  openDuctLeft,
  orphanedFlue,
  testDoesNotFit,
  tightWithoutVentilation,
  ventilationBelowStandard,
];
