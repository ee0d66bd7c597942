import { managedLoads } from '../../engine/electrical/house-service.js';
import { at, rule } from '../define.js';
import { holds } from './capacity.js';

export default rule({
  code: 'service/held-by-management',
  severity: 'info',
  title: 'service holds only thanks to load management',
  of: 'load-manager',
  tier: 'design',
  *find(manager, view) {
    const { service } = view.house.electrical;
    const all = view.result('service.demand-without-management');
    const demand = view.result('service.demand');
    if (!service || all === undefined || demand === undefined) return;
    if (!holds(view) || all <= service.rating) return;
    yield { manager, service, all, demand, loads: managedLoads(view.house).credited.map(({ label }) => label) };
  },
  tell: ({ manager, service, all, demand, loads }, say) => ({
    at: at(manager, 'limit'),
    message: `the service of ${say(service.rating, 'current')} holds only thanks to load management: ${say(all, 'current')} without it, ${say(demand, 'current')} with ${loads.join(' and ')} managed`,
    related: [{ at: at(service, 'rating'), message: 'the service' }],
  }),
});
