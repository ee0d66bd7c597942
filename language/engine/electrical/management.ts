import { cite, type Edition, type ManagementRule, type ServiceMethod } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { totalPower, type Demand, type Dwelling, type Load } from './loads.js';
import { serviceLoad } from './service-load.js';

/** A load manager as the calculated load sees it. */
export interface Manager {
  readonly label: string;
  /** Current that it keeps, A. */
  readonly setPoint: number;
  readonly senses: 'service' | 'feeder';
  readonly credit: 'by-edition' | 'authority-accepts' | 'none';
  /** Names of the loads that it can shed altogether. */
  readonly sheds: readonly string[];
}

/** Managed loads that the calculation may credit, and those that it may not. */
export interface Credit {
  readonly credited: readonly Load[];
  readonly uncredited: readonly Load[];
}

/** What the edition, or the authority in writing, lets the calculation credit of one manager. */
export function creditOf(loads: readonly Load[], manager: Manager, rule: ManagementRule): Credit {
  const managed = loads.filter(load => manager.sheds.includes(load.name));
  const credited = managed.filter(load => {
    if (manager.credit === 'none') return false;
    return manager.credit === 'authority-accepts' || rule.credits === 'all-loads' || load.kind === 'vehicle';
  });
  return { credited, uncredited: managed.filter(load => !credited.includes(load)) };
}

export interface ManagedDemand extends Demand {
  /** Whether the loads or a manager's set-point decide. */
  readonly governs: 'loads' | 'set-point';
}

export interface ManagedService {
  readonly dwelling: Dwelling;
  readonly managers: readonly Manager[];
  readonly edition: Edition;
  readonly method: ServiceMethod;
  /** Volts across both legs. */
  readonly voltage: number;
}

/**
 * Load of a dwelling with the credit of its load managers, W. What a manager of the service can shed is left out of the
 * itemized load; where the edition counts the set-point, the service carries at least that (unless all loads together stay
 * below it), as a continuous load. A manager on a feeder limits its group of loads to the set-point instead.
 */
export function managedLoad(service: ManagedService, sheet?: Sheet): ManagedDemand {
  const limited = behindFeeders(service, sheet);
  const onService = service.managers.filter(manager => manager.senses === 'service');
  const shed = onService.flatMap(manager =>
    creditOf(limited.loads, manager, service.edition.management).credited.map(load => ({ load, manager })),
  );
  if (shed.length === 0) return { ...serviceLoad(limited, service.method, sheet), governs: 'loads' };
  for (const manager of new Set(shed.map(each => each.manager))) deviceLine(manager, service.edition, sheet);
  for (const { load, manager } of shed)
    sheet?.(() => ({
      label: `${load.label}, shed by ${manager.label}`,
      formula: 'counted * power',
      inputs: { counted: [0, 'ratio'], power: [load.power, 'power'] },
      value: 0,
      dimension: 'power',
      ...groundOf(load, manager, service.edition.management),
      role: 'item',
    }));
  const kept = limited.loads.filter(load => !shed.some(each => each.load === load));
  const uncontrolled = serviceLoad({ ...limited, loads: kept }, service.method, sheet);
  if (service.edition.management.basis === 'not-counted') return { ...uncontrolled, governs: 'loads' };
  return heldAt(Math.min(...shed.map(({ manager }) => manager.setPoint)), { service, limited, uncontrolled }, sheet);
}

interface Held {
  readonly service: ManagedService;
  readonly limited: Dwelling;
  readonly uncontrolled: Demand;
}

/**
 * The service carries its set-point, what cannot be controlled, or all loads together when they stay below. For its rating
 * the set-point lasts as a whole, and what cannot be controlled in its lasting part: the larger of the two, and never more
 * than all loads need. Raising the set-point therefore never lowers what the service needs.
 */
function heldAt(setPoint: number, { service, limited, uncontrolled }: Held, sheet?: Sheet): ManagedDemand {
  const { edition, method, voltage } = service;
  const { factor } = edition.serviceContinuous;
  const full = serviceLoad(limited, method);
  const held = setPoint * voltage;
  const power = Math.min(full.power, Math.max(held, uncontrolled.power));
  sheet?.(() => ({
    label: 'Load with load management',
    formula: 'min(all, max(setPoint * voltage, uncontrolled))',
    inputs: {
      all: [full.power, 'power'],
      setPoint: [setPoint, 'current'],
      voltage: [voltage, 'voltage'],
      uncontrolled: [uncontrolled.power, 'power'],
    },
    value: power,
    dimension: 'power',
    source: cite(edition.management.clause),
    role: 'total',
  }));
  const governs = power < full.power && held >= uncontrolled.power ? 'set-point' : 'loads';
  if (factor <= 1) return { power, continuous: uncontrolled.continuous, governs };
  const needOf = (load: Demand) => load.power + (factor - 1) * load.continuous;
  const needed = Math.min(needOf(full), Math.max(needOf(uncontrolled), factor * held));
  const continuous = (needed - power) / (factor - 1);
  sheet?.(() => ({
    label: 'Lasting part of it, as the rating sees it',
    formula: '(min(all, max(uncontrolled, factor * setPoint * voltage)) - load) / (factor - 1)',
    inputs: {
      all: [needOf(full), 'power'],
      uncontrolled: [needOf(uncontrolled), 'power'],
      factor: [factor, 'ratio'],
      setPoint: [setPoint, 'current'],
      voltage: [voltage, 'voltage'],
      load: [power, 'power'],
    },
    value: continuous,
    dimension: 'power',
    source: cite(edition.serviceContinuous.clause),
    note: 'all and uncontrolled with a quarter more of what lasts in them; the set-point lasts as a whole',
  }));
  return { power, continuous, governs };
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
    role: 'total',
  }));
  return management.share * rating;
}

const source = ({ credit }: Manager, rule: ManagementRule): string =>
  credit === 'authority-accepts' ? 'accepted by the authority in writing' : cite(rule.clause);

/** Whether the credit of a load rests on the words for other loads than vehicle charging. */
export const restsOnOthers = ({ kind }: Load, rule: ManagementRule): boolean =>
  kind !== 'vehicle' && rule.others !== undefined;

/** What the credit for one load rests on. */
function groundOf(load: Load, manager: Manager, rule: ManagementRule): { source: string; note: string | undefined } {
  const { others } = rule;
  if (manager.credit !== 'by-edition' || !others || !restsOnOthers(load, rule))
    return { source: source(manager, rule), note: undefined };
  return { source: cite(others), note: others.note };
}

/** What the edition asks of the manager itself before its setting counts. */
function deviceLine({ label, setPoint, credit }: Manager, { management: { device } }: Edition, sheet?: Sheet): void {
  if (!device || credit !== 'by-edition') return;
  sheet?.(() => ({
    label: `Setting of ${label}`,
    value: setPoint,
    dimension: 'current',
    source: cite(device.clause),
    note: device.requires,
  }));
}

/** The loads of a group behind a feeder share its set-point; each is taken at the same share of its power. */
function behindFeeders({ dwelling, managers, edition, voltage }: ManagedService, sheet?: Sheet): Dwelling {
  let { loads } = dwelling;
  for (const manager of managers) {
    const { credited } = creditOf(loads, manager, edition.management);
    if (manager.senses === 'service' || credited.length === 0) continue;
    const together = totalPower(credited);
    const allowed = Math.min(together, manager.setPoint * voltage);
    deviceLine(manager, edition, sheet);
    sheet?.(() => ({
      label: `Group behind ${manager.label}`,
      formula: 'min(together, setPoint * voltage)',
      inputs: {
        together: [together, 'power'],
        setPoint: [manager.setPoint, 'current'],
        voltage: [voltage, 'voltage'],
      },
      value: allowed,
      dimension: 'power',
      source: manager.credit === 'by-edition' ? cite(edition.management.group) : source(manager, edition.management),
      note: 'each load below is taken at its part of this',
    }));
    loads = loads.map(load => (credited.includes(load) ? { ...load, power: (load.power * allowed) / together } : load));
  }
  return { ...dwelling, loads };
}

/** Current left to managed vehicle chargers of which `active` run at once on one circuit, A each. */
export function sharedCircuit(
  { breaker, largest, active }: { readonly breaker: number; readonly largest: number; readonly active: number },
  { circuits }: Edition,
): number {
  return Math.min(largest, (circuits.continuous.share * breaker) / active);
}
