import { at, rule } from '../define.js';
import { burners, ventingBy } from './venting.js';

export default rule({
  code: 'air/open-duct-left',
  severity: 'warning',
  title: 'duct left open after its appliance',
  of: 'opening',
  tier: 'meaning',
  *find(opening, { house, stage, before }) {
    if (!stage || !before) return;
    const { kind } = opening;
    if (kind === 'chimney' && ventingBy(house, opening).length === 0 && burners(before.house).length > 0)
      yield { opening, kind };
    if (kind === 'combustion-air' && burners(house).length === 0 && burners(before.house).length > 0)
      yield { opening, kind };
  },
  tell: ({ opening, kind }, say) => ({
    at: at(opening),
    message: `nothing that burns uses ${opening.name} any more: a ${kind === 'chimney' ? 'chimney' : 'combustion-air duct'} of ${say(opening.diameter, 'length')} stays open and leaks`,
  }),
});
