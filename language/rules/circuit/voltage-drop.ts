import { conductorSizes, sizeInWords } from '../../codes/index.js';
import { circuitVoltageDrop } from '../../engine/electrical/house-circuits.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'circuit/voltage-drop',
  severity: 'warning',
  title: 'voltage drop above 3 %',
  of: 'circuit',
  tier: 'design',
  *find(circuit, view) {
    const drop = view.result('voltage-drop', circuit);
    const { branch, standing } = editionFor(view.house).voltageDrop;
    if (drop !== undefined && drop > branch) yield { circuit, drop, branch, standing };
  },
  tell: ({ circuit, drop, branch, standing }, say) => ({
    at: at(circuit, 'conductor'),
    message: `${say(drop, 'ratio')} of the voltage is lost over ${say(circuit.length ?? 0, 'length')} of ${sizeInWords(circuit.conductor)} ${circuit.metal}; the code ${standing === 'mandatory' ? 'allows' : 'recommends at most'} ${say(branch, 'ratio')}`,
    related: [{ at: at(circuit, 'length'), message: 'the length' }],
  }),
  mend({ circuit, branch }, { house }) {
    const thicker = conductorSizes.slice(conductorSizes.indexOf(circuit.conductor) + 1);
    const size = thicker.find(conductor => circuitVoltageDrop(house, { ...circuit, conductor }) <= branch);
    if (!size) return [];
    return [
      {
        title: `Use ${sizeInWords(size)} ${circuit.metal}`,
        changes: [{ set: at(circuit, 'conductor'), to: size }],
        preferred: true,
      },
    ];
  },
});
