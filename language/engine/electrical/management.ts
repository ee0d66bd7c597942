import { cite, type Edition, type ManagementRule, type ServiceMethod } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { ofKind, totalPower, type Demand, type Dwelling, type Load } from './loads.js';
import { serviceLoad } from './service-load.js';

/** A load manager as the calculated load sees it. */
export interface Manager {
  /** Current that it keeps, A. */
  readonly setPoint: number;
  readonly senses: 'service' | 'feeder';
  readonly credit: 'by-edition' | 'authority-accepts' | 'none';
  readonly channels: readonly { readonly load: string; /** W that it cannot shed. */ readonly least: number }[];
}

/** Loads of a manager that the calculation may credit, and those that it may not. */
export interface Credit {
  readonly credited: readonly Load[];
  readonly uncredited: readonly Load[];
}

/** What the edition, or the authority in writing, lets the calculation credit. */
export function creditOf(loads: readonly Load[], manager: Manager, rule: ManagementRule): Credit {
  const managed = loads.filter(load => manager.channels.some(channel => channel.load === load.name));
  const accepted = managed.filter(load => {
    if (manager.credit === 'none') return false;
    return manager.credit === 'authority-accepts' || rule.credits === 'all-loads' || load.kind === 'vehicle';
  });
  return { credited: accepted, uncredited: managed.filter(load => !accepted.includes(load)) };
}

export interface ManagedDemand extends Demand, Credit {
  /** Whether the loads or the manager's set-point decide. */
  readonly governs: 'loads' | 'set-point';
}

export interface ManagedService {
  readonly dwelling: Dwelling;
  readonly manager: Manager;
  readonly edition: Edition;
  readonly method: ServiceMethod;
  /** Volts across both legs. */
  readonly voltage: number;
}

/**
 * Load of a dwelling with the credit of its load manager, W. What the manager can shed is left out of the itemized load;
 * where the edition counts the set-point, the service carries at least that (unless all loads together stay below it),
 * as a continuous load. A manager on a feeder limits its group of loads to the set-point instead.
 */
export function managedLoad(service: ManagedService, sheet?: Sheet): ManagedDemand {
  const { dwelling, manager, edition, method, voltage } = service;
  const rule = edition.management;
  const credit = creditOf(dwelling.loads, manager, rule);
  const full = serviceLoad(dwelling, method);
  if (credit.credited.length === 0) return { ...serviceLoad(dwelling, method, sheet), ...credit, governs: 'loads' };
  if (manager.senses === 'feeder') return { ...limitedGroup(service, credit, sheet), ...credit, governs: 'loads' };

  for (const load of credit.credited)
    sheet?.(() => ({
      label: `${load.label}, shed by the load manager`,
      value: leastOf(load, manager),
      dimension: 'power',
      source: source(manager, rule),
      note: `${Math.round(load.power)} W when it runs`,
    }));
  const kept = dwelling.loads.flatMap(load => {
    if (!credit.credited.includes(load)) return [load];
    const least = leastOf(load, manager);
    return least > 0 ? [{ ...load, power: least }] : [];
  });
  const uncontrolled = serviceLoad({ ...dwelling, loads: kept }, method, sheet);
  if (rule.basis === 'not-counted') return { ...uncontrolled, ...credit, governs: 'loads' };

  const held = manager.setPoint * voltage;
  const power = Math.min(full.power, Math.max(held, uncontrolled.power));
  sheet?.(() => ({
    label: 'Load that the manager allows',
    formula: 'min(all, max(setPoint * voltage, uncontrolled))',
    inputs: {
      all: [full.power, 'power'],
      setPoint: [manager.setPoint, 'current'],
      voltage: [voltage, 'voltage'],
      uncontrolled: [uncontrolled.power, 'power'],
    },
    value: power,
    dimension: 'power',
    source: source(manager, rule),
  }));
  if (power >= full.power) return { ...full, ...credit, governs: 'loads' };
  if (power > held) return { ...uncontrolled, ...credit, governs: 'loads' };
  return { power, continuous: power, ...credit, governs: 'set-point' };
}

/** Largest set-point over a breaker of this rating, A: the manager keeps a continuous load. */
export function largestSetPoint(rating: number, { management }: Edition, sheet?: Sheet): number {
  sheet?.(() => ({
    label: 'Largest limit of the load manager',
    formula: 'share * rating',
    inputs: { share: [management.share, 'ratio'], rating: [rating, 'current'] },
    value: management.share * rating,
    dimension: 'current',
    source: cite(management.limit),
  }));
  return management.share * rating;
}

const leastOf = (load: Load, { channels }: Manager): number =>
  Math.min(load.power, channels.find(channel => channel.load === load.name)?.least ?? 0);

const source = ({ credit }: Manager, rule: ManagementRule): string =>
  credit === 'authority-accepts' ? 'accepted by the authority in writing' : cite(rule.clause);

/** The loads of a group share its set-point; each is taken at the same share of its power. */
function limitedGroup(
  { dwelling, manager, edition, method, voltage }: ManagedService,
  { credited }: Credit,
  sheet?: Sheet,
): Demand {
  const together = totalPower(credited);
  const allowed = Math.min(together, manager.setPoint * voltage);
  sheet?.(() => ({
    label: 'Group behind the load manager',
    formula: 'min(together, setPoint * voltage)',
    inputs: {
      together: [together, 'power'],
      setPoint: [manager.setPoint, 'current'],
      voltage: [voltage, 'voltage'],
    },
    value: allowed,
    dimension: 'power',
    source: cite(edition.management.group),
  }));
  const loads = dwelling.loads.map(load =>
    credited.includes(load) ? { ...load, power: (load.power * allowed) / together } : load,
  );
  return serviceLoad({ ...dwelling, loads }, method, sheet);
}

/** Current left to managed vehicle chargers of which `active` run at once on one circuit, A each. */
export function sharedCircuit(
  { breaker, largest, active }: { readonly breaker: number; readonly largest: number; readonly active: number },
  { circuits }: Edition,
): number {
  return Math.min(largest, (circuits.continuous.share * breaker) / active);
}

/** Vehicle charging among the loads, W. */
export const vehiclePower = (loads: readonly Load[]): number => totalPower(ofKind(loads, 'vehicle'));
