import { hasEnvelope } from '../../engine/heating/design-load.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'heat/no-code-design',
  severity: 'warning',
  title: 'no design condition of the code',
  of: 'house',
  tier: 'design',
  *find(house) {
    const { furnace, boiler, heatPump, auxiliary, baseboard } = house.heating;
    const equipment = [...furnace, ...boiler, ...heatPump, ...auxiliary, ...baseboard];
    if (house.design.some(d => d.name === 'code') || equipment.length === 0) return;
    // Without a load there is nothing that a condition could judge.
    if (house.statedLoad === undefined && !hasEnvelope(house)) return;
    yield { at: at(house.design.find(d => d.name === 'comfort') ?? house) };
  },
  tell: fact => ({
    ...fact,
    message: 'there is no `design code`: whether the heat suffices is not judged',
  }),
});
