import { Withheld, type Block, type House } from '../../model/index.js';

/** A design condition by its name. A house without the pair is not judged by another one. */
export function condition(house: House, name: 'code' | 'comfort'): Block<'design'> {
  const found = house.design.find(d => d.name === name);
  if (!found) throw new Withheld(`there is no design block named ${name}`);
  if (found.outdoor >= found.indoor) throw new Withheld(`design ${name} is not colder outdoors than indoors`);
  return found;
}
