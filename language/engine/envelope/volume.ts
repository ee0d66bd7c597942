import { Withheld, type House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import { positive } from './positive.js';

/** Volume of heated air: as stated, else area times height of the heated storeys. */
export function heatedVolume(house: House): Si<'volume'> {
  if (house.volume !== undefined) return positive(house.volume, 'the volume of the house');
  const heated = house.storey.filter(s => s.heated);
  if (heated.length === 0) throw new Withheld('there is no heated storey, and the house says no volume');
  return positive(
    heated.reduce((sum, s) => sum + s.area * s.height, 0),
    'the volume of the heated storeys',
  );
}

/** Floor area of the heated storeys. */
export function heatedFloor(house: House): Si<'area'> {
  const heated = house.storey.filter(s => s.heated);
  if (heated.length === 0) throw new Withheld('there is no heated storey');
  return positive(
    heated.reduce((sum, s) => sum + s.area, 0),
    'the floor area of the heated storeys',
  );
}

/** Storeys above grade as the infiltration tables count them: one to three. */
export function storeysAboveGrade(house: House): 1 | 2 | 3 {
  const count = house.storey.filter(s => s.level === 'above-grade' && s.heated).length;
  if (count === 0) throw new Withheld('there is no heated storey above grade');
  return count === 1 ? 1 : count === 2 ? 2 : 3;
}

/** Height of the heated house above grade. */
export function heightAboveGrade(house: House): Si<'length'> {
  const above = house.storey.filter(s => s.level === 'above-grade' && s.heated);
  if (above.length === 0) throw new Withheld('there is no heated storey above grade');
  return positive(
    above.reduce((sum, s) => sum + s.height, 0),
    'the height above grade',
  );
}
