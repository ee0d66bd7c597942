import { at, rule } from '../define.js';

/** A change of the load smaller than this decides no equipment. */
const NOTABLE = 0.05;

export default rule({
  code: 'plan/shell-after-heat',
  severity: 'warning',
  title: 'shell improved after the heat pump was chosen',
  of: 'stage',
  tier: 'design',
  *find(stage, view) {
    const { before } = view;
    const pump = before?.house.heating.heatPump[0];
    if (!before || !pump) return;
    const earlier = before.result('heating.design-load');
    const now = view.result('heating.design-load');
    if (earlier === undefined || now === undefined || now > earlier * (1 - NOTABLE)) return;
    yield { stage, pump, earlier, now };
  },
  tell: ({ stage, pump, earlier, now }, say) => ({
    at: at(stage),
    message: `the design load falls from ${say(earlier, 'heat-flow')} to ${say(now, 'heat-flow')} only after ${pump.name} was chosen for the larger one`,
    related: [{ at: at(pump), message: 'the heat pump' }],
  }),
});
