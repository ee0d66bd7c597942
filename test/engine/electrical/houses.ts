import type { Block, House } from '../../../language/model/index.js';
import type { Kind } from '../../../language/vocabulary/index.js';

type Part = Record<string, unknown>;

/** A block as the model holds it, with only what a calculation reads. */
const block = <K extends Kind>(is: K, name: string, part: Part): Block<K> =>
  ({ is, name, title: undefined, ...part }) as unknown as Block<K>;

export const circuit = (name: string, part: Part = {}): Block<'circuit'> =>
  block('circuit', name, {
    breaker: 40,
    poles: 2,
    conductor: 'awg-8',
    metal: 'copper',
    insulation: 90,
    cable: 'non-metallic',
    ambient: 30,
    bundled: 3,
    fullyRated: false,
    tandem: false,
    ...part,
  });
export const panel = (name: string, circuits: readonly Block<'circuit'>[], part: Part = {}): Block<'panel'> =>
  block('panel', name, { bus: 125, mainBreaker: 100, spaces: 24, tandem: 0, circuit: circuits, ...part });
export const storey = (name: string, area: number, part: Part = {}): Block<'storey'> =>
  block('storey', name, { area, height: 2.4, level: 'above-grade', finished: true, heated: true, ...part });
export const load = (name: string, part: Part): Block<'load'> =>
  block('load', name, {
    fuel: 'electricity',
    voltage: 240,
    continuous: false,
    motor: false,
    smallApplianceCircuits: 2,
    laundryCircuits: 1,
    ...part,
  });
export const charger = (name: string, part: Part = {}): Block<'evse'> =>
  block('evse', name, { setting: 32, voltage: 240, ...part });
export const waterHeater = (name: string, part: Part): Block<'water-heater'> =>
  block('water-heater', name, { fuel: 'electricity', mode: 'hybrid', simultaneous: false, voltage: 240, ...part });
export const heatPump = (name: string, part: Part): Block<'heat-pump'> =>
  block('heat-pump', name, { voltage: 240, performance: [], ...part });
export const airHandler = (name: string, part: Part): Block<'air-handler'> =>
  block('air-handler', name, { voltage: 240, ...part });
export const auxiliary = (name: string, part: Part): Block<'auxiliary'> =>
  block('auxiliary', name, { voltage: 240, steps: 1, role: 'full-backup', on: [], ...part });
export const baseboard = (name: string, part: Part): Block<'baseboard'> =>
  block('baseboard', name, { voltage: 240, units: 1, controlledBy: 'room-thermostats', on: [], ...part });
export const manager = (sheds: readonly Block[], part: Part = {}): Block<'load-manager'> =>
  block('load-manager', 'manager', {
    senses: 'service',
    limit: 80,
    credit: { says: 'by-edition', text: undefined },
    channel: sheds.map((target, i) => block('channel', `channel-${i}`, { sheds: target, shedOrder: i + 1 })),
    ...part,
  });

export interface Parts {
  readonly code: NonNullable<House['electricalCode']>;
  readonly storeys?: readonly Block<'storey'>[];
  readonly rating?: number;
  readonly electrical?: Part;
  readonly heating?: Part;
  readonly waterHeaters?: readonly Block<'water-heater'>[];
  readonly ventilation?: readonly Block<'ventilation'>[];
  readonly suites?: readonly Block<'suite'>[];
}

/** A house with its electrical parts; everything else is empty. */
export function makeHouse({ code, storeys, rating, electrical, heating, waterHeaters, ...rest }: Parts): House {
  return block('house', 'example', {
    electricalCode: code,
    storey: storeys ?? [storey('main', 100)],
    suite: rest.suites ?? [],
    envelope: { ventilation: rest.ventilation ?? [] },
    waterHeating: { waterHeater: waterHeaters ?? [] },
    heating: {
      furnace: [],
      boiler: [],
      heatPump: [],
      airHandler: [],
      auxiliary: [],
      baseboard: [],
      airConditioner: [],
      humidifier: [],
      ...heating,
    },
    electrical: {
      service: block('service', 'service', { rating: rating ?? 100, voltage: 240, metal: 'copper' }),
      panel: [],
      load: [],
      evse: [],
      loadManager: [],
      hotTub: [],
      battery: [],
      ...electrical,
    },
  });
}

/** The house of the tests: heat pump with strips, range, dryer, heat-pump water heater, charger. */
export function retrofit(code: Parts['code'], part: Partial<Parts> = {}) {
  const strip = auxiliary('strip', { output: 9600 });
  const ev = charger('charger');
  const house = (electrical: Part = {}) =>
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
