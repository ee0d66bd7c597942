import type { Edition } from '../../codes/index.js';
import { Withheld, type Block, type House } from '../../model/index.js';
import { named } from '../envelope/named.js';
import { byPower, type CircuitLoad } from './circuit-load.js';
import type { HouseLoad } from './house-load.js';
import type { LoadKind } from './loads.js';
import { compressorCircuit } from './motor-compressor.js';
import { atVoltage } from './resistance-heat.js';

/** Electric loads of heating and cooling equipment. A burner's own small blower is a motor among the appliances. */
export function heatingLoads({ heating }: House): readonly HouseLoad[] {
  return [
    ...heating.heatPump.map(block => compressor(block, 'heat-pump', heatPumpPower)),
    ...heating.airConditioner.map(block => compressor(block, 'cooling', coolingPower)),
    ...heating.airHandler.map(airHandler),
    ...heating.auxiliary.map(auxiliary),
    ...heating.baseboard.map(baseboard),
    ...heating.furnace.flatMap(furnace),
    ...heating.boiler.flatMap(boiler),
    ...heating.humidifier.map(humidifier),
  ];
}

const circuitsOf = (on: Block<'circuit'> | undefined) => (on ? [on] : []);

type Compressor = Block<'heat-pump' | 'air-conditioner'>;

const nameplateRunning = ({ rla, fanFla, voltage }: Compressor): number | undefined =>
  rla === undefined ? undefined : (rla + (fanFla ?? 0)) * voltage;

/** Running power, W: nameplate amperes, else the rated input, else the highest input of the table; with the pan heater. */
function heatPumpPower(block: Block<'heat-pump'>): number {
  const running =
    nameplateRunning(block) ?? block.ratedInput ?? Math.max(...block.performance.map(({ input }) => input));
  return running + (block.basePanHeater ?? 0);
}

function coolingPower(block: Block<'air-conditioner'>): number {
  const running = nameplateRunning(block) ?? block.ratedInput;
  if (running === undefined) throw new Withheld(`${named(block)} states neither rla nor rated-input`);
  return running;
}

function compressor<B extends Compressor>(block: B, kind: LoadKind, power: (block: B) => number): HouseLoad {
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () => ({ name: block.name, label: named(block), kind, power: power(block), voltage: block.voltage }),
    onCircuit: edition => compressorLoad(block, power(block), edition),
  };
}

/** Where the running current comes from: nameplate amperes and, for a heat pump, the heater of its pan. */
function compressorCurrent(block: Compressor, power: number): CircuitLoad['from'] {
  const { rla, fanFla, voltage } = block;
  if (rla === undefined) return byPower(power, voltage).from;
  const heaters = block.is === 'heat-pump' ? (block.basePanHeater ?? 0) : 0;
  return {
    formula: '((rla + fan) * voltage + heaters) / voltage',
    inputs: {
      rla: [rla, 'current'],
      fan: [fanFla ?? 0, 'current'],
      voltage: [voltage, 'voltage'],
      heaters: [heaters, 'power'],
    },
    source: 'nameplate as stated',
  };
}

/** The nameplate's least ampacity and largest breaker; computed from running amperes where there is none. */
function compressorLoad(block: Compressor, power: number, edition: Edition): CircuitLoad {
  const current = power / block.voltage;
  const computed = compressorCircuit(
    block.rla === undefined ? { rla: current, others: 0 } : { rla: block.rla, others: block.fanFla ?? 0 },
    edition,
  );
  return {
    label: named(block),
    duty: 'motor-compressor',
    current,
    from: compressorCurrent(block, power),
    mca: block.mca ?? computed.mca,
    mocp: block.mocp ?? computed.mocp,
  };
}

/** Electric power of a blower, W. */
function blowerPower(block: Block<'air-handler'>): number {
  if (block.fla !== undefined) return block.fla * block.voltage;
  if (block.blower !== undefined) return block.blower;
  const curve = block.blowerCurve;
  if (!curve) throw new Withheld(`${named(block)} states neither fla nor blower`);
  return Math.max(...curve.map(({ power }) => power));
}

function airHandler(block: Block<'air-handler'>): HouseLoad {
  const { name, voltage, mca, mocp } = block;
  const label = named(block);
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () => ({ name, label, kind: 'blower', power: blowerPower(block), voltage }),
    onCircuit: () => ({ label, duty: 'fixed-heat', ...byPower(blowerPower(block), voltage), mca, mocp }),
  };
}

/** Electric power of a strip at the voltage of the house, W. */
const auxiliaryPower = ({ output, voltage, supplyVoltage }: Block<'auxiliary'>): number =>
  supplyVoltage === undefined ? output : atVoltage(output, voltage, supplyVoltage);

function auxiliary(block: Block<'auxiliary'>): HouseLoad {
  const voltage = block.supplyVoltage ?? block.voltage;
  return resistance(block, 'supplementary', auxiliaryPower(block), voltage);
}

function baseboard(block: Block<'baseboard'>): HouseLoad {
  const kind = block.controlledBy === 'central' ? 'central-heat' : 'room-heat';
  return resistance(block, kind, block.output, block.voltage, block.units);
}

/** Resistance heat is shared evenly by the circuits that feed it. */
function resistance(
  block: Block<'auxiliary' | 'baseboard'>,
  kind: LoadKind,
  power: number,
  voltage: number,
  units?: number,
): HouseLoad {
  const circuits = block.on ?? [];
  const label = named(block);
  return {
    block,
    circuits,
    service: () => ({ name: block.name, label, kind, power, voltage, units }),
    onCircuit: () => ({ label, duty: 'fixed-heat', ...byPower(power / Math.max(1, circuits.length), voltage) }),
  };
}

const NOMINAL = 240;
const LINE_TO_NEUTRAL = 120;

function furnace(block: Block<'furnace'>): readonly HouseLoad[] {
  const { name } = block;
  const label = named(block);
  const circuits = circuitsOf(block.on);
  if (block.fuel === 'electricity') return [electricHeat(block, circuits)];
  const power = block.blower;
  if (power === undefined) return [];
  return [
    {
      block,
      circuits,
      service: () => ({ name, label, kind: 'appliance', power, voltage: LINE_TO_NEUTRAL }),
      onCircuit: () => ({ label, duty: 'continuous', ...byPower(power, LINE_TO_NEUTRAL) }),
    },
  ];
}

const boiler = (block: Block<'boiler'>): readonly HouseLoad[] =>
  block.fuel === 'electricity' ? [electricHeat(block, circuitsOf(block.on))] : [];

function electricHeat(block: Block<'furnace' | 'boiler'>, circuits: readonly Block<'circuit'>[]): HouseLoad {
  const label = named(block);
  const power = () => block.output / block.afue;
  return {
    block,
    circuits,
    service: () => ({ name: block.name, label, kind: 'central-heat', power: power(), voltage: NOMINAL }),
    onCircuit: () => ({ label, duty: 'fixed-heat', ...byPower(power(), NOMINAL) }),
  };
}

function humidifier(block: Block<'humidifier'>): HouseLoad {
  const { name, kind, input } = block;
  const label = named(block);
  // A steam humidifier of some size is wired to both legs.
  const voltage = kind === 'steam' ? NOMINAL : LINE_TO_NEUTRAL;
  return {
    block,
    circuits: circuitsOf(block.on),
    service: () => (input > 0 ? { name, label, kind: 'appliance', power: input, voltage } : undefined),
    onCircuit: () => ({ label, duty: 'continuous', ...byPower(input, voltage) }),
  };
}
