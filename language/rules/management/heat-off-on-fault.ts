import type { Block, House } from '../../model/index.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'management/heat-off-on-fault',
  severity: 'warning',
  title: 'lost signal of the load manager takes all heat away',
  of: 'load-manager',
  tier: 'design',
  *find(manager, view) {
    const { house } = view;
    const design = house.design.find(d => d.name === 'code');
    const load = view.result('heating.design-load');
    if (manager.onSignalLoss !== 'shed' || !design || load === undefined) return;
    const { auxiliary, baseboard, heatPump, furnace, boiler } = house.heating;
    // What burns fuel is on no channel.
    if (furnace.length + boiler.length > 0) return;
    const resistance = [...auxiliary, ...baseboard];
    const pumps = heatPump.length === 0 || (view.result('heating.heat-pump-at-design') ?? 0) > 0 ? heatPump : [];
    const left = [...resistance, ...pumps];
    if (left.length === 0 || !left.every(source => isShed(source, manager))) return;
    const alone = pumps.length === 0 && heatPump.length > 0;
    yield { manager, outdoor: design.outdoor, load, sources: left, alone };
  },
  tell: ({ manager, outdoor, load, sources, alone }, say) => {
    const names = sources.map(s => s.name).join(' and ');
    const heat = alone
      ? `the heat pump gives nothing at ${say(outdoor, 'temperature')}, ${names} ${sources.length > 1 ? 'are' : 'is'} the only heat`
      : `${names} ${sources.length > 1 ? 'are' : 'is'} all that heats`;
    const them = sources.length > 1 ? 'them' : 'it';
    return {
      at: at(manager, 'on-signal-loss'),
      message: `${heat}, and ${manager.name} sheds ${them} when its signal is lost: ${say(load, 'heat-flow')} are needed at ${say(outdoor, 'temperature')}`,
    };
  },
});

type Source = House['heating']['auxiliary' | 'baseboard' | 'heatPump'][number];

/** Whether a channel sheds the source by itself or opens every circuit that it is on. */
function isShed(source: Source, { channel }: Block<'load-manager'>): boolean {
  const shed = channel.map(({ sheds }) => sheds);
  if (shed.some(s => s === source)) return true;
  const circuits = source.on === undefined ? [] : 'is' in source.on ? [source.on] : source.on;
  return circuits.length > 0 && circuits.every(c => shed.some(s => s === c));
}
