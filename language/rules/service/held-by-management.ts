import { cite } from '../../codes/index.js';
import { editionFor, managedLoads, ratingNeededWithChargersManaged } from '../../engine/electrical/house-service.js';
import { restsOnOthers } from '../../engine/electrical/management.js';
import { at, rule } from '../define.js';
import { holds } from './capacity.js';

export default rule({
  code: 'service/held-by-management',
  severity: 'info',
  title: 'service holds only thanks to load management',
  of: 'load-manager',
  tier: 'design',
  *find(manager, view) {
    const { house } = view;
    const { service } = house.electrical;
    const all = view.result('service.demand-without-management');
    const demand = view.result('service.demand');
    if (!service || all === undefined || demand === undefined) return;
    if (!holds(view) || all <= service.rating) return;
    const { credited } = managedLoads(house);
    const { management } = editionFor(house);
    const carried = ratingNeededWithChargersManaged(house) > service.rating;
    const others = carried ? credited.filter(load => restsOnOthers(load, management)) : [];
    yield { manager, service, all, demand, credited, others, clause: management.others };
  },
  tell({ manager, service, all, demand, credited, others, clause }, say, view) {
    const names = (loads: typeof credited) => loads.map(({ label }) => label).join(' and ');
    const asks = others.length > 0 ? `; the credit for ${names(others)} needs the word of the authority` : '';
    const related = [{ at: at(service, 'rating'), message: 'the service' }];
    if (asks && clause)
      related.push({
        at: at(manager, view.says(manager, 'credit') ? 'credit' : 'limit'),
        message: `the credit for other loads than vehicle charging rests on ${cite(clause)}`,
      });
    return {
      at: at(manager, 'limit'),
      message: `the service of ${say(service.rating, 'current')} holds only thanks to load management: ${say(all, 'current')} without it, ${say(demand, 'current')} with ${names(credited)} managed${asks}`,
      related,
    };
  },
});
