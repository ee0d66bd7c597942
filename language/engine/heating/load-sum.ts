import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

/** Parts of a design heating load, in W, without gains and without storage. */
export interface LoadParts {
  readonly transmission: Si<'heat-flow'>;
  readonly ground: Si<'heat-flow'>;
  readonly infiltration: Si<'heat-flow'>;
  readonly ventilation: Si<'heat-flow'>;
  /** Lost from ducts outside the heated space, as a part of the rest. */
  readonly ductLoss: Si<'ratio'>;
}

/** Beside every total of a design load. */
export const FOR_A_PERMIT =
  'A permit may ask for its own form of calculation (CSA F280 in Canada): ask what the authority requires';

/** Design heating load: the sum of its parts and what the ducts lose of it. ASHRAE Fundamentals 2021 ch. 17. */
export function totalLoad(parts: LoadParts, sheet?: Sheet): Si<'heat-flow'> {
  const { transmission, ground, infiltration, ventilation, ductLoss } = parts;
  const total = (1 + ductLoss) * (transmission + ground + infiltration + ventilation);
  sheet?.(() => ({
    label: 'Design heating load',
    formula: '(1 + F_dl) * (q_t + q_g + q_i + q_v)',
    inputs: {
      F_dl: [ductLoss, 'ratio'],
      q_t: [transmission, 'heat-flow'],
      q_g: [ground, 'heat-flow'],
      q_i: [infiltration, 'heat-flow'],
      q_v: [ventilation, 'heat-flow'],
    },
    value: total,
    dimension: 'heat-flow',
    source: 'ASHRAE Fundamentals 2021 ch. 17',
    role: 'total',
    note: FOR_A_PERMIT,
  }));
  return total;
}
