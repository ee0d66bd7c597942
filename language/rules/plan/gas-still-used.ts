import type { Block } from '../../model/index.js';
import { at, rule, type View } from '../define.js';

export default rule({
  code: 'plan/gas-still-used',
  severity: 'error',
  title: 'gas closed while something still burns it',
  of: 'stage',
  tier: 'meaning',
  *find(stage, view) {
    if (!view.before?.house.money.gasService || view.house.money.gasService) return;
    const left = burners(view);
    if (left.length) yield { stage, left };
  },
  tell: ({ stage, left }) => ({
    at: at(stage),
    message: `this stage closes the gas service, and ${left.map(b => b.name).join(', ')} still ${left.length > 1 ? 'burn' : 'burns'} gas`,
    related: left.map(b => ({ at: at(b, 'fuel'), message: 'this burns gas' })),
  }),
});

/** All that burns natural gas in a stage. */
function burners({ house }: View): readonly Block[] {
  const { heating, waterHeating, electrical } = house;
  return [...heating.furnace, ...heating.boiler, ...waterHeating.waterHeater, ...electrical.load].filter(
    b => b.fuel === 'natural-gas',
  );
}
