import type { HouseLoad } from '../../engine/electrical/house-load.js';
import { loadsOn } from '../../engine/electrical/house-loads.js';
import type { Block } from '../../model/index.js';
import { ownCircuit } from '../circuit/own-circuit.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'management/shares-circuit',
  severity: 'error',
  title: 'managed load shares a circuit with an unmanaged one',
  of: 'load-manager',
  tier: 'design',
  *find(manager, { house }) {
    const managed = manager.channel.map(({ sheds }) => sheds.name);
    for (const channel of manager.channel.filter(({ actsOn }) => actsOn === 'line'))
      for (const circuit of opened(channel)) {
        const loads = loadsOn(house, circuit);
        const kept = loads.filter(({ block }) => !managed.includes(block.name) && isMeantToStay(block, channel));
        const shed = loads.filter(load => !kept.includes(load));
        if (kept.length > 0) yield { channel, circuit, shed, kept, house };
      }
  },
  tell({ channel, circuit, kept, house }) {
    const blower = kept.some(({ block }) => block.is === 'air-handler');
    const others = names(kept);
    const stops = house.heating.heatPump.length > 0 ? 'the heat pump stops as well' : 'no heat leaves the air handler';
    return {
      at: at(channel, 'sheds'),
      message: `shedding ${channel.sheds.name} opens ${circuit.name} and cuts off ${others} too${blower ? `: without the blower ${stops}` : ''}`,
      related: kept.map(({ block }) => ({ at: at(block, 'on'), message: `${block.name} is on ${circuit.name}` })),
    };
  },
  mend({ circuit, shed, kept }, view) {
    const own = shed.length === 1 ? ownCircuit(shed[0], circuit, view) : [];
    return own.length > 0 || kept.length > 1 ? own : ownCircuit(kept[0], circuit, view);
  },
});

/** The circuits that a channel opens. */
function opened({ sheds }: Block<'channel'>): readonly Block<'circuit'>[] {
  if (sheds.is === 'circuit') return [sheds];
  const { on } = sheds;
  if (on === undefined) return [];
  return 'is' in on ? [on] : on;
}

/** Whoever sheds a circuit means all that is on it, but never the blower. */
const isMeantToStay = (block: HouseLoad['block'], { sheds }: Block<'channel'>): boolean =>
  sheds.is !== 'circuit' || block.is === 'air-handler';

const names = (loads: readonly HouseLoad[]): string => loads.map(({ block }) => block.name).join(' and ');
