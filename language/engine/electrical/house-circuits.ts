import { cite, sizeInWords, type Edition } from '../../codes/index.js';
import { Withheld, type Block, type House } from '../../model/index.js';
import { named } from '../envelope/named.js';
import type { Sheet } from '../worksheet.js';
import { circuitNeed, leastOf, type CircuitNeed, type Marking } from './circuit-load.js';
import { conductorAmpacity, largestBreaker, smallestConductor, type Conductor, type Protection } from './conductor.js';
import type { HouseLoad } from './house-load.js';
import { loadsOn } from './house-loads.js';
import { editionFor } from './house-service.js';
import { spacesLeft, spacesUsed, type Breaker } from './panel-spaces.js';
import { voltageDrop } from './voltage-drop.js';

const markingOf = ({ fullyRated }: Block<'circuit'>): Marking => (fullyRated ? 'fully-rated' : 'unmarked');

/** The subpanel that a circuit feeds, if any. */
const subpanelOf = (house: House, circuit: Block<'circuit'>): Block<'panel'> | undefined =>
  house.electrical.panel.find(({ fedBy }) => fedBy?.name === circuit.name);

/** Loads of a branch circuit; the demand of a feeder follows other rules and is not computed from its parts. */
function branchLoads(house: House, circuit: Block<'circuit'>): readonly HouseLoad[] {
  const panel = subpanelOf(house, circuit);
  if (panel) throw new Withheld(`${named(circuit)} is a feeder: the demand of ${named(panel)} is not computed`);
  const loads = loadsOn(house, circuit);
  if (loads.length === 0) throw new Withheld(`no load names ${named(circuit)}`);
  return loads;
}

/** What a circuit must carry by the loads that name it. */
export function circuitNeedOf(house: House, circuit: Block<'circuit'>, sheet?: Sheet): CircuitNeed {
  const edition = editionFor(house);
  const loads = branchLoads(house, circuit).map(load => load.onCircuit(edition));
  return circuitNeed(loads, markingOf(circuit), edition, sheet);
}

/** Least ampacity of the conductors of a circuit by the loads that name it, A. */
export function circuitAmpacityNeeded(house: House, circuit: Block<'circuit'>, sheet?: Sheet): number {
  const edition = editionFor(house);
  const loads = branchLoads(house, circuit).map(load => load.onCircuit(edition));
  return leastOf('conductor', { loads, marking: markingOf(circuit), edition }, sheet);
}

/** Current that a circuit is sized for: of all its loads running, a range by its demand, A. */
export function circuitCurrent(house: House, circuit: Block<'circuit'>, sheet?: Sheet): number {
  const edition = editionFor(house);
  const loads = branchLoads(house, circuit).map(load => load.onCircuit(edition));
  for (const load of loads)
    sheet?.(() => ({
      label: load.label,
      value: load.current,
      dimension: 'current',
      source: 'as stated',
      ...load.from,
      role: 'item',
    }));
  const value = loads.reduce((sum, { current }) => sum + current, 0);
  sheet?.(() => ({ label: 'Load', value, dimension: 'current', source: 'sum of the lines above', role: 'total' }));
  return value;
}

const conductorOf = (circuit: Block<'circuit'>): Conductor => ({
  size: circuit.conductor,
  metal: circuit.metal,
  insulation: circuit.insulation,
  terminals: circuit.terminals,
  cable: circuit.cable,
  ambient: circuit.ambient,
  together: circuit.bundled,
});

/** Ampacity of the conductors of a circuit, A. */
export function circuitAmpacity(house: House, circuit: Block<'circuit'>, sheet?: Sheet): number {
  const value = conductorAmpacity(conductorOf(circuit), circuit.breaker, editionFor(house), sheet);
  if (value === undefined)
    throw new Withheld(
      `there is no ampacity for ${sizeInWords(circuit.conductor)} ${circuit.metal} of ${named(circuit)}`,
    );
  return value;
}

/** What the breaker of a circuit protects, as told by the loads that name it. */
export function protectionOf(house: House, circuit: Block<'circuit'>, edition: Edition): Protection {
  const loads = subpanelOf(house, circuit) ? [] : loadsOn(house, circuit);
  const [only] = loads;
  if (loads.length === 1 && (only.block.is === 'heat-pump' || only.block.is === 'air-conditioner')) {
    const { mocp } = only.onCircuit(edition);
    if (mocp !== undefined) return { for: 'motor-compressor', mocp };
  }
  const heaters = loads.map(({ block }) => block).filter(block => block.is === 'baseboard' || block.is === 'auxiliary');
  if (heaters.length > 0 && heaters.length === loads.length) {
    const units = heaters.reduce((sum, block) => sum + (block.is === 'baseboard' ? block.units : 1), 0);
    return { for: 'heat-alone', heaters: units };
  }
  return { for: 'usual' };
}

/** Largest breaker that the conductors of a circuit may have before them, A. */
export function circuitLargestBreaker(house: House, circuit: Block<'circuit'>, sheet?: Sheet): number {
  const edition = editionFor(house);
  const ampacity = circuitAmpacity(house, circuit, sheet);
  const protection = protectionOf(house, circuit, edition);
  const value = largestBreaker(conductorOf(circuit), ampacity, protection, edition, sheet);
  if (value === undefined) throw new Withheld(`no standard breaker is small enough for ${named(circuit)}`);
  return value;
}

/** Thinnest conductor of the circuit's metal for a breaker and a current, both A. */
export function conductorFor(
  house: House,
  circuit: Block<'circuit'>,
  { breaker, current }: { readonly breaker: number; readonly current: number },
): Conductor['size'] | undefined {
  const edition = editionFor(house);
  const protection = protectionOf(house, circuit, edition);
  return smallestConductor(conductorOf(circuit), { breaker, current, protection }, edition);
}

/** Amperes that the breaker of a circuit has left beside what it needs. */
export function circuitHeadroom(house: House, circuit: Block<'circuit'>, sheet?: Sheet): number {
  const { breaker: needed } = circuitNeedOf(house, circuit, sheet);
  const value = circuit.breaker - needed;
  sheet?.(() => ({
    label: 'Remaining on the breaker',
    formula: 'breaker - needed',
    inputs: { breaker: [circuit.breaker, 'current'], needed: [needed, 'current'] },
    value,
    dimension: 'current',
    source: cite(editionFor(house).circuits.continuous.clause),
    role: 'total',
  }));
  return value;
}

/** Voltage drop of a circuit as a share, at its load, or at a share of its breaker where the load is not known. */
export function circuitVoltageDrop(house: House, circuit: Block<'circuit'>, sheet?: Sheet): number {
  const { length, breaker, conductor: size, metal } = circuit;
  if (length === undefined) throw new Withheld(`${named(circuit)} states no length`);
  const edition = editionFor(house);
  const { shareOfBreaker, clause } = edition.voltageDrop;
  const loads = subpanelOf(house, circuit) ? [] : loadsOn(house, circuit);
  const known = loads.length > 0 && loads.every(({ block }) => block.is !== 'load' || block.rating !== undefined);
  const current = known ? circuitCurrent(house, circuit, sheet) : shareOfBreaker * breaker;
  if (!known)
    sheet?.(() => ({
      label: 'Current taken, because the load is not known',
      formula: 'share * breaker',
      inputs: { share: [shareOfBreaker, 'ratio'], breaker: [breaker, 'current'] },
      value: current,
      dimension: 'current',
      source: cite(clause),
    }));
  return voltageDrop({ size, metal, length, current, voltage: circuitVoltage(house, circuit) }, edition, sheet);
}

/** Volts of a circuit by its poles: both legs, or one leg to neutral. */
function circuitVoltage({ electrical }: House, { poles }: Block<'circuit'>): number {
  const { service } = electrical;
  if (!service) throw new Withheld('there is no service block');
  return poles === 2 ? service.voltage : service.voltage / 2;
}

const breakersOf = ({ circuit }: Block<'panel'>): readonly Breaker[] =>
  circuit.map(({ poles, tandem }) => ({ poles, form: tandem ? 'half-of-tandem' : 'full' }));

export const panelSpacesLeft = (panel: Block<'panel'>, sheet?: Sheet): number =>
  spacesLeft(panel.spaces, breakersOf(panel), sheet);

export const panelSpacesUsed = (panel: Block<'panel'>, sheet?: Sheet): number => spacesUsed(breakersOf(panel), sheet);
