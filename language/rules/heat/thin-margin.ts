import { at, rule } from '../define.js';

/** Less than this part of the load is within what a careful calculation may miss; common practice. */
const THIN = 0.1;

export default rule({
  code: 'heat/thin-margin',
  severity: 'info',
  title: 'heat suffices by less than the load is known',
  of: 'house',
  tier: 'design',
  *find({ heating, design }, view) {
    const { furnace, boiler, heatPump, auxiliary, baseboard } = heating;
    const margin = view.result('heating.worst-margin');
    const outdoor = view.result('heating.worst-margin-temperature');
    const load = view.result('heating.design-load');
    const code = design.find(d => d.name === 'code');
    if (margin === undefined || outdoor === undefined || load === undefined || !code) return;
    // At a warmer temperature the margin is thin where a lockout or cut-out says so: a matter of control, not of size.
    if (outdoor !== code.outdoor || margin < 0 || margin >= THIN * load) return;
    const [largest] = [...auxiliary, ...baseboard, ...furnace, ...boiler].sort((a, b) => b.output - a.output);
    const [pump] = heatPump;
    if (!largest && !pump) return;
    const spot = largest ? at(largest, 'output') : at(pump, 'performance');
    yield { spot, margin, load, share: margin / load, outdoor };
  },
  tell: ({ spot, margin, load, share, outdoor }, say) => ({
    at: spot,
    message: `the margin of ${say(margin, 'heat-flow')} at ${say(outdoor, 'temperature')} is ${say(share, 'ratio')} of the load of ${say(load, 'heat-flow')}, less than the usual uncertainty of a calculated load (about 15 %)`,
  }),
});
