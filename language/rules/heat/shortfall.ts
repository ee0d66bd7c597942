import type { View } from '../define.js';

/** Less than this is rounding. */
const NEGLIGIBLE = 0.5;

/** What is missing at worst with all auxiliary heat allowed, with the parts at that temperature; undefined when there is enough. */
export function shortfallOf(view: View) {
  const short = view.result('heating.shortfall');
  const outdoor = view.result('heating.shortfall-temperature');
  const load = view.result('heating.shortfall-load');
  const output = view.result('heating.shortfall-heat-pump');
  const helped = view.result('heating.shortfall-auxiliary');
  if (short === undefined || outdoor === undefined || load === undefined) return undefined;
  if (output === undefined || helped === undefined || short < NEGLIGIBLE) return undefined;
  return { short, outdoor, load, output, helped };
}
