import { loadsOn } from '../../engine/electrical/house-loads.js';
import { at, rule } from '../define.js';
import { largerBreaker } from './breaker-set.js';

export default rule({
  code: 'circuit/continuous-load',
  severity: 'error',
  title: 'continuous load above 80 % of the breaker',
  of: 'circuit',
  tier: 'design',
  *find(circuit, view) {
    const load = view.result('load', circuit);
    const needed = view.result('breaker-needed', circuit);
    if (load === undefined || needed === undefined) return;
    if (load > circuit.breaker || needed <= circuit.breaker) return;
    const blocks = loadsOn(view.house, circuit).map(({ block }) => block);
    // A charger alone is told at its setting, which is the value to change.
    if (blocks.length === 1 && blocks[0].is === 'evse') return;
    yield { circuit, load, needed, blocks };
  },
  tell: ({ circuit, load, needed, blocks }, say) => ({
    at: at(circuit, 'breaker'),
    message: `the loads of this circuit take ${say(load, 'current')} and need a breaker of ${say(needed, 'current')}; this one has ${say(circuit.breaker, 'current')}`,
    related: blocks.map(block => ({ at: at(block, 'on'), message: `${block.name} is on this circuit` })),
  }),
  mend: ({ circuit }, view) => largerBreaker(circuit, view),
});
