import { at, rule } from '../define.js';

export default rule({
  code: 'plan/solar-before-loads',
  severity: 'warning',
  title: 'solar sized before later loads',
  of: 'stage',
  tier: 'design',
  *find(stage, view) {
    const array = view.house.solar.array.find(a => !view.before || !view.same(a, view.before));
    if (!array) return;
    const now = view.result('service.connected-load');
    if (now === undefined) return;
    const next = view.later.find(v => (v.result('service.connected-load') ?? now) > now);
    const then = next?.result('service.connected-load');
    if (!next?.stage || then === undefined) return;
    yield { stage, array, now, then, next: next.stage };
  },
  tell: ({ stage, array, now, then, next }, say) => ({
    at: at(array, 'modules'),
    message: `stage ${stage.name} sizes the array for ${say(now, 'power')} of connected load, and stage ${next.name} brings it to ${say(then, 'power')}: size it for the use to come`,
    related: [{ at: at(next), message: 'this stage adds load' }],
  }),
});
