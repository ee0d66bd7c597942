import { Withheld } from '../../model/index.js';

/** A number that physics asks to be above nothing; anything else withholds the result that rests on it. */
export function positive(value: number, what: string): number {
  if (!(value > 0 && Number.isFinite(value))) throw new Withheld(`${what} is not above zero`);
  return value;
}

/** A number that may be nothing, but not less. */
export function notNegative(value: number, what: string): number {
  if (!(value >= 0 && Number.isFinite(value))) throw new Withheld(`${what} is less than zero`);
  return value;
}
