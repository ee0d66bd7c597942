import { at, rule } from '../define.js';
import { ventingBy } from './venting.js';

export default rule({
  code: 'air/orphaned-flue',
  severity: 'warning',
  title: 'appliance left alone on a flue',
  of: 'opening',
  tier: 'meaning',
  *find(opening, view) {
    const { before, stage } = view;
    const same = before && view.same(opening, before);
    if (!stage || !before || !same) return;
    const left = ventingBy(view.house, opening);
    const lost = ventingBy(before.house, same).filter(b => !view.same(b, view) || !left.some(l => l.name === b.name));
    if (left.length === 0 || lost.length === 0) return;
    for (const appliance of left) if (appliance.is !== 'wood-stove') yield { appliance, lost, opening };
  },
  tell: ({ appliance, lost, opening }, say) => ({
    at: at(appliance, 'vents-by'),
    message: `${appliance.name} stays alone on ${opening.name} of ${say(opening.diameter, 'length')} after ${lost.map(l => l.name).join(' and ')} ${lost.length > 1 ? 'are' : 'is'} removed: the flue is oversized for it`,
    related: [
      { at: at(opening, 'diameter'), message: 'the flue' },
      ...lost.map(l => ({ at: at(l), message: 'shared the flue until this stage' })),
    ],
  }),
});
