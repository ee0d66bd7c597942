import type { Block, House } from '../../../language/model/index.js';
import type { Kind } from '../../../language/vocabulary/index.js';
import { make, makeHouse as bare } from '../../make-house.js';

/** Makes blocks of one kind from what a test says of them; the rest has its default. */
const maker =
  <K extends Kind>(kind: K) =>
  (name: string, part: Partial<Block<K>> = {}): Block<K> =>
    make(kind, part, name);

export const circuit = (name: string, part: Partial<Block<'circuit'>> = {}): Block<'circuit'> =>
  make('circuit', { breaker: 40, poles: 2, conductor: 'awg-8', ...part }, name);
export const panel = (
  name: string,
  circuits: readonly Block<'circuit'>[],
  part: Partial<Block<'panel'>> = {},
): Block<'panel'> => make('panel', { bus: 125, mainBreaker: 100, spaces: 24, circuit: circuits, ...part }, name);
export const storey = (name: string, area: number, part: Partial<Block<'storey'>> = {}): Block<'storey'> =>
  make('storey', { area, height: 2.4, level: 'above-grade', ...part }, name);
export const charger = (name: string, part: Partial<Block<'evse'>> = {}): Block<'evse'> =>
  make('evse', { setting: 32, ...part }, name);
export const load = maker('load');
export const waterHeater = maker('water-heater');
export const heatPump = maker('heat-pump');
export const airHandler = maker('air-handler');
export const auxiliary = maker('auxiliary');
export const baseboard = maker('baseboard');
type Shed = Block<'channel'>['sheds'];
export const manager = (sheds: readonly Shed[], part: Partial<Block<'load-manager'>> = {}): Block<'load-manager'> =>
  make(
    'load-manager',
    {
      limit: 80,
      credit: { says: 'by-edition', text: undefined },
      channel: sheds.map((target, i) => make('channel', { sheds: target, shedOrder: i + 1 }, `channel-${i}`)),
      ...part,
    },
    'manager',
  );

export interface Parts {
  readonly code: House['electricalCode'];
  readonly storeys?: readonly Block<'storey'>[];
  readonly rating?: number;
  readonly electrical?: Partial<Block<'electrical'>>;
  readonly heating?: Partial<Block<'heating'>>;
  readonly waterHeaters?: readonly Block<'water-heater'>[];
  readonly suites?: readonly Block<'suite'>[];
}

/** A house with its electrical parts; everything else is empty. */
export const makeHouse = ({ code, storeys, rating, electrical, heating, waterHeaters, suites }: Parts): House =>
  bare({
    electricalCode: code,
    storey: storeys ?? [storey('main', 100)],
    suite: suites ?? [],
    waterHeating: make('water-heating', { waterHeater: waterHeaters ?? [] }),
    heating: make('heating', heating),
    electrical: make('electrical', { service: make('service', { rating: rating ?? 100 }), ...electrical }),
  });

/** The house of the tests: heat pump with strips, range, dryer, heat-pump water heater, charger. */
export function retrofit(code: Parts['code'], part: Partial<Parts> = {}) {
  const strip = auxiliary('strip', { output: 9600 });
  const ev = charger('charger');
  const house = (electrical: Partial<Block<'electrical'>> = {}) =>
    makeHouse({
      code,
      storeys: [storey('main', 92), storey('upper', 56), storey('basement', 88, { level: 'below-grade' })],
      heating: {
        heatPump: [heatPump('hp', { rla: 18, fanFla: 1.5, mca: 25, mocp: 40 })],
        airHandler: [airHandler('ahu', { blower: 450 })],
        auxiliary: [strip],
      },
      waterHeaters: [waterHeater('tank', { kind: 'heat-pump', volume: 0.25, element: 4500, compressorInput: 450 })],
      ...part,
      electrical: {
        load: [
          load('range', { kind: 'range', rating: 10200 }),
          load('dryer', { kind: 'dryer', rating: 5000 }),
          load('general', { kind: 'lighting-and-receptacles' }),
        ],
        evse: [ev],
        ...electrical,
      },
    });
  return { house, strip, ev };
}
