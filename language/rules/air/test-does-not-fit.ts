import { testFaults, type Fault } from '../../engine/air/test-acceptance.js';
import { figures } from '../../units/index.js';
import { at, rule, type Say } from '../define.js';

export default rule({
  code: 'air/test-does-not-fit',
  severity: 'warning',
  title: 'blower-door readings that do not fit',
  of: 'blower-door-test',
  tier: 'design',
  *find(test, view) {
    const exponent = view.result('exponent', test);
    const correlation = view.result('correlation', test);
    const { zeroFlowBefore, zeroFlowAfter } = test;
    const zeroFlow = Math.abs(zeroFlowAfter) > Math.abs(zeroFlowBefore) ? zeroFlowAfter : zeroFlowBefore;
    // Without a fit there are still readings to judge.
    const fit = { exponent: exponent ?? 0.65, correlation: correlation ?? 1 };
    for (const fault of testFaults(test.readings, fit, 'iso-9972', zeroFlow)) yield { test, fault };
  },
  tell: ({ test, fault }, say) => ({
    at: at(test, fault.kind === 'zero-flow' ? placeOfZeroFlow(test, fault.pressure) : 'readings'),
    message: inWords(fault, say),
  }),
});

function placeOfZeroFlow(test: { readonly zeroFlowBefore: number }, pressure: number): string {
  return Math.abs(test.zeroFlowBefore) === pressure ? 'zero-flow-before' : 'zero-flow-after';
}

function inWords(fault: Fault, say: Say): string {
  switch (fault.kind) {
    case 'few-points':
      return `${fault.points} readings are fewer than the ${fault.least} of a valid test`;
    case 'low-highest':
      return `the highest reading stands at ${say(fault.pressure, 'pressure')}; a valid test reaches ${say(fault.least, 'pressure')}`;
    case 'low-lowest':
      return `the lowest reading stands at ${say(fault.pressure, 'pressure')}, where wind disturbs it; ${say(fault.least, 'pressure')} are the least of a valid test`;
    case 'wide-step':
      return `two neighbouring readings lie ${say(fault.step, 'pressure')} apart; steps of a valid test are at most ${say(fault.most, 'pressure')}`;
    case 'zero-flow':
      return `the pressure without the fan is ${say(fault.pressure, 'pressure')}; more than ${say(fault.most, 'pressure')} spoils a test`;
    case 'exponent':
      return `the readings give an exponent of ${figures(fault.exponent, 3)}; leaks lie between ${fault.low} (holes) and ${fault.high} (fine cracks), so a reading or its unit is likely wrong`;
    case 'correlation':
      return `the readings scatter: the correlation of their logarithms is ${figures(fault.correlation, 3)}, at least ${fault.least} is expected`;
  }
}
