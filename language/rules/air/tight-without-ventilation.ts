import { latestTest } from '../../engine/air/house-leakage.js';
import { at, rule } from '../define.js';
import { TIGHT } from './tight.js';

export default rule({
  code: 'air/tight-without-ventilation',
  severity: 'warning',
  title: 'tight house without ventilation',
  of: 'house',
  tier: 'design',
  *find(house, view) {
    const changes = view.result('air.ach50');
    const test = latestTest(house);
    if (changes === undefined || !test || changes >= TIGHT || house.envelope.ventilation.length > 0) return;
    yield { test, changes, required: view.result('air.ventilation-required') };
  },
  tell: ({ test, changes, required }, say) => ({
    at: at(test),
    message:
      `the house changes its air ${say(changes, 'air-change-rate')} at 50 Pa and has no mechanical ventilation` +
      (required === undefined ? '' : `; the standard asks for ${say(required, 'air-flow')}`),
  }),
});
