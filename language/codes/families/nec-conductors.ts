import type { ClauseOf } from '../clause.js';
import type { ConductorRules } from '../conductor-rules.js';
import { necAmbient, necCount } from '../tables/derating.js';
import { dwellingServiceConductors } from '../tables/dwelling-service.js';
import { smallConductorLimits } from '../tables/small-conductors.js';

/** Rules for conductors that did not change from 2020 to 2026 as far as recalled; the list of ratings did. */
export const necConductors = (at: ClauseOf, standardRatings: ConductorRules['standardRatings']): ConductorRules => ({
  ampacity: at('Table 310.16'),
  ambient: { bands: necAmbient, clause: at('Table 310.15(B)(1)', 'memory') },
  count: { bands: necCount, clause: at('Table 310.15(C)(1)', 'memory') },
  terminals: { upTo: 100, lower: 60, upper: 75, clause: at('110.14(C)(1)', 'memory') },
  cables: { 'non-metallic': { column: 60, clause: at('334.80', 'memory') } },
  standardRatings,
  nextSizeUp: { upTo: 800, clause: at('240.4(B)') },
  small: { limits: smallConductorLimits, clause: at('240.4(D)') },
  dwelling: { sizes: dwellingServiceConductors, share: 0.83, clause: at('310.12, Table 310.12') },
});
