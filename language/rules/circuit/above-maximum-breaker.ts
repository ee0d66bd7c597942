import { standardRatingUpTo } from '../../engine/electrical/breaker.js';
import { circuitNeedOf } from '../../engine/electrical/house-circuits.js';
import { loadsOn } from '../../engine/electrical/house-loads.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import { print } from '../../units/index.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'circuit/above-maximum-breaker',
  severity: 'error',
  title: 'breaker above the largest that the nameplate allows',
  of: 'circuit',
  tier: 'design',
  *find(circuit, { house }) {
    const { largestBreaker: largest, breaker: needed } = circuitNeedOf(house, circuit);
    if (largest === undefined || circuit.breaker <= largest) return;
    const edition = editionFor(house);
    const loads = loadsOn(house, circuit);
    const unit = loads.find(load => load.onCircuit(edition).mocp === largest);
    // An air handler behind the breaker of its heater is told as sharing it.
    const heater = loads.some(({ block }) => block.is === 'auxiliary');
    if (unit && !(heater && unit.block.is === 'air-handler')) yield { circuit, largest, needed, unit: unit.block };
  },
  tell({ circuit, largest, unit }, say, view) {
    const stated = view.says(unit, 'mocp');
    return {
      at: at(circuit, 'breaker'),
      message: `a breaker of ${say(circuit.breaker, 'current')} is ${say(circuit.breaker - largest, 'current')} above the largest that ${unit.name} may have: ${say(largest, 'current')} ${stated ? 'by its nameplate' : 'computed from its rated-load current'}`,
      related: [{ at: at(unit, stated ? 'mocp' : 'rla'), message: 'the unit' }],
    };
  },
  mend({ circuit, largest, needed }, { house }) {
    const breaker = standardRatingUpTo(largest, editionFor(house));
    if (breaker === undefined || breaker < needed) return [];
    return [
      {
        title: `Set the breaker to ${print(breaker, 'current')}`,
        changes: [{ set: at(circuit, 'breaker'), to: print(breaker, 'current') }],
        preferred: true,
      },
    ];
  },
});
