import { loadsOn } from '../../engine/electrical/house-loads.js';
import { at, rule } from '../define.js';
import { ownCircuit } from './own-circuit.js';

export default rule({
  code: 'circuit/heater-shares-air-handler',
  severity: 'warning',
  title: 'heater shares a breaker with the air handler',
  of: 'circuit',
  tier: 'design',
  *find(circuit, { house }) {
    const loads = loadsOn(house, circuit);
    const heater = loads.find(({ block }) => block.is === 'auxiliary');
    const blower = loads.find(({ block }) => block.is === 'air-handler');
    if (!heater || !blower) return;
    // Where a manager opens the circuit the sharing is an error of its own.
    const opened = house.electrical.loadManager
      .flatMap(({ channel }) => channel.filter(({ actsOn }) => actsOn === 'line'))
      .map(({ sheds }) => sheds.name);
    if (opened.includes(heater.block.name) || opened.includes(circuit.name)) return;
    yield { circuit, heater, blower };
  },
  tell: ({ circuit, heater, blower }) => ({
    at: at(heater.block, 'on'),
    message: `${heater.block.name} shares ${circuit.name} with ${blower.block.name}: when this breaker opens, the blower stops with the strip, and the strip can never be shed by itself`,
    related: [
      { at: at(blower.block, 'on'), message: 'the air handler is on the same circuit' },
      { at: at(circuit, 'breaker'), message: 'the breaker' },
    ],
  }),
  mend: ({ circuit, heater, blower }, view) => {
    const strip = ownCircuit(heater, circuit, view);
    return strip.length > 0 ? strip : ownCircuit(blower, circuit, view);
  },
});
