import { cite, type Clause } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import type { Load } from './loads.js';

/** Loads as lines of a form, each at its own power, under the clause that counts them. */
export function listLoads(loads: readonly Load[], clause: Clause, sheet?: Sheet): void {
  if (!sheet) return;
  for (const load of loads)
    sheet(() => ({ label: load.label, value: load.power, dimension: 'power', source: cite(clause), role: 'item' }));
}

export interface ShareOfLoad {
  readonly label: string;
  /** W before the demand factor. */
  readonly load: number;
  readonly factor: number;
  readonly clause: Clause;
  readonly note?: string;
}

/** A load times its demand factor, W. */
export function shareOf({ label, load, factor, clause, note }: ShareOfLoad, sheet?: Sheet): number {
  const value = load * factor;
  sheet?.(() => ({
    label,
    formula: 'factor * load',
    inputs: { factor: [factor, 'ratio'], load: [load, 'power'] },
    value,
    dimension: 'power',
    source: cite(clause),
    note,
    role: 'item',
  }));
  return value;
}

export interface TieredLoad {
  readonly label: string;
  readonly load: number;
  readonly full: number;
  readonly beyond: number;
  readonly clause: Clause;
}

/** A load that counts in full up to a limit and at a share beyond it, W. */
export function tiered({ label, load, full, beyond, clause }: TieredLoad, sheet?: Sheet): number {
  const value = Math.min(load, full) + beyond * Math.max(load - full, 0);
  sheet?.(() => ({
    label,
    formula: 'min(load, full) + beyond * max(load - full, 0)',
    inputs: { load: [load, 'power'], full: [full, 'power'], beyond: [beyond, 'ratio'] },
    value,
    dimension: 'power',
    source: cite(clause),
    role: 'item',
  }));
  return value;
}

/** The parts of a load and their sum, W; parts of nothing are left out of the line. */
export function sumOf(label: string, parts: Readonly<Record<string, number>>, source: string, sheet?: Sheet): number {
  const value = Object.values(parts).reduce((sum, each) => sum + each, 0);
  sheet?.(() => {
    const present = Object.entries(parts).filter(([, part]) => part !== 0);
    return {
      label,
      formula: present.map(([name]) => name).join(' + ') || '0',
      inputs: Object.fromEntries(present.map(([name, part]) => [name, [part, 'power'] as const])),
      value,
      dimension: 'power',
      source,
      role: 'total',
    };
  });
  return value;
}
