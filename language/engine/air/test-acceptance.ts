import type { Si } from '../../units/index.js';
import type { LeakageFit, Reading } from './blower-door.js';

/**
 * What a valid test must hold: data for findings. ISO 9972:2015 and CAN/CGSB-149.10 (both from memory; the five points, the
 * 50 Pa, the 5 Pa of zero flow and the limits of the exponent are also seen in a published checklist).
 */
export const ACCEPTANCE = {
  'iso-9972': {
    source: 'ISO 9972:2015 §§ 5.3, 6.1',
    leastPoints: 5,
    leastHighest: 50,
    leastLowest: 10,
    largestStep: 10,
    largestZeroFlow: 5,
    exponent: { low: 0.5, high: 1 },
    leastCorrelation: 0.99,
  },
  'cgsb-149.10': {
    source: 'CAN/CGSB-149.10',
    leastPoints: 8,
    leastHighest: 50,
    leastLowest: 15,
    largestStep: 10,
    largestZeroFlow: 5,
    exponent: { low: 0.5, high: 1 },
    leastCorrelation: 0.99,
  },
} as const;
export type TestStandard = keyof typeof ACCEPTANCE;

export type Fault =
  | { readonly kind: 'few-points'; readonly points: number; readonly least: number }
  | { readonly kind: 'low-highest'; readonly pressure: Si<'pressure'>; readonly least: Si<'pressure'> }
  | { readonly kind: 'low-lowest'; readonly pressure: Si<'pressure'>; readonly least: Si<'pressure'> }
  | { readonly kind: 'wide-step'; readonly step: Si<'pressure'>; readonly most: Si<'pressure'> }
  | { readonly kind: 'zero-flow'; readonly pressure: Si<'pressure'>; readonly most: Si<'pressure'> }
  | { readonly kind: 'exponent'; readonly exponent: number; readonly low: number; readonly high: number }
  | { readonly kind: 'correlation'; readonly correlation: number; readonly least: number };

/** Everything about a test that its standard does not accept; `zeroFlow` is the larger of the pressures without fan. */
export function testFaults(
  readings: readonly Reading[],
  fit: Pick<LeakageFit, 'exponent' | 'correlation'>,
  standard: TestStandard,
  zeroFlow: Si<'pressure'> = 0,
): readonly Fault[] {
  const rule = ACCEPTANCE[standard];
  const pressures = readings.map(r => Math.abs(r.pressure)).sort((a, b) => a - b);
  const faults: Fault[] = [];
  if (pressures.length < rule.leastPoints)
    faults.push({ kind: 'few-points', points: pressures.length, least: rule.leastPoints });
  if (pressures.length > 0) {
    const lowest = pressures[0];
    const highest = pressures[pressures.length - 1];
    const leastLowest = Math.max(rule.leastLowest, 5 * Math.abs(zeroFlow));
    if (highest < rule.leastHighest) faults.push({ kind: 'low-highest', pressure: highest, least: rule.leastHighest });
    // A target pressure is met to within a pascal.
    if (lowest < leastLowest - 1) faults.push({ kind: 'low-lowest', pressure: lowest, least: leastLowest });
    const step = Math.max(0, ...pressures.slice(1).map((p, i) => p - pressures[i]));
    if (step > rule.largestStep + 2) faults.push({ kind: 'wide-step', step, most: rule.largestStep });
  }
  if (Math.abs(zeroFlow) > rule.largestZeroFlow)
    faults.push({ kind: 'zero-flow', pressure: Math.abs(zeroFlow), most: rule.largestZeroFlow });
  if (fit.exponent < rule.exponent.low || fit.exponent > rule.exponent.high)
    faults.push({ kind: 'exponent', exponent: fit.exponent, ...rule.exponent });
  if (Math.abs(fit.correlation) < rule.leastCorrelation)
    faults.push({ kind: 'correlation', correlation: Math.abs(fit.correlation), least: rule.leastCorrelation });
  return faults;
}
