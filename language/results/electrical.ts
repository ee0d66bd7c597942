import {
  circuitAmpacity,
  circuitAmpacityNeeded,
  circuitCurrent,
  circuitHeadroom,
  circuitLargestBreaker,
  circuitNeedOf,
  circuitVoltageDrop,
  panelSpacesLeft,
  panelSpacesUsed,
} from '../engine/electrical/house-circuits.js';
import {
  connectedPower,
  editionFor,
  houseService,
  managedPower,
  serviceDemand,
  serviceDemandWithAllManaged,
  serviceDemandWithoutManagement,
  serviceHeadroom,
  serviceRatingNeeded,
  setPointOf,
  uncontrolledDemand,
} from '../engine/electrical/house-service.js';
import { largestSetPoint } from '../engine/electrical/management.js';
import { minimumRating } from '../engine/electrical/service-load.js';
import { Withheld, type Block } from '../model/index.js';
import { result } from './define.js';

function mainBreaker(panel: Block<'panel'>): number {
  if (panel.mainBreaker === undefined) throw new Withheld('the panel states no main-breaker');
  return panel.mainBreaker;
}

/** The service, its panels, circuits and managers. */
export const electricalResults = [
  result('service.demand', 'house', {
    dimension: 'current',
    tier: 'design',
    headline: true,
    better: 'less',
    doc: 'Load of the service by the items of the named edition of the code, with the credit of load management that the edition or the authority gives. The smallest service of the code stands apart, in service.smallest.',
    compute: (house, _, sheet) => serviceDemand(house, sheet),
  }),
  result('service.demand-without-management', 'house', {
    dimension: 'current',
    tier: 'design',
    better: 'less',
    doc: 'Load of the service by the items of the named edition of the code as if nothing were managed.',
    compute: (house, _, sheet) => serviceDemandWithoutManagement(house, sheet),
  }),
  result('service.demand-with-all-managed', 'house', {
    dimension: 'current',
    tier: 'design',
    better: 'less',
    doc: 'Load of the service by the items of the code as if the authority accepted the shedding of every load that a manager sheds.',
    compute: (house, _, sheet) => serviceDemandWithAllManaged(house, sheet),
  }),
  result('service.uncontrolled-demand', 'house', {
    dimension: 'current',
    tier: 'design',
    better: 'less',
    doc: 'Load by the items of the code of everything that no credited manager sheds.',
    compute: (house, _, sheet) => uncontrolledDemand(house, sheet),
  }),
  result('service.headroom', 'house', {
    dimension: 'current',
    tier: 'design',
    headline: true,
    better: 'more',
    doc: 'Amperes of load that can still be added before the rating is passed, long-lasting parts counted as the code asks. The smallest service is not a load; below zero the service is overloaded or smaller than the code allows.',
    compute: (house, _, sheet) => serviceHeadroom(house, sheet),
  }),
  result('service.rating-needed', 'house', {
    dimension: 'current',
    tier: 'design',
    better: 'less',
    doc: 'Rating that breaker and conductors of the service need: for the load, and never less than the smallest service that the code allows.',
    compute: (house, _, sheet) => serviceRatingNeeded(house, sheet),
  }),
  result('service.smallest', 'house', {
    dimension: 'current',
    tier: 'design',
    doc: 'Smallest service that the code allows this dwelling, however little it draws. Load management does not lower it.',
    compute: (house, _, sheet) =>
      minimumRating(houseService(house).dwelling.floorArea, houseService(house).edition, sheet),
  }),
  result('service.managed-load', 'house', {
    dimension: 'power',
    tier: 'design',
    doc: 'Running power of the loads that load management takes out of the calculated load.',
    compute: (house, _, sheet) => managedPower(house, sheet),
  }),
  result('service.connected-load', 'house', {
    dimension: 'power',
    tier: 'design',
    better: 'less',
    doc: 'Running power of all loads that are counted item by item, before any demand factor.',
    compute: (house, _, sheet) => connectedPower(house, sheet),
  }),
  result('service.living-area', 'house', {
    dimension: 'area',
    tier: 'design',
    doc: 'Living area as the electrical code counts it.',
    compute: (house, _, sheet) => houseService(house, sheet).dwelling.livingArea,
  }),
  result('spaces-left', 'panel', {
    dimension: 'number',
    tier: 'meaning',
    better: 'more',
    doc: 'Free spaces of the panel: two for each two-pole breaker, one for each pair of tandem halves are taken.',
    compute: (panel, _, sheet) => panelSpacesLeft(panel, sheet),
  }),
  result('spaces-used', 'panel', {
    dimension: 'number',
    tier: 'meaning',
    doc: 'Spaces that the breakers of the panel take.',
    compute: (panel, _, sheet) => panelSpacesUsed(panel, sheet),
  }),
  result('main-breaker-share', 'panel', {
    dimension: 'ratio',
    tier: 'design',
    better: 'less',
    doc: 'Load of the service by the items of the code over the main breaker of the panel, for a panel that the service feeds.',
    compute: (panel, house, sheet) => {
      if (panel.fedBy) throw new Withheld('the demand of a subpanel is not computed');
      const demand = serviceDemand(house);
      const main = mainBreaker(panel);
      sheet?.(() => ({
        label: 'Share of the main breaker',
        formula: 'demand / main',
        inputs: { demand: [demand, 'current'], main: [main, 'current'] },
        value: demand / main,
        dimension: 'ratio',
        source: 'calculated load of the service',
        role: 'total',
      }));
      return demand / main;
    },
  }),
  result('load', 'circuit', {
    dimension: 'current',
    tier: 'design',
    doc: 'Current the circuit is sized for: of the loads that name it, a range by its demand.',
    compute: (circuit, house, sheet) => circuitCurrent(house, circuit, sheet),
  }),
  result('breaker-needed', 'circuit', {
    dimension: 'current',
    tier: 'design',
    doc: 'Least breaker for the loads that name the circuit, before it is rounded up to a standard rating.',
    compute: (circuit, house, sheet) => circuitNeedOf(house, circuit, sheet).breaker,
  }),
  result('ampacity-needed', 'circuit', {
    dimension: 'current',
    tier: 'design',
    doc: 'Least ampacity of conductors for the loads that name the circuit.',
    compute: (circuit, house, sheet) => circuitAmpacityNeeded(house, circuit, sheet),
  }),
  result('conductor-ampacity', 'circuit', {
    dimension: 'current',
    tier: 'design',
    better: 'more',
    doc: 'Ampacity of the conductors: insulation, surroundings and company, ended at the terminations.',
    compute: (circuit, house, sheet) => circuitAmpacity(house, circuit, sheet),
  }),
  result('largest-breaker', 'circuit', {
    dimension: 'current',
    tier: 'design',
    doc: 'Largest breaker that may stand before the conductors for what they feed.',
    compute: (circuit, house, sheet) => circuitLargestBreaker(house, circuit, sheet),
  }),
  result('headroom', 'circuit', {
    dimension: 'current',
    tier: 'design',
    better: 'more',
    doc: 'Breaker less what the loads that name the circuit need.',
    compute: (circuit, house, sheet) => circuitHeadroom(house, circuit, sheet),
  }),
  result('voltage-drop', 'circuit', {
    dimension: 'ratio',
    tier: 'design',
    better: 'less',
    doc: 'Voltage drop of the circuit at its load.',
    compute: (circuit, house, sheet) => circuitVoltageDrop(house, circuit, sheet),
  }),
  result('limit', 'load-manager', {
    dimension: 'current',
    tier: 'design',
    doc: 'Current that the load manager keeps.',
    compute: (manager, house, sheet) => {
      const value = setPointOf(manager, houseService(house).rating);
      sheet?.(() => ({ label: 'Limit', value, dimension: 'current', source: 'as stated' }));
      return value;
    },
  }),
  result('largest-limit', 'load-manager', {
    dimension: 'current',
    tier: 'design',
    doc: 'Largest limit that the code lets a load manager keep on this service.',
    compute: (_, house, sheet) => largestSetPoint(houseService(house).rating, editionFor(house), sheet),
  }),
];
