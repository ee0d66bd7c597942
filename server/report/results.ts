import type { AnalyzedHouse } from '../../language/index.js';
import { namedResults, type Named } from '../../language/index.js';
import type { Tier } from '../../language/results/index.js';
import { print, type Dimension, type UnitSystem } from '../../language/units/index.js';

type Fault = (error: unknown, what: string) => void;

/** The results of one house, stage by stage, as every writer gets them. */
export interface HouseResults {
  readonly path: string;
  readonly name: string;
  readonly title: string | undefined;
  readonly stages: readonly StageResults[];
  readonly system: UnitSystem;
  readonly currency: string | undefined;
}

export interface StageResults {
  readonly name: string;
  readonly title: string | undefined;
  readonly view: AnalyzedHouse['views'][number];
  readonly results: readonly Named[];
}

export interface Chosen {
  readonly upto: Tier;
  readonly system: UnitSystem;
  /** Which stages, by name; all when undefined. */
  readonly stages: ReadonlySet<string> | undefined;
  /** Which results. */
  readonly wanted: (named: Named) => boolean;
  readonly fault: Fault;
}

export function resultsOfHouse(path: string, { built, views, currency }: AnalyzedHouse, chosen: Chosen): HouseResults {
  const { upto, system, stages, wanted, fault } = chosen;
  return {
    path,
    name: built.declared.name,
    title: built.declared.title,
    system,
    currency,
    stages: views
      .filter(view => !stages || stages.has(view.name))
      .map(view => ({
        name: view.name,
        title: view.built.declared?.title,
        view,
        results: namedResults(view, upto, fault).filter(wanted),
      })),
  };
}

/** Prints a number of a house in the units of its reader. */
export const say = (
  si: number,
  dimension: Dimension,
  { system, currency }: Pick<HouseResults, 'system' | 'currency'>,
) => print(si, dimension, { system, ...(currency ? { currency } : {}) });

/** The names of all results of a house in their order, each once: not every stage has every block. */
export function namesOf(house: HouseResults): string[] {
  const names: string[] = [];
  for (const stage of house.stages) {
    let after = -1;
    for (const { name } of stage.results) {
      const at = names.indexOf(name);
      if (at >= 0) after = at;
      else names.splice(++after, 0, name);
    }
  }
  return names;
}
