import { cite, type Duty, type Edition } from '../../codes/index.js';
import type { Sheet, Step } from '../worksheet.js';

/** One load of a circuit. */
export interface CircuitLoad {
  readonly label: string;
  readonly duty: Duty;
  /** Running current, A. */
  readonly current: number;
  /** Where the current comes from, when it is not itself stated. */
  readonly from?: Pick<Step, 'formula' | 'inputs' | 'source' | 'note'>;
  /** Least circuit ampacity and largest breaker, from the nameplate or computed for a compressor, A. */
  readonly mca?: number;
  readonly mocp?: number;
}

/** How breaker and panel are marked for loads that last. */
export type Marking = 'unmarked' | 'fully-rated';

export interface CircuitNeed {
  /** Running current of all loads, A. */
  readonly load: number;
  /** Least breaker and least conductor ampacity, A. */
  readonly breaker: number;
  readonly conductor: number;
  /** Largest breaker that a nameplate allows, A. */
  readonly largestBreaker: number | undefined;
}

/**
 * What a circuit must carry, A. Each load is multiplied by the factor of its duty: what lasts, fixed heat, storage water
 * heaters and chargers by a quarter more; equipment with a least circuit ampacity on its nameplate by that figure. Equipment
 * marked for full continuous load needs no quarter more.
 */
export function circuitNeed(
  loads: readonly CircuitLoad[],
  marking: Marking,
  edition: Edition,
  sheet?: Sheet,
): CircuitNeed {
  return {
    load: loads.reduce((sum, each) => sum + each.current, 0),
    breaker: leastOf('breaker', { loads, marking, edition }, sheet),
    conductor: leastOf('conductor', { loads, marking, edition }),
    largestBreaker: loads.reduce<number | undefined>(
      (least, { mocp }) => (mocp === undefined ? least : Math.min(mocp, least ?? mocp)),
      undefined,
    ),
  };
}

interface LoadedCircuit {
  readonly loads: readonly CircuitLoad[];
  readonly marking: Marking;
  readonly edition: Edition;
}

/**
 * Least breaker or least ampacity of the conductors of a circuit, A. Where the edition has the lasting part limited, the
 * other loads fit into the quarter that it leaves.
 */
export function leastOf(of: 'breaker' | 'conductor', circuit: LoadedCircuit, sheet?: Sheet): number {
  const { loads, marking, edition } = circuit;
  const { form, clause } = edition.circuits.continuous;
  const needs = loads.map(each => needOf(of, each, marking, edition, sheet));
  const own = loads.map(({ mca, current }) => mca ?? current);
  const all = own.reduce((sum, each) => sum + each, 0);
  const lasting = needs.reduce((sum, need, i) => (need > own[i] ? sum + need : sum), 0);
  const added = needs.reduce((sum, need) => sum + need, 0);
  const value = form === 'limit' ? Math.max(all, lasting) : added;
  sheet?.(() => ({
    label: of === 'breaker' ? 'Least breaker of the circuit' : 'Least ampacity of the conductors',
    formula: form === 'limit' ? 'max(all, lasting)' : undefined,
    inputs: form === 'limit' ? { all: [all, 'current'], lasting: [lasting, 'current'] } : undefined,
    value,
    dimension: 'current',
    source: cite(clause),
    note: form === 'limit' ? 'all loads, or the lasting ones with their factor' : 'sum of the lines above',
    role: 'total',
  }));
  return value;
}

function needOf(
  of: 'breaker' | 'conductor',
  load: CircuitLoad,
  marking: Marking,
  edition: Edition,
  sheet?: Sheet,
): number {
  const rule = edition.circuits.duties[load.duty];
  if (load.mca !== undefined) {
    const mca = load.mca;
    sheet?.(() => ({
      label: `${load.label}, least circuit ampacity`,
      value: mca,
      dimension: 'current',
      source: cite(edition.circuits.motorCompressor.nameplate),
      role: 'item',
    }));
    return mca;
  }
  const factor = marking === 'fully-rated' ? 1 : rule[of];
  sheet?.(() => ({
    label: load.label,
    formula: 'factor * current',
    inputs: { factor: [factor, 'ratio'], current: [load.current, 'current'] },
    value: factor * load.current,
    dimension: 'current',
    source: cite(rule.clause),
    role: 'item',
  }));
  return factor * load.current;
}

/** Largest lasting current on a breaker, A. */
export const continuousLimit = (breaker: number, marking: Marking, { circuits }: Edition): number =>
  (marking === 'fully-rated' ? 1 : circuits.continuous.share) * breaker;

/** Largest breaker over a storage water heater that is alone on its circuit, A before rounding up. */
export const waterHeaterBreaker = (current: number, { circuits }: Edition): number =>
  circuits.waterHeater.atMost * current;

/** Current of one range on its own circuit, by its demand and not its rating. */
export function rangeOnCircuit(
  { rating, voltage }: { readonly rating: number; readonly voltage: number },
  { circuits }: Edition,
): Pick<CircuitLoad, 'current' | 'from'> {
  const { load, upTo, beyond, clause } = circuits.range;
  return {
    current: Math.min(rating, load + beyond * Math.max(0, rating - upTo)) / voltage,
    from: {
      formula: 'min(rating, base + beyond * max(0, rating - limit)) / voltage',
      inputs: {
        rating: [rating, 'power'],
        base: [load, 'power'],
        beyond: [beyond, 'ratio'],
        limit: [upTo, 'power'],
        voltage: [voltage, 'voltage'],
      },
      source: cite(clause),
      note: 'demand of one range on its circuit',
    },
  };
}

/** Current of a load from its power, A. */
export const byPower = (power: number, voltage: number): Pick<CircuitLoad, 'current' | 'from'> => ({
  current: power / voltage,
  from: {
    formula: 'power / voltage',
    inputs: { power: [power, 'power'], voltage: [voltage, 'voltage'] },
    source: 'power as stated',
  },
});
