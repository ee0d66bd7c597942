import { cite } from '../../codes/index.js';
import { editionFor, managedLoads } from '../../engine/electrical/house-service.js';
import type { Block } from '../../model/index.js';
import { at, rule, type View } from '../define.js';
import { isOverloaded } from './capacity.js';

/** Whether the service is overloaded and would hold if the authority accepted what this manager sheds. */
export function heldIfAccepted(manager: Block<'load-manager'>, view: View): boolean {
  const { service } = view.house.electrical;
  const accepted = view.result('service.demand-with-all-managed');
  const smallest = view.result('service.smallest');
  if (!service || accepted === undefined || smallest === undefined) return false;
  // No acceptance lowers the smallest service that the code allows.
  if (manager.credit.says !== 'by-edition' || smallest > service.rating) return false;
  return isOverloaded(view) && accepted <= service.rating && managedLoads(view.house).uncredited.length > 0;
}

export default rule({
  code: 'service/credit-not-in-edition',
  severity: 'error',
  title: 'load management credited beyond the edition',
  of: 'load-manager',
  tier: 'design',
  *find(manager, view) {
    const demand = view.result('service.demand');
    const accepted = view.result('service.demand-with-all-managed');
    const { service } = view.house.electrical;
    if (!heldIfAccepted(manager, view) || demand === undefined || accepted === undefined || !service) return;
    const { uncredited } = managedLoads(view.house);
    yield { manager, service, demand, accepted, uncredited, edition: editionFor(view.house) };
  },
  tell({ manager, service, demand, accepted, uncredited, edition }, say, view) {
    const loads = uncredited.map(({ label }) => label).join(' and ');
    return {
      at: at(manager, view.says(manager, 'credit') ? 'credit' : 'limit'),
      message: `${cite(edition.management.clause)} credits the management of vehicle charging alone: with ${loads} counted the load is ${say(demand, 'current')} on a service of ${say(service.rating, 'current')}; it would be ${say(accepted, 'current')} if the authority accepted their shedding in writing`,
      related: [{ at: at(service, 'rating'), message: 'the service' }],
    };
  },
});
