import { print } from '../../units/index.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'management/limit-too-high',
  severity: 'error',
  title: 'limit of the load manager above its share of the main',
  of: 'load-manager',
  tier: 'design',
  *find(manager, view) {
    const { service } = view.house.electrical;
    const limit = view.result('limit', manager);
    const largest = view.result('largest-limit', manager);
    if (manager.senses !== 'service' || !service || limit === undefined || largest === undefined) return;
    if (limit > largest) yield { manager, service, limit, largest };
  },
  tell: ({ manager, service, limit, largest }, say) => ({
    at: at(manager, manager.limit === undefined ? 'limit-fraction' : 'limit'),
    message: `a limit of ${say(limit, 'current')} is ${say(limit - largest, 'current')} above what a main of ${say(service.rating, 'current')} carries for hours: ${say(largest, 'current')}`,
    related: [{ at: at(service, 'rating'), message: 'the service' }],
  }),
  mend({ manager, service, largest }) {
    if (manager.limit !== undefined)
      return [
        {
          title: `Set the limit to ${print(largest, 'current')}`,
          changes: [{ set: at(manager, 'limit'), to: print(largest, 'current') }],
          preferred: true,
        },
      ];
    const fraction = print(largest / service.rating, 'ratio');
    return [
      {
        title: `Set the limit to ${fraction} of the main`,
        changes: [{ set: at(manager, 'limit-fraction'), to: fraction }],
        preferred: true,
      },
    ];
  },
});
