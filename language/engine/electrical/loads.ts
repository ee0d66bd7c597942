/** What a load is in the eyes of the rules for a service load. */
export type LoadKind =
  | 'range'
  | 'cooking-unit'
  | 'dryer'
  | 'water-heater'
  | 'tankless'
  | 'spa'
  | 'vehicle'
  | 'heat-pump'
  | 'supplementary'
  | 'room-heat'
  | 'central-heat'
  | 'storage-heat'
  | 'cooling'
  | 'blower'
  | 'appliance';

/** One load of a dwelling at its running power: W from the nameplate, or from running amperes and voltage. */
export interface Load {
  readonly name: string;
  readonly label: string;
  readonly kind: LoadKind;
  readonly power: number;
  readonly voltage: number;
  /** Separately controlled units that make up the load; one unless said. */
  readonly units?: number;
  /** Name of a load with which an interlock keeps it from running. */
  readonly lockedOutBy?: string;
}

export interface Dwelling {
  /** m2 as the edition counts living area. */
  readonly livingArea: number;
  /** m2 of floor above grade. */
  readonly floorArea: number;
  readonly smallApplianceCircuits: number;
  readonly laundryCircuits: number;
  readonly loads: readonly Load[];
}

/** W by the rules for the loads, and the part of it that lasts three hours or more. */
export interface Demand {
  readonly power: number;
  readonly continuous: number;
}

export const ofKind = (loads: readonly Load[], ...kinds: readonly LoadKind[]): readonly Load[] =>
  loads.filter(load => kinds.includes(load.kind));

export const totalPower = (loads: readonly Load[]): number => loads.reduce((sum, load) => sum + load.power, 0);

/** Of two loads that an interlock keeps apart only the larger is left; a chain of interlocks is taken pair by pair. */
export function withoutLockedOut(loads: readonly Load[]): readonly Load[] {
  const smaller = loads.flatMap(load => {
    const other = loads.find(candidate => candidate.name === load.lockedOutBy);
    if (!other) return [];
    return [load.power <= other.power ? load : other];
  });
  return loads.filter(load => !smaller.includes(load));
}
