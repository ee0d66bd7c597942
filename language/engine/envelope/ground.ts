import { Withheld, type Block, type House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import { bandedWallConductance, bandsOf, BARE_CONCRETE, belowGradeFloorU } from './below-grade.js';
import { resistanceToSoil } from './construction.js';
import { named } from './named.js';
import { notNegative, positive } from './positive.js';
import { slabEdgeConductance } from './slab-on-grade.js';

export interface GroundItem {
  readonly block: Block<'basement-wall' | 'basement-floor' | 'slab-on-grade'>;
  readonly label: string;
  readonly area: Si<'area'>;
  readonly u: Si<'u-value'>;
  readonly conductance: Si<'conductance'>;
  /** A basement loses to the soil, whose temperature follows the year; the edge of a slab to the outdoor air. */
  readonly toward: 'ground' | 'outdoors';
}

/** Everything that conducts heat into the ground. */
export function groundItems(house: House, sheet?: Sheet): readonly GroundItem[] {
  const { envelope, site } = house;
  return [
    ...envelope.basementWall.flatMap(w => (w.belowGrade > 0 ? [wall(w, site.groundConductivity, sheet)] : [])),
    ...envelope.basementFloor.map(f => floor(f, envelope.basementWall, site.groundConductivity, sheet)),
    ...envelope.slabOnGrade.map(s => slab(s, sheet)),
  ];
}

function wall(block: Block<'basement-wall'>, soil: Si<'conductivity'>, sheet?: Sheet): GroundItem {
  const { length, belowGrade, insulatedTo } = block;
  notNegative(length, `the length of ${named(block)}`);
  positive(soil, 'the conductivity of the soil');
  const whole = resistanceToSoil(block, 'horizontal', sheet);
  const bands =
    insulatedTo === undefined
      ? [{ top: 0, bottom: belowGrade, resistance: whole }]
      : bandsOf({
          depth: belowGrade,
          bare: BARE_CONCRETE,
          insulation: Math.max(0, whole - BARE_CONCRETE),
          insulatedTo,
        });
  const perLength = bandedWallConductance(bands, soil, sheet);
  return item(
    { block, label: `${named(block)}, below the ground`, area: length * belowGrade, toward: 'ground' },
    perLength / belowGrade,
    sheet,
  );
}

function floor(
  block: Block<'basement-floor'>,
  walls: readonly Block<'basement-wall'>[],
  soil: Si<'conductivity'>,
  sheet?: Sheet,
): GroundItem {
  const width = block.width ?? Math.sqrt(positive(block.area, `the area of ${named(block)}`));
  const u = belowGradeFloorU(
    {
      width: positive(width, `the width of ${named(block)}`),
      depth: notNegative(block.depth ?? meanDepth(block, walls), `the depth of ${named(block)}`),
      resistance: resistanceToSoil(block, 'down', sheet),
      soil,
    },
    sheet,
  );
  return item({ block, label: named(block), area: block.area, toward: 'ground' }, u, sheet);
}

/** Depth of the basement walls, each counted by its length. */
function meanDepth(block: Block<'basement-floor'>, walls: readonly Block<'basement-wall'>[]): Si<'length'> {
  const length = walls.reduce((sum, w) => sum + w.length, 0);
  if (!(length > 0))
    throw new Withheld(`${named(block)} says no depth, and there are no basement walls to take it from`);
  return walls.reduce((sum, w) => sum + w.length * w.belowGrade, 0) / length;
}

function slab(block: Block<'slab-on-grade'>, sheet?: Sheet): GroundItem {
  notNegative(block.perimeter, `the perimeter of ${named(block)}`);
  positive(block.area, `the area of ${named(block)}`);
  const conductance = slabEdgeConductance(
    { wall: block.wall, insulation: block.edgeInsulation, perimeter: block.perimeter },
    sheet,
  );
  return {
    block,
    label: named(block),
    area: block.area,
    u: conductance / block.area,
    conductance,
    toward: 'outdoors',
  };
}

function item(part: Omit<GroundItem, 'u' | 'conductance'>, u: Si<'u-value'>, sheet?: Sheet): GroundItem {
  const conductance = u * part.area;
  sheet?.(() => ({
    label: part.label,
    formula: 'U * A',
    inputs: { U: [u, 'u-value'], A: [part.area, 'area'] },
    value: conductance,
    dimension: 'conductance',
    source: 'ASHRAE Fundamentals 2021 ch. 18',
    role: 'item',
  }));
  return { ...part, u, conductance };
}
