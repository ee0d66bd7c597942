import type { Outcome, Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import { studentT } from './student-t.js';

/** Pressure difference across the envelope and air flow through the fan. */
export interface Reading {
  readonly pressure: Si<'pressure'>;
  readonly flow: Si<'air-flow'>;
}

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** The law of the leaks, flow = C·Δp^n, fitted to a test of several points. */
export interface LeakageFit {
  /** C in m³/(s·Paⁿ). */
  readonly coefficient: number;
  readonly exponent: number;
  /** Correlation of the logarithms. */
  readonly correlation: number;
  readonly points: number;
  /** Standard error of the exponent. */
  readonly exponentError: number;
  /** 95 % limits by Student's distribution with N − 2 degrees of freedom. */
  readonly exponentLimits: Interval;
  readonly coefficientLimits: Interval;
  readonly flowAt: (pressure: Si<'pressure'>) => Si<'air-flow'>;
  /** 95 % limits of the flow that the fit gives at a pressure. */
  readonly flowLimitsAt: (pressure: Si<'pressure'>) => Interval;
}

/**
 * Least squares of ln flow on ln pressure, unweighted, with confidence. ISO 9972:2015 Annex C and ASTM E779-19 Annex A1 (from
 * memory). At least three readings at two pressures are needed for a confidence; whether they suffice for a valid test is
 * judged apart. Signs of pressure do not matter.
 */
export function fitLeakage(readings: readonly Reading[], sheet?: Sheet): Outcome<LeakageFit> {
  if (readings.length < 3) return { error: 'fewer than three readings give no exponent with a confidence' };
  const used = readings.map(r => ({ pressure: Math.abs(r.pressure), flow: Math.abs(r.flow) }));
  if (used.some(r => !(r.pressure > 0 && r.flow > 0)))
    return { error: 'a reading without pressure or flow has no logarithm' };
  const x = used.map(r => Math.log(r.pressure));
  const y = used.map(r => Math.log(r.flow));
  const n = x.length;
  const mx = mean(x);
  const my = mean(y);
  const sxx = covariance(x, x, mx, mx);
  const syy = covariance(y, y, my, my);
  const sxy = covariance(x, y, mx, my);
  if (!(sxx > 1e-12)) return { error: 'all readings stand at the same pressure' };

  const exponent = sxy / sxx;
  const intercept = my - exponent * mx;
  const coefficient = Math.exp(intercept);
  // Leaks lie between 0.5 and 1; a test somewhat outside is a finding, one like this is no test of leaks at all.
  if (!(Math.abs(exponent) < 5 && coefficient > 1e-12 && coefficient < 1e6))
    return { error: 'the flow does not follow the pressure as leaks do' };
  // Rounding can leave a difference below zero where the points lie on the line.
  const exponentError = Math.sqrt(Math.max(0, syy - exponent * sxy) / (n - 2) / sxx);
  const interceptError = exponentError * Math.sqrt(x.reduce((s, v) => s + v * v, 0) / n);
  const t = studentT(0.95, n - 2);
  const flowAt = (pressure: number) => coefficient * pressure ** exponent;

  sheet?.(() => ({
    label: 'Exponent of the leaks, least squares of the logarithms',
    formula: 's_xy / s_xx',
    inputs: { s_xy: [sxy, 'number'], s_xx: [sxx, 'number'] },
    value: exponent,
    dimension: 'number',
    source: 'ISO 9972:2015 Annex C',
    note: `${n} readings from ${Math.min(...used.map(r => r.pressure)).toFixed(0)} to ${Math.max(...used.map(r => r.pressure)).toFixed(0)} Pa.`,
  }));
  sheet?.(() => ({
    label: 'Flow coefficient, in m³/s at 1 Pa',
    formula: 'exp(y - n * x)',
    inputs: { y: [my, 'number'], n: [exponent, 'number'], x: [mx, 'number'] },
    value: coefficient,
    dimension: 'air-flow',
    source: 'ISO 9972:2015 Annex C',
  }));
  return {
    ok: {
      coefficient,
      exponent,
      correlation: syy > 0 ? sxy / Math.sqrt(sxx * syy) : 0,
      points: n,
      exponentError,
      exponentLimits: { low: exponent - t * exponentError, high: exponent + t * exponentError },
      coefficientLimits: {
        low: Math.exp(intercept - t * interceptError),
        high: Math.exp(intercept + t * interceptError),
      },
      flowAt,
      flowLimitsAt: pressure => {
        const deviation = (Math.log(pressure) - mx) ** 2;
        const half = t * exponentError * Math.sqrt(((n - 1) / n) * sxx + deviation);
        return { low: flowAt(pressure) * Math.exp(-half), high: flowAt(pressure) * Math.exp(half) };
      },
    },
  };
}

function mean(v: readonly number[]): number {
  return v.reduce((a, b) => a + b) / v.length;
}

function covariance(x: readonly number[], y: readonly number[], mx: number, my: number): number {
  return x.reduce((s, v, i) => s + (v - mx) * (y[i] - my), 0) / (x.length - 1);
}
