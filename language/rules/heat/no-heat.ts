import type { House } from '../../model/index.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'heat/no-heat',
  severity: 'error',
  title: 'no heat in a stage',
  of: 'house',
  tier: 'meaning',
  *find(house, { stage, before }) {
    // A house whose heating was never written says nothing about it.
    if (!stage || !before || sources(house).length > 0) return;
    const lost = sources(before.house);
    if (lost.length === 0) return;
    yield { stage, lost, stove: house.heating.woodStove[0] };
  },
  tell: ({ stage, lost, stove }) => ({
    at: at(stage),
    message:
      `nothing heats the house after ${lost.map(l => l.name).join(' and ')} ${lost.length > 1 ? 'are' : 'is'} removed` +
      (stove ? `; ${stove.name} heats only while somebody lights it` : ''),
    related: lost.map(l => ({ at: at(l), message: 'heated the house until this stage' })),
  }),
});

/** What heats by itself; a wood stove needs somebody to light it. */
function sources({ heating }: House) {
  return [...heating.furnace, ...heating.boiler, ...heating.heatPump, ...heating.auxiliary, ...heating.baseboard];
}
