import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';

export interface ThermalBridge {
  readonly label: string;
  readonly psi: Si<'linear-transmittance'>;
  readonly length: Si<'length'>;
}

/** Conductance of linear thermal bridges, Σ ψ·L in W/K; ISO 14683. */
export function bridgeConductance(bridges: readonly ThermalBridge[], sheet?: Sheet): Si<'conductance'> {
  let sum = 0;
  for (const { label, psi, length } of bridges) {
    sum += psi * length;
    sheet?.(() => ({
      label,
      formula: 'psi * L',
      inputs: { psi: [psi, 'linear-transmittance'], L: [length, 'length'] },
      value: psi * length,
      dimension: 'conductance',
      source: 'ISO 14683:2017',
      role: 'item',
    }));
  }
  return sum;
}

/** Flat additions to every U-value where bridges are not counted one by one, in W/m²K; EN 12831-1:2017 Annex B (set seen quoted). */
export const FLAT_BRIDGES = { excellent: 0.02, good: 0.05, usual: 0.1, poor: 0.15 } as const;
