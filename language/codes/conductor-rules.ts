import type { Clause } from './clause.js';
import type { ConductorSize, Metal, RatedTemperature } from './tables/conductor-sizes.js';
import type { AmbientBand, CountBand } from './tables/derating.js';

/** Wiring methods; `conduit` stands for single conductors in a raceway. */
export type Cable = 'non-metallic' | 'armoured' | 'conduit' | 'underground';

export interface ConductorRules {
  readonly ampacity: Clause;
  readonly ambient: { readonly bands: readonly AmbientBand[]; readonly clause: Clause };
  readonly count: { readonly bands: readonly CountBand[]; readonly clause: Clause };
  /** Unmarked terminals up to this circuit rating, A, are taken at `lower` °C, larger ones at `upper`. */
  readonly terminals: {
    readonly upTo: number;
    readonly lower: RatedTemperature;
    readonly upper: RatedTemperature;
    readonly clause: Clause;
  };
  /** Cables whose ampacity ends at a cooler column than their insulation. */
  readonly cables: Readonly<Partial<Record<Cable, { readonly column: RatedTemperature; readonly clause: Clause }>>>;
  readonly standardRatings: { readonly ratings: readonly number[]; readonly clause: Clause };
  /** The next standard rating above the ampacity may be used up to this many A. */
  readonly nextSizeUp: { readonly upTo: number; readonly clause: Clause };
  readonly small: {
    readonly limits: Readonly<Partial<Record<ConductorSize, Readonly<Partial<Record<Metal, number>>>>>>;
    readonly clause: Clause;
  };
  /** Conductors of a service that carries a whole dwelling, where the edition has a table we know. */
  readonly dwelling?: {
    readonly sizes: readonly (readonly [rating: number, sizes: Readonly<Record<Metal, ConductorSize>>])[];
    /** 75 °C ampacity over rating, at the least. */
    readonly share: number;
    readonly clause: Clause;
  };
}
