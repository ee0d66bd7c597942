import type { Edition } from '../../codes/index.js';
import { Withheld, type Block, type House } from '../../model/index.js';
import { named } from '../envelope/named.js';
import { byPower, rangeOnCircuit, type CircuitLoad } from './circuit-load.js';
import type { HouseLoad } from './house-load.js';
import type { LoadKind } from './loads.js';

/** Loads of living: cooking, washing, hot water, vehicles, tubs, ventilation. */
export function householdLoads(house: House): readonly HouseLoad[] {
  return [
    ...house.electrical.load.map(appliance),
    ...house.electrical.evse.map(charger),
    ...house.waterHeating.waterHeater.filter(({ fuel }) => fuel === 'electricity').map(waterHeater),
    ...house.electrical.hotTub.map(hotTub),
    ...house.electrical.battery.map(battery),
    ...house.envelope.ventilation.flatMap(ventilation),
  ];
}

const circuitsOf = (on: Block<'circuit'> | undefined) => (on ? [on] : []);

const KINDS: Readonly<Record<Block<'load'>['kind'], LoadKind | 'in-the-living-area'>> = {
  'lighting-and-receptacles': 'in-the-living-area',
  laundry: 'in-the-living-area',
  refrigerator: 'in-the-living-area',
  range: 'range',
  cooktop: 'cooking-unit',
  oven: 'cooking-unit',
  dryer: 'dryer',
  dishwasher: 'appliance',
  pump: 'appliance',
  sauna: 'appliance',
  other: 'appliance',
  pool: 'spa',
};

/**
 * The load for the living area holds light, outlets, and what is plugged in: laundry machines, and a refrigerator without a
 * circuit of its own. A gas appliance is what its fan and controls take.
 */
function loadKind(block: Block<'load'>): LoadKind | 'in-the-living-area' {
  if (block.kind === 'refrigerator' && block.on) return 'appliance';
  const kind = KINDS[block.kind];
  if (block.fuel === 'electricity' || kind === 'in-the-living-area') return kind;
  return block.rating === undefined ? 'in-the-living-area' : 'appliance';
}

function ratingOf(block: Block<'load'>): number {
  if (block.rating === undefined) throw new Withheld(`${named(block)} states no rating`);
  return block.rating;
}

function appliance(block: Block<'load'>): HouseLoad {
  const { name, voltage } = block;
  const label = named(block);
  const kind = loadKind(block);
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () =>
      kind === 'in-the-living-area'
        ? undefined
        : { name, label, kind, power: ratingOf(block), voltage, lockedOutBy: block.lockedOutBy?.name },
    onCircuit: edition => applianceOnCircuit(block, kind, edition),
  };
}

function applianceOnCircuit(
  block: Block<'load'>,
  kind: LoadKind | 'in-the-living-area',
  edition: Edition,
): CircuitLoad {
  const label = named(block);
  const rating = ratingOf(block);
  if (kind === 'range' || kind === 'cooking-unit')
    return { label, duty: 'range', ...rangeOnCircuit({ rating, voltage: block.voltage }, edition) };
  const duty = block.continuous || kind === 'spa' ? 'continuous' : kind === 'dryer' ? 'dryer' : 'non-continuous';
  return { label, duty, ...byPower(rating, block.voltage) };
}

function charger(block: Block<'evse'>): HouseLoad {
  const { name, voltage } = block;
  const label = named(block);
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () => ({ name, label, kind: 'vehicle', power: block.setting * voltage, voltage }),
    onCircuit: () => ({ label, duty: 'vehicle', current: block.setting }),
  };
}

/** Electric power of a water heater in the mode it is set to, W. */
function waterHeaterPower(block: Block<'water-heater'>): number {
  const { kind, mode, element, compressorInput, simultaneous } = block;
  const missing = (what: string) => new Withheld(`${named(block)} states no ${what}`);
  if (kind !== 'heat-pump' || mode === 'element') {
    if (element === undefined) throw missing('element');
    return element;
  }
  if (mode === 'heat-pump-only') {
    if (compressorInput === undefined) throw missing('compressor-input');
    return compressorInput;
  }
  if (element === undefined) throw missing('element');
  return simultaneous ? element + (compressorInput ?? 0) : Math.max(element, compressorInput ?? 0);
}

function waterHeater(block: Block<'water-heater'>): HouseLoad {
  const { name, voltage, mca } = block;
  const label = named(block);
  const kind = block.kind === 'tankless' ? 'tankless' : 'water-heater';
  const power = () => waterHeaterPower(block);
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () => ({ name, label, kind, power: power(), voltage }),
    onCircuit: ({ circuits }) => {
      const lasts = kind === 'water-heater' && (block.volume ?? 0) <= circuits.waterHeater.upTo;
      return { label, duty: lasts ? 'storage-water-heater' : 'non-continuous', ...byPower(power(), voltage), mca };
    },
  };
}

function hotTub(block: Block<'hot-tub'>): HouseLoad {
  const { name, voltage } = block;
  const label = named(block);
  const power = block.heater + block.pump;
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () => ({ name, label, kind: 'spa', power, voltage }),
    onCircuit: () => ({ label, duty: 'continuous', ...byPower(power, voltage) }),
  };
}

/** A battery's charging is held back by its own controls and not in the calculated load; its circuit carries it. */
function battery(block: Block<'battery'>): HouseLoad {
  const NOMINAL = 240;
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () => undefined,
    onCircuit: () => ({ label: named(block), duty: 'continuous', ...byPower(block.rating, NOMINAL) }),
  };
}

function ventilation(block: Block<'ventilation'>): readonly HouseLoad[] {
  const { name, fan } = block;
  if (fan === undefined) return [];
  const LINE_TO_NEUTRAL = 120;
  const label = named(block);
  return [
    {
      block,
      circuits: [],
      service: () => ({ name, label, kind: 'appliance', power: fan, voltage: LINE_TO_NEUTRAL }),
      onCircuit: () => ({ label, duty: 'continuous', ...byPower(fan, LINE_TO_NEUTRAL) }),
    },
  ];
}
