import { at, rule } from '../define.js';
import { shortfallOf } from './shortfall.js';

export default rule({
  code: 'heat/equipment-undersized',
  severity: 'error',
  title: 'heating equipment too small',
  of: 'house',
  tier: 'design',
  *find({ heating }, view) {
    const equipment = [...heating.furnace, ...heating.boiler, ...heating.baseboard, ...heating.auxiliary];
    const short = shortfallOf(view);
    // With a heat pump the auxiliary is judged instead.
    if (heating.heatPump.length > 0 || equipment.length === 0 || !short) return;
    const largest = equipment.reduce((a, b) => (b.output > a.output ? b : a));
    yield { ...short, largest };
  },
  tell: ({ short, outdoor, load, helped, largest }, say) => ({
    at: at(largest, 'output'),
    message: `heat is ${say(short, 'heat-flow')} short at ${say(outdoor, 'temperature')}: load ${say(load, 'heat-flow')}, installed ${say(helped, 'heat-flow')}`,
  }),
});
