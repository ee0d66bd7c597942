import { cite, type Edition } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { standardRatingUpTo } from './breaker.js';

export interface CompressorNameplate {
  /** Rated-load current of the compressor, A. */
  readonly rla: number;
  /** Full-load current of what runs with it, A. */
  readonly others: number;
}

/**
 * Least conductor and largest breaker of a motor-compressor, A, for equipment whose nameplate gives neither: printed values
 * govern and are never recomputed. The breaker is rounded down, but not below the smallest in use.
 */
export function compressorCircuit(
  { rla, others }: CompressorNameplate,
  edition: Edition,
  sheet?: Sheet,
): { readonly mca: number; readonly mocp: number; readonly mocpIfItWillNotStart: number } {
  const rule = edition.circuits.motorCompressor;
  const mca = rule.conductor * rla + others;
  sheet?.(() => ({
    label: 'Least circuit ampacity of the compressor',
    formula: 'factor * rla + others',
    inputs: { factor: [rule.conductor, 'ratio'], rla: [rla, 'current'], others: [others, 'current'] },
    value: mca,
    dimension: 'current',
    source: cite(rule.clause),
    note: 'computed, because the nameplate gives none',
  }));
  const down = (factor: number) =>
    Math.max(rule.smallestBreaker, standardRatingUpTo(factor * rla + others, edition) ?? rule.smallestBreaker);
  return { mca, mocp: down(rule.breaker), mocpIfItWillNotStart: down(rule.breakerIfItWillNotStart) };
}
