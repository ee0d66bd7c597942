import type { Clause } from './clause.js';

/** How a load uses its circuit; each has factors of its own in every edition. */
export type Duty =
  | 'non-continuous'
  | 'continuous'
  | 'fixed-heat'
  | 'storage-water-heater'
  | 'motor-compressor'
  | 'vehicle'
  | 'range'
  | 'dryer';

/** Rated currents are multiplied by these to give the least breaker and the least conductor. */
export interface DutyRule {
  readonly breaker: number;
  readonly conductor: number;
  readonly clause: Clause;
}

export interface CircuitRules {
  readonly duties: Readonly<Record<Duty, DutyRule>>;
  /** Several continuous and other loads on one circuit. */
  readonly continuous: {
    /**
     * `add`: the continuous part is multiplied and added to the rest. `limit`: the continuous part stays below a share of
     * the rating and the whole below the rating.
     */
    readonly form: 'add' | 'limit';
    /** Share of a breaker's rating that a continuous load may take, 0 to 1. */
    readonly share: number;
    readonly clause: Clause;
  };
  readonly motorCompressor: {
    /** Of the rated-load current, for the conductor. */
    readonly conductor: number;
    readonly breaker: number;
    /** Where the smaller breaker does not carry the start. */
    readonly breakerIfItWillNotStart: number;
    readonly smallestBreaker: number;
    readonly nameplate: Clause;
    readonly clause: Clause;
  };
  readonly waterHeater: {
    /** A breaker over a single water heater is at most this share of its current, next size up. */
    readonly atMost: number;
    /** Up to this volume, m3, a storage tank counts as continuous. */
    readonly upTo: number;
    readonly clause: Clause;
  };
  readonly heat: {
    /** Heater elements are divided so that none exceeds this current, A, behind a breaker of at most `breaker`. */
    readonly element: number;
    readonly breaker: number;
    readonly clause: Clause;
    /**
     * Present where the breaker over a conductor that feeds fixed resistance heat alone may be this multiple of the
     * conductor's ampacity, next size up.
     */
    readonly breakerOverConductor?: { readonly factor: number; readonly several: number; readonly clause: Clause };
    /** Blower and heat run together; shedding must not part them. */
    readonly fan: Clause;
    /** What else may be on a circuit for heat. */
    readonly dedicated: Clause;
  };
  readonly range: {
    readonly from: number;
    readonly leastBreaker: number;
    /** W for one range on its circuit up to `upTo`, then this share of the excess. */
    readonly load: number;
    readonly upTo: number;
    readonly beyond: number;
    readonly clause: Clause;
  };
  readonly vehicle: { readonly ownCircuit: Clause; readonly setting: Clause };
  /** Share of a 15 or 20 A circuit with several outlets. */
  readonly severalOutlets: {
    readonly plug: number;
    readonly fastened: number;
    readonly upTo: number;
    readonly clause: Clause;
  };
}
