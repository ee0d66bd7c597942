import { at, rule } from '../define.js';
import { holds } from '../service/capacity.js';

export default rule({
  code: 'management/limit-below-uncontrolled',
  severity: 'warning',
  title: 'load manager cannot keep its limit by shedding alone',
  of: 'load-manager',
  tier: 'design',
  *find(manager, view) {
    const { service } = view.house.electrical;
    const limit = view.result('limit', manager);
    const uncontrolled = view.result('service.uncontrolled-demand');
    if (manager.senses !== 'service' || manager.channel.length === 0 || !service || !holds(view)) return;
    if (limit !== undefined && uncontrolled !== undefined && uncontrolled > limit)
      yield { manager, service, limit, uncontrolled };
  },
  tell: ({ manager, service, limit, uncontrolled }, say) => ({
    at: at(manager, manager.limit === undefined ? 'limit-fraction' : 'limit'),
    message: `what the manager does not shed comes to ${say(uncontrolled, 'current')} by the code, ${say(uncontrolled - limit, 'current')} above its limit of ${say(limit, 'current')}; the service of ${say(service.rating, 'current')} still carries it`,
    related: [{ at: at(service, 'rating'), message: 'the service' }],
  }),
});
