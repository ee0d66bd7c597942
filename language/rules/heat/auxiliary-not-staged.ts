import { at, rule } from '../define.js';

/** Electric heat from this size up is usually sold in two steps or more; common practice. */
const LARGE = 8000;

export default rule({
  code: 'heat/auxiliary-not-staged',
  severity: 'info',
  title: 'auxiliary in one step',
  of: 'auxiliary',
  tier: 'meaning',
  *find(strip) {
    if (strip.steps === 1 && strip.output >= LARGE) yield { strip };
  },
  tell: ({ strip }, say) => ({
    at: at(strip, 'steps'),
    message: `${say(strip.output, 'heat-flow')} switch in one step; in two steps most cold hours need only the first`,
  }),
});
