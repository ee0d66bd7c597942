import { cite, edition as editionOf, type Edition, type ServiceMethod } from '../../codes/index.js';
import { Withheld, type Block, type House } from '../../model/index.js';
import { named } from '../envelope/named.js';
import { once } from '../once.js';
import type { Sheet } from '../worksheet.js';
import { loadsOf, loadsOn } from './house-loads.js';
import { floorAreaAboveGrade, livingArea, type Storey } from './living-area.js';
import { totalPower, type Demand, type Dwelling, type Load } from './loads.js';
import { creditOf, managedLoad, type Manager } from './management.js';
import { methodFor, minimumRating, ratingNeeded, serviceAmperes, serviceLoad } from './service-load.js';

/** The edition that a house names. */
export function editionFor({ electricalCode }: House): Edition {
  if (!electricalCode) throw new Withheld('the house names no electrical-code');
  return editionOf(electricalCode);
}

/** All that the rules for a service ask of a house. */
export interface HouseService {
  readonly edition: Edition;
  readonly method: ServiceMethod;
  readonly rating: number;
  readonly voltage: number;
  readonly dwelling: Dwelling;
  readonly managers: readonly Manager[];
}

export const houseService = once((house: House, sheet?: Sheet): HouseService => {
  const { service, load } = house.electrical;
  const edition = editionFor(house);
  if (!service) throw new Withheld('there is no service block');
  if (house.storey.length === 0) throw new Withheld('there is no storey to count the living area by');
  if (house.suite.length > 0) throw new Withheld('two dwelling units on one service follow another rule than one');
  const storeys = house.storey.map(storeyOf);
  const general = load.filter(({ kind }) => kind === 'lighting-and-receptacles');
  return {
    edition,
    rating: service.rating,
    voltage: service.voltage,
    method: methodFor(edition, service.rating),
    dwelling: {
      livingArea: livingArea(storeys, edition, sheet),
      floorArea: floorAreaAboveGrade(storeys),
      smallApplianceCircuits: Math.max(0, ...general.map(each => each.smallApplianceCircuits)),
      laundryCircuits: Math.max(0, ...general.map(each => each.laundryCircuits)),
      loads: loadsOf(house).flatMap(each => each.service() ?? []),
    },
    managers: house.electrical.loadManager.map(manager => managerOf(manager, service.rating, house)),
  };
});

const storeyOf = (storey: Block<'storey'>): Storey => ({
  label: named(storey),
  area: storey.area,
  outsideArea: storey.outsideArea,
  height: storey.height,
  level: storey.level,
  finish: storey.finished ? 'finished' : 'unfinished',
});

/** The current that a load manager keeps, A. */
export function setPointOf(manager: Block<'load-manager'>, rating: number): number {
  if (manager.limit !== undefined) return manager.limit;
  if (manager.limitFraction !== undefined) return manager.limitFraction * rating;
  throw new Withheld(`${named(manager)} states no limit`);
}

function managerOf(manager: Block<'load-manager'>, rating: number, house: House): Manager {
  return {
    label: named(manager),
    setPoint: setPointOf(manager, rating),
    senses: manager.senses === 'service' ? 'service' : 'feeder',
    credit: manager.credit.says,
    sheds: managedBlocks(manager, house).map(({ name }) => name),
  };
}

/** What the channels of a manager shed: loads that they name, and loads on circuits that they name. */
const managedBlocks = (manager: Block<'load-manager'>, house: House): readonly { readonly name: string }[] =>
  manager.channel.flatMap(({ sheds }): readonly { readonly name: string }[] =>
    sheds.is === 'circuit' ? loadsOn(house, sheds).map(({ block }) => block) : [sheds],
  );

/** Loads that managers shed in this house, by whether the edition or the authority credits them. */
export const managedLoads = once(
  (house: House): { readonly credited: readonly Load[]; readonly uncredited: readonly Load[] } => {
    const { dwelling, managers, edition } = houseService(house);
    const each = managers.map(manager => creditOf(dwelling.loads, manager, edition.management));
    return {
      credited: each.flatMap(({ credited }) => credited),
      uncredited: each.flatMap(({ uncredited }) => uncredited),
    };
  },
);

/** Load by the code before its minimum, W, without and with the credit of load management. */
const unmanagedLoad = once((house: House, sheet?: Sheet): Demand => {
  const { dwelling, method } = houseService(house, sheet);
  return serviceLoad(dwelling, method, sheet);
});
const creditedLoad = once((house: House, sheet?: Sheet): Demand => managedLoad(houseService(house, sheet), sheet));

/** Load of the service in A by the items of the code, with the credit that the edition or the authority gives. */
export const serviceDemand = once((house: House, sheet?: Sheet): number =>
  amperesOf(house, creditedLoad(house, sheet), sheet),
);

/** Load of the service in A as if the authority accepted every managed load. */
export const serviceDemandWithAllManaged = once((house: House, sheet?: Sheet): number => {
  const service = houseService(house, sheet);
  const managers = service.managers.map(manager => ({ ...manager, credit: 'authority-accepts' as const }));
  return amperesOf(house, managedLoad({ ...service, managers }, sheet), sheet);
});

/** Load of what no manager sheds, in A by the code's items: what a manager has to live with. */
export const uncontrolledDemand = once((house: House, sheet?: Sheet): number => {
  const { edition, ...service } = houseService(house, sheet);
  const uncontrolled = { ...edition, management: { ...edition.management, basis: 'not-counted' as const } };
  const { power } = managedLoad({ ...service, edition: uncontrolled }, sheet);
  return serviceAmperes(power, service.voltage, edition, sheet);
});

/** Load of the service in A as if nothing were managed. */
export const serviceDemandWithoutManagement = once((house: House, sheet?: Sheet): number =>
  amperesOf(house, unmanagedLoad(house, sheet), sheet),
);

/** Amperes of a load. The smallest service of the code is not a load and is left to the rating. */
function amperesOf(house: House, { power }: Demand, sheet?: Sheet): number {
  const { edition, voltage } = houseService(house);
  return serviceAmperes(power, voltage, edition, sheet);
}

/** Rating that the service needs in A: for its load with the continuous part, and never less than the code's smallest. */
export const serviceRatingNeeded = once((house: House, sheet?: Sheet): number => {
  const { edition, voltage, dwelling } = houseService(house);
  const demand = creditedLoad(house, sheet);
  const load = amperesOf(house, demand, sheet);
  const needed = ratingNeeded(demand, voltage, edition, sheet);
  const least = minimumRating(dwelling.floorArea, edition, sheet);
  const value = Math.max(needed, least);
  sheet?.(() => ({
    label: `Rating needed: ${least > needed ? 'the smallest service of the code governs' : 'the load governs'}`,
    formula: 'max(needed, smallest)',
    inputs: { needed: [needed, 'current'], smallest: [least, 'current'] },
    value,
    dimension: 'current',
    source: cite(edition.minimum.clause),
    note:
      least > needed ? `not the load of ${load.toFixed(1)} A; load management cannot lower the smallest` : undefined,
    role: 'total',
  }));
  return value;
});

/** Rating that the load needs in A where no more is credited than vehicle charging and what the authority accepts. */
export const ratingNeededWithChargersManaged = once((house: House): number => {
  const service = houseService(house);
  const { edition, voltage } = service;
  const chargers = { ...edition, management: { ...edition.management, credits: 'vehicle-charging' as const } };
  return ratingNeeded(managedLoad({ ...service, edition: chargers }), voltage, edition);
});

/**
 * Amperes that the service has left. While it is at least as large as the code's smallest, that is what may still be added
 * to the items; a service below the smallest is short by the difference, however little it carries.
 */
export const serviceHeadroom = once((house: House, sheet?: Sheet): number => {
  const { edition, voltage, dwelling, rating } = houseService(house);
  const items = ratingNeeded(creditedLoad(house, sheet), voltage, edition, sheet);
  const least = minimumRating(dwelling.floorArea, edition, sheet);
  const needed = rating >= least ? items : Math.max(items, least);
  sheet?.(() => ({
    label: 'Remaining',
    formula: 'rating - needed',
    inputs: { rating: [rating, 'current'], needed: [needed, 'current'] },
    value: rating - needed,
    dimension: 'current',
    source: cite(edition.serviceContinuous.clause),
    role: 'total',
  }));
  return rating - needed;
});

/** Running power of the loads that management takes out of the calculated load, W. */
export const managedPower = once((house: House, sheet?: Sheet): number => {
  const { credited } = managedLoads(house);
  const rule = editionFor(house).management;
  for (const load of credited)
    sheet?.(() => ({
      label: load.label,
      value: load.power,
      dimension: 'power',
      source: cite(rule.clause),
      role: 'item',
    }));
  const value = totalPower(credited);
  sheet?.(() => ({
    label: 'Managed and credited',
    value,
    dimension: 'power',
    source: cite(rule.clause),
    role: 'total',
  }));
  return value;
});

/** Running power of everything that is counted item by item, W. */
export const connectedPower = once((house: House, sheet?: Sheet): number => {
  const { loads } = houseService(house).dwelling;
  for (const load of loads)
    sheet?.(() => ({ label: load.label, value: load.power, dimension: 'power', source: 'as stated', role: 'item' }));
  sheet?.(() => ({
    label: 'Connected load beside light and outlets',
    value: totalPower(loads),
    dimension: 'power',
    source: 'sum of the lines above',
    role: 'total',
  }));
  return totalPower(loads);
});
