import { at, rule } from '../define.js';

/** Two careful calculations of one house agree within this; common practice. */
const TOLERANCE = 0.15;

export default rule({
  code: 'heat/load-differs-from-audit',
  severity: 'warning',
  title: 'calculated load far from the stated one',
  of: 'stated-load',
  tier: 'design',
  *find(stated, view) {
    // The stated load is that of the house before any stage changed it.
    if (view.stage) return;
    const difference = view.result('heating.stated-difference');
    const computed = view.result('heating.loss-coefficient');
    const said = view.result('heating.stated-loss-coefficient');
    if (difference === undefined || computed === undefined || said === undefined) return;
    if (Math.abs(difference) <= TOLERANCE) return;
    yield { stated, difference, computed, said };
  },
  tell: ({ stated, difference, computed, said }, say) => ({
    at: at(stated, 'heating'),
    message: `the envelope gives ${say(computed, 'conductance')}, ${say(Math.abs(difference), 'ratio')} ${difference > 0 ? 'more' : 'less'} than the ${say(said, 'conductance')} of the stated load`,
  }),
});
