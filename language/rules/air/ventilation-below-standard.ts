import { at, rule } from '../define.js';
import { TIGHT } from './tight.js';

export default rule({
  code: 'air/ventilation-below-standard',
  severity: 'warning',
  title: 'ventilation below the standard',
  of: 'house',
  tier: 'design',
  *find({ envelope }, view) {
    const installed = view.result('air.ventilation-installed');
    const required = view.result('air.ventilation-required');
    if (installed === undefined || required === undefined || envelope.ventilation.length === 0) return;
    // What leaks into a loose house is counted against the fan by the standard, and is more than enough there.
    const changes = view.result('air.ach50');
    if (changes !== undefined && changes >= TIGHT) return;
    // A flow is measured and set to within a twentieth.
    if (installed >= 0.95 * required) return;
    const largest = envelope.ventilation.reduce((a, b) => (b.flow > a.flow ? b : a));
    yield { largest, installed, required };
  },
  tell: ({ largest, installed, required }, say) => ({
    at: at(largest, 'flow'),
    message: `ventilation is ${say(required - installed, 'air-flow')} short of the standard: ${say(required, 'air-flow')} for this floor area and number of bedrooms, ${say(installed, 'air-flow')} installed`,
  }),
});
