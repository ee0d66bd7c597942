import { continuousLimit } from '../../engine/electrical/circuit-load.js';
import { loadsOn } from '../../engine/electrical/house-loads.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import { print } from '../../units/index.js';
import { at, rule, type Fix } from '../define.js';
import { largerBreaker } from './breaker-set.js';

/** Chargers are not set below this, A: the lowest current that the charging standard signals. */
const LOWEST_SETTING = 6;

export default rule({
  code: 'circuit/charger-setting',
  severity: 'error',
  title: 'charger set above what its circuit allows',
  of: 'evse',
  tier: 'design',
  *find(charger, { house }) {
    const circuit = charger.on;
    if (!circuit || loadsOn(house, circuit).length > 1) return;
    const limit = continuousLimit(circuit.breaker, circuit.fullyRated ? 'fully-rated' : 'unmarked', editionFor(house));
    if (charger.setting > limit) yield { charger, circuit, limit };
  },
  tell: ({ charger, circuit, limit }, say) => ({
    at: at(charger, 'setting'),
    message: `a setting of ${say(charger.setting, 'current')} is ${say(charger.setting - limit, 'current')} above what a breaker of ${say(circuit.breaker, 'current')} carries for hours: ${say(limit, 'current')}`,
    related: [{ at: at(circuit, 'breaker'), message: 'the breaker' }],
  }),
  mend({ charger, circuit, limit }, view) {
    const setting = Math.floor(limit);
    const lower: Fix = {
      title: `Set the charger to ${print(setting, 'current')}`,
      changes: [{ set: at(charger, 'setting'), to: print(setting, 'current') }],
      preferred: true,
    };
    const raise = largerBreaker(circuit, view).map(({ title, changes }) => ({ title, changes }));
    return setting >= LOWEST_SETTING ? [lower, ...raise] : raise;
  },
});
