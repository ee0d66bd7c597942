import { cite, type Edition, type ServiceMethod } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { basicAndAppliances } from './basic-and-appliances.js';
import { withoutLockedOut, type Demand, type Dwelling } from './loads.js';
import { optionalDwelling } from './optional-dwelling.js';
import { standardDwelling } from './standard-dwelling.js';

/** The method that the edition prefers among those that allow a service of this rating, A. */
export const methodFor = ({ methods }: Edition, rating: number): ServiceMethod =>
  methods.find(method => rating >= method.leastRating) ?? methods[methods.length - 1];

/** Load of a dwelling by one method, W; interlocked loads count once. */
export function serviceLoad(dwelling: Dwelling, method: ServiceMethod, sheet?: Sheet): Demand {
  const counted = { ...dwelling, loads: withoutLockedOut(dwelling.loads) };
  switch (method.method) {
    case 'basic-and-appliances':
      return basicAndAppliances(counted, method, sheet);
    case 'optional-dwelling':
      return optionalDwelling(counted, method, sheet);
    case 'standard-dwelling':
      return standardDwelling(counted, method, sheet);
  }
}

/** Amperes of a load on both legs of the service. */
export function serviceAmperes(power: number, voltage: number, { divisor }: Edition, sheet?: Sheet): number {
  sheet?.(() => ({
    label: 'Amperes',
    formula: 'load / voltage',
    inputs: { load: [power, 'power'], voltage: [voltage, 'voltage'] },
    value: power / voltage,
    dimension: 'current',
    source: cite(divisor),
    role: 'total',
  }));
  return power / voltage;
}

/** Smallest service that the code allows a dwelling of this floor area above grade (m2), A. No manager lowers it. */
export function minimumRating(floorArea: number, { minimum }: Edition, sheet?: Sheet): number {
  const step = minimum.steps.find(({ from }) => floorArea >= from) ?? minimum.steps[minimum.steps.length - 1];
  sheet?.(() => ({
    label: 'Smallest service for the dwelling',
    value: step.rating,
    dimension: 'current',
    source: cite(minimum.clause),
    note: minimum.steps.length > 1 ? 'by the floor area above grade' : undefined,
  }));
  return step.rating;
}

/** Rating that the breaker and conductors of a service need for a load of which a part is continuous, A. */
export function ratingNeeded(
  { power, continuous }: Demand,
  voltage: number,
  { serviceContinuous: rule }: Edition,
  sheet?: Sheet,
): number {
  const value = (power + (rule.factor - 1) * continuous) / voltage;
  sheet?.(() => ({
    label: 'Rating that the load needs',
    formula: '(load + (factor - 1) * continuous) / voltage',
    inputs: {
      load: [power, 'power'],
      factor: [rule.factor, 'ratio'],
      continuous: [continuous, 'power'],
      voltage: [voltage, 'voltage'],
    },
    value,
    dimension: 'current',
    source: cite(rule.clause),
  }));
  return value;
}
