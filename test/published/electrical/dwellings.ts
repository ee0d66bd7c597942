import type { ServiceMethod } from '../../../language/codes/index.js';
import { edition, type EditionName } from '../../../language/codes/index.js';
import type { Dwelling, Load, LoadKind } from '../../../language/engine/electrical/loads.js';

let count = 0;
export const load = (kind: LoadKind, power: number, more: Partial<Load> = {}): Load => ({
  name: `${kind}-${++count}`,
  label: kind,
  kind,
  power,
  voltage: 240,
  ...more,
});

export const dwelling = (livingArea: number, loads: readonly Load[], more: Partial<Dwelling> = {}): Dwelling => ({
  livingArea,
  floorArea: livingArea,
  smallApplianceCircuits: 2,
  laundryCircuits: 1,
  loads,
  ...more,
});

/** One method of an edition by its name. */
export function method<M extends ServiceMethod['method']>(name: EditionName, wanted: M) {
  const found = edition(name).methods.find(m => m.method === wanted);
  if (!found) throw new Error(`${name} has no ${wanted}.`);
  return found as Extract<ServiceMethod, { method: M }>;
}
