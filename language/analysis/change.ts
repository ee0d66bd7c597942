import { print, type Dimension } from '../units/index.js';
import type { UnitSystem } from '../units/index.js';
import type { Named } from './results.js';

/** How a result moved against the stage before. */
export interface Move {
  /** The difference with its sign, `+1.2 kW`; empty when nothing moved that would be seen in print. */
  readonly text: string;
  /** Whether the change is for the better; undefined where neither is. */
  readonly isBetter: boolean | undefined;
}

export function moveOf(
  now: Named,
  before: Named | undefined,
  look: { readonly system: UnitSystem; readonly currency: string | undefined },
): Move {
  const still: Move = { text: '', isBetter: undefined };
  if (!before || !('value' in now.outcome) || !('value' in before.outcome)) return still;
  const { dimension, better } = now.result;
  const more = { system: look.system, ...(look.currency ? { currency: look.currency } : {}) };
  if (print(now.outcome.value, dimension, more) === print(before.outcome.value, dimension, more)) return still;
  const difference = now.outcome.value - before.outcome.value;
  const text = print(difference, differenceOf(dimension), more);
  return {
    text: difference > 0 ? `+${text}` : text,
    isBetter: better === undefined ? undefined : (better === 'more') === difference > 0,
  };
}

/** Two temperatures differ by kelvins, not by a temperature. */
const differenceOf = (dimension: Dimension): Dimension =>
  dimension === 'temperature' ? 'temperature-difference' : dimension;
