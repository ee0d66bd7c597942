import { codeLoad, type LoadItem } from '../engine/heating/design-load.js';
import { glazingU } from '../engine/envelope/skin.js';
import { constructionU } from '../engine/envelope/construction.js';
import type { HeatFlow } from '../engine/envelope/surface-films.js';
import { heatedVolume } from '../engine/envelope/volume.js';
import type { Sheet } from '../engine/worksheet.js';
import { Withheld, type Block, type House } from '../model/index.js';
import { result } from './define.js';

type Opaque = 'ceiling' | 'wall' | 'rim-joist' | 'floor' | 'basement-wall';
const OPAQUE: Readonly<Record<Opaque, HeatFlow>> = {
  ceiling: 'up',
  wall: 'horizontal',
  'rim-joist': 'horizontal',
  floor: 'down',
  'basement-wall': 'horizontal',
};
const GLAZED = ['window', 'skylight'] as const;
const LOSING = [...(Object.keys(OPAQUE) as Opaque[]), ...GLAZED, 'door', 'basement-floor', 'slab-on-grade'] as const;

function beyond(block: Block<Opaque>): 'outdoors' | 'buffer-space' {
  return 'nextTo' in block && block.nextTo !== 'outdoors' ? 'buffer-space' : 'outdoors';
}

/** The lines of one block in the load of the code: a basement wall has one above the ground and one below. */
function lossOf(block: Block, house: House, sheet?: Sheet): number {
  const lines = codeLoad(house).items.filter(i => i.block === block);
  if (lines.length === 0) throw new Withheld('the block has no line in the design load');
  // One calculation fills the whole sheet; only the lines of this block belong on its own.
  if (sheet) codeLoad(house, keep(lines, sheet));
  return lines.reduce((sum, i) => sum + i.watts, 0);
}

function keep(lines: readonly LoadItem[], sheet: Sheet): Sheet {
  const labels = new Set(lines.map(l => l.label));
  return make => {
    const step = make();
    if (labels.has(step.label)) sheet(() => step);
  };
}

/** The skin of the house, as a whole and block by block. */
export const envelopeResults = [
  result('envelope.transmission', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'Heat through walls, ceilings, floors, windows, doors and thermal bridges above ground, at the design condition of the code.',
    compute: (house, _, sheet) => codeLoad(house, sheet).transmission,
  }),
  result('envelope.ground', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'Heat into the ground at the design condition of the code.',
    compute: (house, _, sheet) => codeLoad(house, sheet).ground,
  }),
  result('envelope.infiltration', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'Heat to warm what leaks in and what unbalanced fans draw in, at the design condition of the code.',
    compute: (house, _, sheet) => codeLoad(house, sheet).infiltration,
  }),
  result('envelope.ventilation', 'house', {
    dimension: 'heat-flow',
    tier: 'design',
    better: 'less',
    doc: 'Heat to warm balanced ventilation after its recovery, at the design condition of the code.',
    compute: (house, _, sheet) => codeLoad(house, sheet).ventilation,
  }),
  result('envelope.volume', 'house', {
    dimension: 'volume',
    tier: 'meaning',
    doc: 'Volume of heated air: as stated, else area times height of the heated storeys.',
    compute: house => heatedVolume(house),
  }),
  ...(Object.keys(OPAQUE) as Opaque[]).map(kind =>
    result<Opaque>('u-value', kind, {
      dimension: 'u-value',
      tier: 'meaning',
      better: 'less',
      doc: 'Transmittance of the opaque part, films and framing counted; of the part above ground for a basement wall.',
      compute: (block, _, sheet) => constructionU(block, OPAQUE[kind], beyond(block), sheet),
    }),
  ),
  ...GLAZED.map(kind =>
    result<'window' | 'skylight'>('u-value', kind, {
      dimension: 'u-value',
      tier: 'meaning',
      better: 'less',
      doc: 'Transmittance of the whole window.',
      compute: block => glazingU(block),
    }),
  ),
  ...LOSING.map(kind =>
    result('heat-loss', kind, {
      dimension: 'heat-flow',
      tier: 'design',
      better: 'less',
      doc: 'Heat that it loses at the design condition of the code, its openings not counted.',
      compute: (block, house, sheet) => lossOf(block, house, sheet),
    }),
  ),
];
