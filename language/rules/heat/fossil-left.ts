import { at, rule } from '../define.js';

export default rule({
  code: 'heat/fossil-left',
  severity: 'warning',
  title: 'fossil heat left in an all-electric target',
  of: 'house',
  tier: 'meaning',
  *find({ heating, waterHeating }, { last }) {
    if (!last || heating.target !== 'all-electric') return;
    for (const appliance of [...heating.furnace, ...heating.boiler, ...waterHeating.waterHeater]) {
      const { fuel } = appliance;
      if (fuel === 'natural-gas' || fuel === 'propane' || fuel === 'oil') yield { appliance, fuel, heating };
    }
  },
  tell: ({ appliance, fuel, heating }) => ({
    at: at(appliance, 'fuel'),
    message: `${appliance.name} still burns ${fuel.replace('-', ' ')} when all stages are done, and the target is all-electric`,
    related: [{ at: at(heating, 'target'), message: 'the target' }],
  }),
});
