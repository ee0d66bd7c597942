import { loadsOn } from '../../engine/electrical/house-loads.js';
import { at, rule } from '../define.js';
import { largerBreaker } from './breaker-set.js';

export default rule({
  code: 'circuit/overloaded',
  severity: 'error',
  title: 'circuit overloaded',
  of: 'circuit',
  tier: 'design',
  *find(circuit, view) {
    const load = view.result('load', circuit);
    if (load === undefined || load <= circuit.breaker) return;
    const loads = loadsOn(view.house, circuit).map(({ block }) => block);
    // A charger alone is told at its setting, which is the value to change.
    if (loads.length === 1 && loads[0].is === 'evse') return;
    yield { circuit, load, loads };
  },
  tell: ({ circuit, load, loads }, say) => ({
    at: at(circuit, 'breaker'),
    message: `the loads of this circuit take ${say(load, 'current')}, ${say(load - circuit.breaker, 'current')} more than its breaker of ${say(circuit.breaker, 'current')}`,
    related: loads.map(block => ({ at: at(block, 'on'), message: `${block.name} is on this circuit` })),
  }),
  mend: ({ circuit }, view) => largerBreaker(circuit, view),
});
