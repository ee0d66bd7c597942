import type { CircuitRules } from '../circuit-rules.js';
import type { ClauseOf } from '../clause.js';
import type { ConductorRules } from '../conductor-rules.js';
import type { AreaRule, MinimumService, PanelRule, ServiceContinuous, VoltageDropRule } from '../edition.js';
import type { BasicAndAppliances } from '../service-method.js';
import { cecAmbient, cecCount } from '../tables/derating.js';
import { smallConductorLimits } from '../tables/small-conductors.js';
import { standardRatings } from '../tables/standard-ratings.js';

/** Rule 8-200 1) for a single dwelling; its words in the 2024 edition were not seen. */
export const singleDwelling = (at: ClauseOf): BasicAndAppliances => ({
  method: 'basic-and-appliances',
  title: 'single dwelling, 8-200 1)',
  total: at('8-200 1)a)'),
  leastRating: 0,
  basic: { first: 5000, area: 90, step: 1000, clause: at('8-200 1)a)i),ii)') },
  heatAndCooling: at('8-200 1)a)iii)'),
  larger: at('8-106 3)', 'in-part'),
  roomHeat: { full: 10000, beyond: 0.75, clause: at('62-118 3)') },
  centralHeat: { factor: 1, clause: at('62-118', 'memory') },
  range: { load: 6000, upTo: 12000, beyond: 0.4, clause: at('8-200 1)a)iv)') },
  inFull: { factor: 1, clause: at('8-200 1)a)v)', 'in-part') },
  vehicle: { factor: 1, clause: at('8-200 1)a)vi)') },
  others: {
    over: 1500,
    withRange: { factor: 0.25, clause: at('8-200 1)a)vii)') },
    withoutRange: { full: 6000, beyond: 0.25, clause: at('8-200 1)a)vii), no electric range', 'memory') },
  },
});

export const livingArea = (at: ClauseOf): AreaRule => ({
  measured: 'inside',
  aboveGrade: 1,
  belowGrade: 0.75,
  leastHeight: 1.8,
  clause: at('8-110'),
});

export const cecMinimum = (at: ClauseOf): MinimumService => ({
  steps: [
    { from: 80, rating: 100 },
    { from: 0, rating: 60 },
  ],
  clause: at('8-200 1)b)'),
});

/** The load of a dwelling by 8-200 is not treated as continuous. */
export const cecServiceContinuous = (at: ClauseOf): ServiceContinuous => ({
  factor: 1,
  clause: at('8-200 3)', 'memory'),
});

const OF_UNMARKED_DEVICE = 0.8;
const CONTINUOUS = 1 / OF_UNMARKED_DEVICE;

/** An unmarked breaker carries 80 % of its rating as a continuous load, 8-104; Section 28 and 26 numbers were not seen. */
export const cecCircuits = (at: ClauseOf): CircuitRules => ({
  duties: {
    'non-continuous': { breaker: 1, conductor: 1, clause: at('8-104 1),2)') },
    continuous: { breaker: CONTINUOUS, conductor: CONTINUOUS, clause: at('8-104 3),6)') },
    'fixed-heat': { breaker: CONTINUOUS, conductor: 1, clause: at('62-114 7),8)') },
    'storage-water-heater': { breaker: CONTINUOUS, conductor: CONTINUOUS, clause: at('8-104 3),6)', 'memory') },
    'motor-compressor': { breaker: 1, conductor: 1, clause: at('Section 28, nameplate', 'memory') },
    vehicle: { breaker: CONTINUOUS, conductor: CONTINUOUS, clause: at('8-104 6)', 'memory') },
    range: { breaker: 1, conductor: 1, clause: at('8-300', 'memory') },
    dryer: { breaker: 1, conductor: 1, clause: at('8-104 1),2)') },
  },
  continuous: { form: 'limit', share: OF_UNMARKED_DEVICE, clause: at('8-104 5),6)') },
  motorCompressor: {
    conductor: 1.25,
    breaker: 1.75,
    breakerIfItWillNotStart: 2.25,
    smallestBreaker: 15,
    nameplate: at('Section 28, nameplate', 'memory'),
    clause: at('Section 28, refrigerant motor-compressors, figures of the American code', 'doubtful'),
  },
  waterHeater: { atMost: 1.5, upTo: 0.454, clause: at('14-104, figure of the American code', 'doubtful') },
  heat: {
    element: 48,
    breaker: 60,
    clause: at('62-114, figure of the American code', 'doubtful'),
    breakerOverConductor: { factor: CONTINUOUS, several: 30, clause: at('62-114 7)') },
    fan: at('62-110', 'in-part'),
    dedicated: at('62-110'),
  },
  range: { from: 8750, leastBreaker: 40, load: 8000, upTo: 12000, beyond: 0.4, clause: at('8-300', 'memory') },
  vehicle: { ownCircuit: at('86-300'), setting: at('8-104 6)', 'memory') },
  severalOutlets: { plug: 0.8, fastened: 0.8, upTo: 20, clause: at('8-104 6)') },
});

/** Table 39 for service conductors of a dwelling was not seen, so the edition is not given one. */
export const cecConductors = (at: ClauseOf): ConductorRules => ({
  ampacity: at('Tables 2 and 4', 'in-part'),
  ambient: { bands: cecAmbient, clause: at('Table 5A', 'memory') },
  count: { bands: cecCount, clause: at('Table 5C', 'memory') },
  terminals: { upTo: 100, lower: 60, upper: 75, clause: at('4-006', 'in-part') },
  cables: {},
  standardRatings: { ratings: standardRatings, clause: at('Table 13', 'memory') },
  nextSizeUp: { upTo: 600, clause: at('14-104 1), Table 13', 'memory') },
  small: { limits: smallConductorLimits, clause: at('14-104 2)', 'in-part') },
});

export const cecVoltageDrop = (at: ClauseOf): VoltageDropRule => ({
  branch: 0.03,
  total: 0.05,
  standing: 'mandatory',
  shareOfBreaker: 0.8,
  clause: at('8-102'),
});

/** Sixteen positions at 60 A were seen, the rest is from memory; half of them for two-pole breakers. */
export const cecPanel = (at: ClauseOf): PanelRule => ({
  positions: [
    { upTo: 60, positions: 16 },
    { upTo: 100, positions: 24 },
    { upTo: 125, positions: 30 },
    { upTo: 200, positions: 40 },
  ],
  spare: 2,
  clause: at('8-108 1)', 'in-part'),
  tandem: at('8-108, panel listing', 'memory'),
});
