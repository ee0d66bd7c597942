import { cite, type Duty, type Edition } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';

/** One load of a circuit. */
export interface CircuitLoad {
  readonly label: string;
  readonly duty: Duty;
  /** Running current, A. */
  readonly current: number;
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
  const needs = loads.map(each => needOf(each, marking, edition, sheet));
  const { form, clause } = edition.circuits.continuous;
  const together = form === 'limit' ? limited : added;
  const need: CircuitNeed = {
    load: loads.reduce((sum, each) => sum + each.current, 0),
    breaker: together(loads, needs, 'breaker'),
    conductor: together(loads, needs, 'conductor'),
    largestBreaker: loads.reduce<number | undefined>(
      (least, { mocp }) => (mocp === undefined ? least : Math.min(mocp, least ?? mocp)),
      undefined,
    ),
  };
  if (loads.length > 1)
    sheet?.(() => ({
      label: 'Least breaker for all loads of the circuit',
      value: need.breaker,
      dimension: 'current',
      source: cite(clause),
      note: form === 'limit' ? 'the larger of all loads and of the lasting ones with their factor' : undefined,
      role: 'total',
    }));
  return need;
}

type Need = Pick<CircuitNeed, 'breaker' | 'conductor'>;

const added = (_: readonly CircuitLoad[], needs: readonly Need[], of: keyof Need): number =>
  needs.reduce((total, need) => total + need[of], 0);

/** Under a limit on the lasting part, the other loads fit into the quarter that it leaves. */
function limited(loads: readonly CircuitLoad[], needs: readonly Need[], of: keyof Need): number {
  const own = loads.map(({ mca, current }) => mca ?? current);
  const all = own.reduce((sum, each) => sum + each, 0);
  const lasting = needs.reduce((sum, need, i) => (need[of] > own[i] ? sum + need[of] : sum), 0);
  return Math.max(all, lasting);
}

function needOf(load: CircuitLoad, marking: Marking, edition: Edition, sheet?: Sheet): Need {
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
    return { breaker: mca, conductor: mca };
  }
  const factor = marking === 'fully-rated' ? { breaker: 1, conductor: 1 } : rule;
  sheet?.(() => ({
    label: load.label,
    formula: 'factor * current',
    inputs: { factor: [factor.breaker, 'ratio'], current: [load.current, 'current'] },
    value: factor.breaker * load.current,
    dimension: 'current',
    source: cite(rule.clause),
    role: 'item',
  }));
  return { breaker: factor.breaker * load.current, conductor: factor.conductor * load.current };
}

/** Largest lasting current on a breaker, A. */
export const continuousLimit = (breaker: number, marking: Marking, { circuits }: Edition): number =>
  (marking === 'fully-rated' ? 1 : circuits.continuous.share) * breaker;

/** Largest breaker over a storage water heater that is alone on its circuit, A before rounding up. */
export const waterHeaterBreaker = (current: number, { circuits }: Edition): number =>
  circuits.waterHeater.atMost * current;

/** Watts of one range on its own circuit. */
export function rangeOnCircuit(rating: number, { circuits }: Edition): number {
  const { load, upTo, beyond } = circuits.range;
  return Math.min(rating, load + beyond * Math.max(0, rating - upTo));
}
