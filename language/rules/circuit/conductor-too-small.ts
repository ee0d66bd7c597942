import { sizeInWords } from '../../codes/index.js';
import { isStandardRating } from '../../engine/electrical/breaker.js';
import { conductorFor, protectionOf } from '../../engine/electrical/house-circuits.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import { print } from '../../units/index.js';
import { at, rule, type Fix } from '../define.js';

export default rule({
  code: 'circuit/conductor-too-small',
  severity: 'error',
  title: 'conductor too small',
  of: 'circuit',
  tier: 'design',
  *find(circuit, view) {
    const ampacity = view.result('conductor-ampacity', circuit);
    const largest = view.result('largest-breaker', circuit);
    if (ampacity === undefined || largest === undefined) return;
    const needed = view.result('ampacity-needed', circuit);
    const fact = { circuit, ampacity, largest, needed };
    // Before a compressor the nameplate limits the breaker, which is told apart.
    const usual = protectionOf(view.house, circuit, editionFor(view.house)).for !== 'motor-compressor';
    if (usual && circuit.breaker > largest) yield { ...fact, fault: 'behind-breaker' as const };
    else if (
      needed !== undefined &&
      ampacity < needed &&
      circuit.breaker >= (view.result('breaker-needed', circuit) ?? 0)
    )
      yield { ...fact, fault: 'under-load' as const };
  },
  tell({ circuit, ampacity, largest, needed, fault }, say) {
    const wire = `${sizeInWords(circuit.conductor)} ${circuit.metal}`;
    return {
      at: at(circuit, 'conductor'),
      message:
        fault === 'behind-breaker'
          ? `${wire} is too thin behind a breaker of ${say(circuit.breaker, 'current')}: its ampacity is ${say(ampacity, 'current')}, and its largest breaker ${say(largest, 'current')}`
          : `${wire} is too thin for its load: its ampacity is ${say(ampacity, 'current')}, the load needs ${say(needed ?? 0, 'current')}`,
      related: fault === 'behind-breaker' ? [{ at: at(circuit, 'breaker'), message: 'the breaker' }] : [],
    };
  },
  mend({ circuit, largest, needed, fault }, { house }) {
    const fixes: Fix[] = [];
    const size = conductorFor(house, circuit, { breaker: circuit.breaker, current: needed ?? 0 });
    if (size)
      fixes.push({
        title: `Use ${sizeInWords(size)} ${circuit.metal}`,
        changes: [{ set: at(circuit, 'conductor'), to: size }],
        preferred: true,
      });
    if (fault === 'behind-breaker' && largest >= (needed ?? 0) && isStandardRating(largest, editionFor(house)))
      fixes.push({
        title: `Set the breaker to ${print(largest, 'current')}`,
        changes: [{ set: at(circuit, 'breaker'), to: print(largest, 'current') }],
      });
    return fixes;
  },
});
