import { print } from '../../units/index.js';
import { at, rule } from '../define.js';
import { shortfallOf } from './shortfall.js';

export default rule({
  code: 'heat/auxiliary-undersized',
  severity: 'error',
  title: 'auxiliary heat too small',
  of: 'house',
  tier: 'design',
  *find(house, view) {
    const { heatPump, auxiliary, baseboard, furnace, boiler } = house.heating;
    const short = shortfallOf(view);
    if (heatPump.length === 0 || !short) return;
    const strip = auxiliary.reduce<(typeof auxiliary)[number] | undefined>(
      (largest, a) => (largest && largest.output >= a.output ? largest : a),
      undefined,
    );
    const alone = auxiliary.length === 1 && baseboard.length + furnace.length + boiler.length === 0;
    yield { ...short, strip, heatPump: heatPump[0], alone };
  },
  tell: ({ short, outdoor, load, output, helped, strip, heatPump }, say) => ({
    at: strip ? at(strip, 'output') : at(heatPump),
    message:
      helped > 0
        ? `auxiliary heat is ${say(short, 'heat-flow')} short at ${say(outdoor, 'temperature')}: load ${say(load, 'heat-flow')}, heat pump ${say(output, 'heat-flow')}, auxiliary ${say(helped, 'heat-flow')}`
        : `there is no auxiliary heat, and the heat pump is ${say(short, 'heat-flow')} short at ${say(outdoor, 'temperature')}: load ${say(load, 'heat-flow')}, heat pump ${say(output, 'heat-flow')}`,
    ...(strip ? { related: [{ at: at(heatPump, 'performance'), message: 'what the heat pump gives' }] } : {}),
  }),
  // A strip that has its circuit moves together with breaker and conductor, which is the circuit's own finding.
  mend: ({ strip, alone }, view) => {
    const size = view.result('heating.auxiliary-size');
    if (!strip || !alone || (strip.on?.length ?? 0) > 0 || strip.voltage !== 240 || !size) return [];
    const to = print(size, 'power');
    return [{ title: `Set the output to ${to}`, changes: [{ set: at(strip, 'output'), to }], preferred: true }];
  },
});
