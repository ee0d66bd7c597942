import { at, rule } from '../define.js';
import { awaitsCapacity, holds, isOverloaded } from '../service/capacity.js';

export default rule({
  code: 'plan/load-before-capacity',
  severity: 'error',
  title: 'load comes before the capacity for it',
  of: 'house',
  tier: 'design',
  *find(_, view) {
    const { stage, before } = view;
    // Told once, where the service first does not hold.
    if (!stage || !before || isOverloaded(before) || !awaitsCapacity(view)) return;
    const needed = view.result('service.rating-needed');
    const { service } = view.house.electrical;
    const cure = view.later.find(holds)?.stage;
    if (needed === undefined || !service || !cure) return;
    yield { stage, service, needed, cure };
  },
  tell: ({ stage, service, needed, cure }, say) => ({
    at: at(stage),
    message: `from this stage until ${cure.name} the service is ${say(needed - service.rating, 'current')} short: the load needs ${say(needed, 'current')}, the service has ${say(service.rating, 'current')}`,
    related: [
      { at: at(cure), message: 'the capacity comes here' },
      { at: at(service, 'rating'), message: 'the service' },
    ],
  }),
});
