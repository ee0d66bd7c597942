import { cite } from '../../codes/index.js';
import { editionFor, houseService } from '../../engine/electrical/house-service.js';
import { Withheld } from '../../model/index.js';
import { print } from '../../units/index.js';
import { at, rule, type Change } from '../define.js';
import { awaitsCapacity, isOverloaded } from './capacity.js';
import { heldIfAccepted } from './credit-not-in-edition.js';

/** Ratings in which services to houses are built, A: common practice. */
const USUAL_SERVICES: readonly number[] = [60, 100, 125, 150, 200, 300, 400];

export default rule({
  code: 'service/overloaded',
  severity: 'error',
  title: 'service overloaded',
  of: 'service',
  tier: 'design',
  *find(service, view) {
    if (!isOverloaded(view) || awaitsCapacity(view)) return;
    // Where only the credit of a manager is missing, that is what is told.
    if (view.house.electrical.loadManager.some(manager => heldIfAccepted(manager, view))) return;
    const needed = view.result('service.rating-needed');
    const demand = view.result('service.demand');
    const smallest = view.result('service.smallest');
    if (needed === undefined || demand === undefined || smallest === undefined)
      throw new Withheld('the load of the service is not known');
    yield {
      service,
      needed,
      demand,
      smallest,
      edition: editionFor(view.house),
      method: houseService(view.house).method,
    };
  },
  tell({ service, needed, demand, smallest, edition, method }, say) {
    const short = `the service is ${say(needed - service.rating, 'current')} short`;
    const load = `the load is ${say(demand, 'current')} by ${cite(method.total)}`;
    const lasting = needed > demand ? `, ${say(needed, 'current')} with a quarter more for what lasts` : '';
    return {
      at: at(service, 'rating'),
      message:
        needed <= smallest
          ? `${short}: ${cite(edition.minimum.clause)} asks for ${say(smallest, 'current')} at the least, whatever the load`
          : `${short}: ${load}${lasting}, the rating ${say(service.rating, 'current')}`,
    };
  },
  mend({ service, needed }, { house }) {
    const rating = USUAL_SERVICES.find(usual => usual >= needed);
    if (rating === undefined) return [];
    const to = print(rating, 'current');
    const changes: Change[] = [{ set: at(service, 'rating'), to }];
    for (const panel of house.electrical.panel) {
      if (panel.fedBy) continue;
      if (panel.mainBreaker !== undefined) changes.push({ set: at(panel, 'main-breaker'), to });
      if (panel.bus < rating) changes.push({ set: at(panel, 'bus'), to });
    }
    return [{ title: `Plan a service of ${to} with its panel`, changes }];
  },
});
