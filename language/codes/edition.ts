import type { CircuitRules } from './circuit-rules.js';
import type { Clause } from './clause.js';
import type { ConductorRules } from './conductor-rules.js';
import type { ServiceMethod } from './service-method.js';

export const editionNames = ['cec-2021', 'cec-2024', 'nec-2020', 'nec-2023', 'nec-2026'] as const;

export type EditionName = (typeof editionNames)[number];

/**
 * All that the calculation needs to know of one edition of an electrical code. Editions differ in data alone: no
 * calculation asks for the name.
 */
export interface Edition {
  readonly name: EditionName;
  readonly title: string;
  /** A rule is quoted as `book` and clause. */
  readonly book: string;
  /** Watts are divided by the service voltage. */
  readonly divisor: Clause;
  readonly area: AreaRule;
  /** In order of preference; the first that allows the service's rating is taken unless the house says otherwise. */
  readonly methods: readonly [ServiceMethod, ...ServiceMethod[]];
  readonly minimum: MinimumService;
  /** Long-lasting parts of the service load, as the breaker and conductors of the service see them. */
  readonly serviceContinuous: ServiceContinuous;
  readonly management: ManagementRule;
  readonly circuits: CircuitRules;
  readonly conductors: ConductorRules;
  readonly voltageDrop: VoltageDropRule;
  readonly legs: Clause;
  readonly panel: PanelRule;
}

export interface AreaRule {
  readonly measured: 'inside' | 'outside';
  /** Share of each storey that counts. */
  readonly aboveGrade: number;
  readonly belowGrade: number;
  /** Storeys lower than this, m, do not count. */
  readonly leastHeight: number;
  readonly clause: Clause;
}

/** The smallest service that a dwelling may have, however little it draws: a rating, not a load. */
export interface MinimumService {
  /** Rating in A by floor area above grade, from `from` m2 on, largest first. */
  readonly steps: readonly { readonly from: number; readonly rating: number }[];
  readonly clause: Clause;
}

export interface ServiceContinuous {
  /** Vehicle charging and set-points count this many times on the service's breaker and conductors. */
  readonly factor: number;
  readonly clause: Clause;
}

/** What the calculated load gains from a load manager. */
export interface ManagementRule {
  readonly credits: 'vehicle-charging' | 'all-loads';
  /**
   * `not-counted`: a load that the manager keeps off while the service is full is left out.
   * `set-point`: the service carries what the manager allows, and never less than what it cannot control.
   */
  readonly basis: 'not-counted' | 'set-point';
  /** Largest setting as a share of the service's breaker, 0 to 1. */
  readonly share: number;
  readonly clause: Clause;
  /** For other loads than vehicle charging, where their credit rests on other words than `clause`. */
  readonly others?: Clause;
  /** What the manager itself must be before it may be credited, where the edition says so. */
  readonly device?: { readonly requires: string; readonly clause: Clause };
  /** For a manager that watches a group of loads and not the whole service. */
  readonly group: Clause;
  readonly limit: Clause;
}

export interface VoltageDropRule {
  readonly branch: number;
  readonly total: number;
  readonly standing: 'mandatory' | 'recommended';
  /** The current it is computed with: of the load, or where the load is not known a share of the breaker. */
  readonly shareOfBreaker: number;
  readonly clause: Clause;
}

export interface PanelRule {
  /** Circuit positions a panel must have, by service rating up to `upTo` A; none where the edition asks for none. */
  readonly positions: readonly { readonly upTo: number; readonly positions: number }[];
  readonly spare: number;
  readonly clause: Clause;
  readonly tandem: Clause;
}
