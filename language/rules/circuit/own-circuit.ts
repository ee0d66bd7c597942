import { sizeInWords } from '../../codes/index.js';
import { circuitNeed } from '../../engine/electrical/circuit-load.js';
import { conductorFor } from '../../engine/electrical/house-circuits.js';
import type { HouseLoad } from '../../engine/electrical/house-load.js';
import { loadsOn } from '../../engine/electrical/house-loads.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import { spacesLeft } from '../../engine/electrical/panel-spaces.js';
import type { Block } from '../../model/index.js';
import { print } from '../../units/index.js';
import { at, type Fix, type View } from '../define.js';
import { breakerFor } from './breaker-set.js';

/** Above this a load is between both legs, V. */
const ONE_LEG = 150;

/**
 * Gives a load a circuit of its own beside the one it shares: breaker, conductor, and the load's reference together. Offered
 * when the panel has the spaces, and when the breaker that stays is not too large for what stays on it.
 */
export function ownCircuit(load: HouseLoad, circuit: Block<'circuit'>, view: View): readonly Fix[] {
  const { house } = view;
  const edition = editionFor(house);
  const panel = house.electrical.panel.find(each => each.circuit.some(({ name }) => name === circuit.name));
  if (!panel || !('voltage' in load.block)) return [];
  const staying = loadsOn(house, circuit).filter(({ block }) => block.name !== load.block.name);
  const tooLarge = staying.some(each => (each.onCircuit(edition).mocp ?? Infinity) < circuit.breaker);
  const poles = load.block.voltage > ONE_LEG ? 2 : 1;
  const left = spacesLeft(panel.spaces, [
    ...panel.circuit.map(each => ({ poles: each.poles, form: each.tandem ? 'half-of-tandem' : 'full' }) as const),
    { poles, form: 'full' },
  ]);
  if (tooLarge || left < 0) return [];
  const need = circuitNeed([load.onCircuit(edition)], 'unmarked', edition);
  const breaker = breakerFor(need.breaker, edition);
  if (breaker === undefined || breaker > (need.largestBreaker ?? Infinity)) return [];
  const conductor = conductorFor(house, circuit, { breaker, current: need.conductor });
  if (!conductor) return [];
  const name = view.freshName(`c-${load.block.name}`);
  const others = load.circuits.filter(each => each.name !== circuit.name).map(each => each.name);
  const on = others.length > 0 ? `[${[name, ...others].join(', ')}]` : name;
  const length = circuit.length === undefined ? '' : `, length: ${print(circuit.length, 'length')}`;
  const body = `breaker: ${print(breaker, 'current')}, poles: ${poles}, conductor: ${conductor}, metal: ${circuit.metal}${length}`;
  return [
    {
      title: `Give ${load.block.name} its own circuit: ${print(breaker, 'current')} with ${sizeInWords(conductor)} ${circuit.metal}`,
      changes: [
        { add: { kind: 'circuit', name, in: panel, body }, near: load.block },
        { set: at(load.block, 'on'), to: on },
      ],
      preferred: true,
    },
  ];
}
