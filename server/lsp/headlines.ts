import { headlines, moveOf, type AnalyzedHouse, type Fault, type StageView } from '../../language/index.js';
import { print, type UnitSystem } from '../../language/units/index.js';
import type { HeadlineResult } from '../protocol/summary.js';

/** The few results of a stage that a first look shows. */
export function headlinesOf(view: StageView, house: AnalyzedHouse, system: UnitSystem, fault: Fault): HeadlineResult[] {
  const before = view.built.before === undefined ? undefined : house.views[view.built.before];
  const then = before ? headlines(before, fault) : [];
  const { currency } = house;
  return headlines(view, fault).map((now, i) => {
    const { outcome, result, name } = now;
    if ('withheld' in outcome) return { name, text: '', move: '', withheld: outcome.withheld };
    const text = print(outcome.value, result.dimension, { system, ...(currency ? { currency } : {}) });
    return { name, text, move: moveOf(now, then[i], { system, currency }).text };
  });
}
