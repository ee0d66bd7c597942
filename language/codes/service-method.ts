import type { Clause } from './clause.js';
import type { RangeDemand } from './tables/range-demand.js';

/** The first part of a load counts in full, what lies beyond it at a share. */
export interface Tier {
  /** W counted in full. */
  readonly full: number;
  /** Share of the rest, 0 to 1. */
  readonly beyond: number;
  readonly clause: Clause;
}

export interface Factor {
  readonly factor: number;
  readonly clause: Clause;
}

/**
 * One load for the living area, then appliances line by line, heat with its own demand factors, and a floor under the sum.
 * The form of the Canadian rule for a single dwelling.
 */
export interface BasicAndAppliances {
  readonly method: 'basic-and-appliances';
  readonly title: string;
  readonly total: Clause;
  readonly leastRating: number;
  readonly basic: {
    /** W for the first `area` m2. */
    readonly first: number;
    readonly area: number;
    /** W for each further `area` m2 or portion. */
    readonly step: number;
    readonly clause: Clause;
  };
  readonly heatAndCooling: Clause;
  /** Of heating and cooling that cannot run together only the larger counts. */
  readonly larger: Clause;
  /** Heat with a thermostat in each room. */
  readonly roomHeat: Tier;
  readonly centralHeat: Factor;
  /** One range: W up to a rating, then a share of what its rating exceeds it by. */
  readonly range: { readonly load: number; readonly upTo: number; readonly beyond: number; readonly clause: Clause };
  /** Instant water heaters and heaters of pools and tubs. */
  readonly inFull: Factor;
  readonly vehicle: Factor;
  readonly others: {
    /** Loads of at most this rating, W each, are in the basic load. */
    readonly over: number;
    readonly withRange: Factor;
    readonly withoutRange: Tier;
  };
}

/** What the American methods count for light, outlets and the vehicle charger. */
export interface UnitLoads {
  /** W per m2 of the dwelling. */
  readonly lighting: { readonly perArea: number; readonly perSquareFoot: number; readonly clause: Clause };
  /** W for each small-appliance circuit and laundry circuit, and how many there are at the least. */
  readonly smallAppliance: { readonly each: number; readonly atLeast: number; readonly clause: Clause };
  readonly laundry: { readonly each: number; readonly atLeast: number; readonly clause: Clause };
  /** A charger counts as its rating, but not less than this many W. */
  readonly vehicle: { readonly atLeast: number; readonly clause: Clause };
}

/**
 * Ways to count heating and cooling, of which the largest is taken: each names what it counts in full and what at a
 * share, and the number of separately controlled heaters for which it stands.
 */
export interface HvacSelection {
  readonly name: string;
  readonly inFull: readonly HvacPart[];
  readonly reduced: readonly HvacPart[];
  readonly factor: number;
  readonly heaters?: { readonly from: number; readonly below: number };
  readonly clause: Clause;
}

export type HvacPart = 'cooling' | 'heat-pump' | 'supplementary' | 'central-or-room' | 'storage' | 'blower';

/** All that is not heating or cooling in one pool, most of it at a share: the optional American method. */
export interface OptionalDwelling {
  readonly method: 'optional-dwelling';
  readonly title: string;
  readonly total: Clause;
  /** The method is for services of at least this rating, A. */
  readonly leastRating: number;
  readonly units: UnitLoads;
  readonly nameplates: Clause;
  readonly pool: Tier;
  readonly hvac: { readonly selections: readonly HvacSelection[]; readonly clause: Clause };
  /** The pool takes the charger under one reading of the text, a line of its own under the other. */
  readonly vehicle: Factor & { readonly reading: 'own-line' | 'in-pool' };
}

/** Each kind of appliance by its own demand table: the standard American method. */
export interface StandardDwelling {
  readonly method: 'standard-dwelling';
  readonly title: string;
  readonly total: Clause;
  readonly leastRating: number;
  readonly units: UnitLoads;
  /** Shares of light and outlets: in full up to the first limit (W), then by step. */
  readonly lighting: {
    readonly steps: readonly { readonly upTo: number; readonly factor: number }[];
    readonly clause: Clause;
  };
  readonly fastened: {
    readonly from: number;
    /** W from which an appliance is counted among them. */
    readonly leastRating: number;
    readonly factor: number;
    readonly clause: Clause;
  };
  readonly dryer: { readonly atLeast: number; readonly clause: Clause };
  readonly range: RangeDemand & { readonly clause: Clause };
  readonly heat: Factor;
  readonly larger: Clause;
  readonly largestMotor: Factor;
  /** Share of range and dryer that the neutral carries. */
  readonly neutral: Factor;
}

export type ServiceMethod = BasicAndAppliances | OptionalDwelling | StandardDwelling;
