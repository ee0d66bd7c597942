import { headlines, moveOf, type AnalyzedHouse, type Fault, type StageView } from '../../language/index.js';
import { print, type UnitSystem } from '../../language/units/index.js';

/** A headline result as it is shown: its name, its value, and how it moved against the stage before. */
export interface Headline {
  readonly name: string;
  readonly text: string;
  readonly move: string;
  readonly isWithheld: boolean;
}

/** The few results of a stage that a first look shows. */
export function headlinesOf(view: StageView, house: AnalyzedHouse, system: UnitSystem, fault: Fault): Headline[] {
  const before = view.built.before === undefined ? undefined : house.views[view.built.before];
  const then = before ? headlines(before, fault) : [];
  const { currency } = house;
  return headlines(view, fault).map((now, i) => {
    const { outcome, result, name } = now;
    if ('withheld' in outcome) return { name, text: `withheld: ${outcome.withheld}`, move: '', isWithheld: true };
    const text = print(outcome.value, result.dimension, { system, ...(currency ? { currency } : {}) });
    return { name, text, move: moveOf(now, then[i], { system, currency }).text, isWithheld: false };
  });
}
