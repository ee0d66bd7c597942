import type { Block, House } from '../../model/index.js';

export type Vented = Block<'furnace' | 'boiler' | 'water-heater' | 'wood-stove'>;

/** Everything in a house that burns a fuel. */
export function burners({ heating, waterHeating }: House): readonly Vented[] {
  return [
    ...heating.furnace.filter(f => f.fuel !== 'electricity'),
    ...heating.boiler.filter(b => b.fuel !== 'electricity'),
    ...heating.woodStove,
    ...waterHeating.waterHeater.filter(w => w.fuel !== undefined && w.fuel !== 'electricity'),
  ];
}

/** What vents through an opening. */
export const ventingBy = (house: House, opening: Block<'opening'>): readonly Vented[] =>
  burners(house).filter(b => b.ventsBy === opening);
