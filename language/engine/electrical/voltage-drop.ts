import { cite, resistancePerMetre, type ConductorSize, type Edition, type Metal } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';

export interface Run {
  readonly size: ConductorSize;
  readonly metal: Metal;
  /** One way, m. */
  readonly length: number;
  /** A. */
  readonly current: number;
  /** V between the two conductors of the circuit. */
  readonly voltage: number;
}

/**
 * Voltage drop there and back as a share of the voltage, for two-wire and 240 V circuits. Direct-current resistance at
 * 75 °C: good within about 2 % up to 1/0; larger conductors have more in steel conduit.
 */
export function voltageDrop({ size, metal, length, current, voltage }: Run, edition: Edition, sheet?: Sheet): number {
  const resistance = resistancePerMetre(size, metal) * length;
  const value = (2 * current * resistance) / voltage;
  sheet?.(() => ({
    label: 'Voltage drop',
    formula: '2 * current * resistance / voltage',
    inputs: {
      current: [current, 'current'],
      resistance: [resistance, 'resistance'],
      voltage: [voltage, 'voltage'],
    },
    value,
    dimension: 'ratio',
    source: `NEC chapter 9, Table 8, stranded at 75 °C; limit by ${cite(edition.voltageDrop.clause)}`,
  }));
  return value;
}

/** Longest run one way, m, for a drop of a share of the voltage. */
export const longestRun = (run: Omit<Run, 'length'>, share: number): number =>
  (share * run.voltage) / (2 * run.current * resistancePerMetre(run.size, run.metal));
