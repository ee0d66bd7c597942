import { at, rule } from '../define.js';

export default rule({
  code: 'heat/auxiliary-beyond-need',
  severity: 'info',
  title: 'auxiliary larger than the gap',
  of: 'auxiliary',
  tier: 'design',
  *find(strip, view) {
    const { heatPump, auxiliary } = view.house.heating;
    // A strip that may carry the whole load when the heat pump stops is normal practice.
    if (heatPump.length === 0 || auxiliary.length > 1 || strip.role === 'full-backup') return;
    const surplus = view.result('heating.auxiliary-surplus');
    const current = view.result('heating.auxiliary-surplus-current');
    const required = view.result('heating.auxiliary-required');
    if (surplus === undefined || current === undefined || required === undefined || surplus < 0.5) return;
    yield { strip, surplus, current, required };
  },
  tell: ({ strip, surplus, current, required }, say) => ({
    at: at(strip, 'output'),
    message: `the heat pump leaves ${say(required, 'heat-flow')} uncovered: this auxiliary has ${say(surplus, 'heat-flow')} more than the smallest usual size for it, which is ${say(current, 'current')} on the service`,
  }),
});
