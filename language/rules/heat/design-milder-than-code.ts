import { at, rule } from '../define.js';

export default rule({
  code: 'heat/design-milder-than-code',
  severity: 'info',
  title: "owner's design condition milder than that of the code",
  of: 'design',
  tier: 'design',
  *find(comfort, view) {
    if (comfort.name !== 'comfort') return;
    const code = view.house.design.find(d => d.name === 'code');
    const own = view.result('heating.design-load-comfort');
    const load = view.result('heating.design-load');
    if (!code || own === undefined || load === undefined || own >= load) return;
    yield { comfort, code, own, load };
  },
  tell: ({ comfort, code, own, load }, say) => ({
    at: at(comfort, 'outdoor'),
    message: `at ${say(comfort.outdoor, 'temperature')} the load is ${say(own, 'heat-flow')}; the code asks for ${say(code.outdoor, 'temperature')} and ${say(load, 'heat-flow')}, ${say(load - own, 'heat-flow')} more, and verdicts rest on that`,
    related: [{ at: at(code, 'outdoor'), message: 'the condition of the code' }],
  }),
});
