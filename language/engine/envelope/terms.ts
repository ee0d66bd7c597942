import type { Dimension } from '../../units/index.js';
import type { Input } from '../worksheet.js';

/** A sum of like quantities as a worksheet line: the formula `R_1 + R_2 + …` and its inputs. */
export function terms(
  symbol: string,
  values: readonly number[],
  dimension: Dimension,
): { formula: string; inputs: Record<string, Input> } {
  const names = values.map((_, i) => `${symbol}_${i + 1}`);
  return {
    formula: names.join(' + ') || '0',
    inputs: Object.fromEntries(values.map((v, i) => [names[i], [v, dimension] as const])),
  };
}
