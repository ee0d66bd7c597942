import type { CircuitRules } from '../circuit-rules.js';
import type { ClauseOf } from '../clause.js';

const QUARTER_MORE = 1.25;
const TANK_OF_120_GALLONS = 0.454;

/** Rules for branch circuits that did not change from 2020 to 2026 as far as recalled. */
export const necCircuits = (at: ClauseOf): CircuitRules => ({
  duties: {
    'non-continuous': { breaker: 1, conductor: 1, clause: at('210.20(A)') },
    continuous: { breaker: QUARTER_MORE, conductor: QUARTER_MORE, clause: at('210.20(A)') },
    'fixed-heat': { breaker: QUARTER_MORE, conductor: QUARTER_MORE, clause: at('424.4(B)') },
    'storage-water-heater': { breaker: QUARTER_MORE, conductor: QUARTER_MORE, clause: at('422.13') },
    'motor-compressor': { breaker: 1, conductor: 1, clause: at('440.4(B)') },
    vehicle: { breaker: QUARTER_MORE, conductor: QUARTER_MORE, clause: at('625.42', 'in-part') },
    range: { breaker: 1, conductor: 1, clause: at('210.19(C)') },
    dryer: { breaker: 1, conductor: 1, clause: at('210.20(A)') },
  },
  continuous: { form: 'add', share: 0.8, clause: at('210.19, 210.20(A)') },
  motorCompressor: {
    conductor: 1.25,
    breaker: 1.75,
    breakerIfItWillNotStart: 2.25,
    smallestBreaker: 15,
    nameplate: at('440.4(B)'),
    clause: at('440.22, 440.32, 440.33'),
  },
  waterHeater: { atMost: 1.5, upTo: TANK_OF_120_GALLONS, clause: at('422.11(E)(3)') },
  heat: {
    element: 48,
    breaker: 60,
    clause: at('424.22(B)', 'memory'),
    fan: at('424.63', 'memory'),
    dedicated: at('424.4(A)', 'memory'),
  },
  range: { from: 8750, leastBreaker: 40, load: 8000, upTo: 12000, beyond: 0.4, clause: at('210.19(C), 220.55') },
  vehicle: { ownCircuit: at('625.40', 'in-part'), setting: at('625.42', 'in-part') },
  severalOutlets: { plug: 0.8, fastened: 0.5, upTo: 20, clause: at('210.23') },
});
