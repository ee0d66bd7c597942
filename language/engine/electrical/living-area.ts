import { cite, type Edition } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';

export interface Storey {
  readonly label: string;
  /** m2 inside the walls. */
  readonly area: number;
  /** m2 by outside dimensions, where they were measured. */
  readonly outsideArea?: number;
  /** Clear height, m. */
  readonly height: number;
  readonly level: 'above-grade' | 'below-grade';
  readonly finish: 'finished' | 'unfinished';
}

/** Thickness of outside walls where only the inside area is known, m: assumed, with a square plan. */
const WALL = 0.2;

/**
 * Living area of a dwelling in m2 as the edition counts it. Porches, garages and carports are no storeys. An unfinished
 * storey below grade counts as fit for living later; an unfinished one above grade does not where the edition asks for
 * use as living space, that is where it counts by inside dimensions.
 */
export function livingArea(storeys: readonly Storey[], { area: rule }: Edition, sheet?: Sheet): number {
  const counted = storeys.map(storey => {
    const size = rule.measured === 'inside' ? storey.area : outsideArea(storey, sheet);
    const lived = storey.finish === 'finished' || storey.level === 'below-grade' || rule.measured === 'outside';
    const share =
      storey.height > rule.leastHeight && lived
        ? storey.level === 'above-grade'
          ? rule.aboveGrade
          : rule.belowGrade
        : 0;
    sheet?.(() => ({
      label: storey.label,
      formula: 'share * area',
      inputs: { share: [share, 'ratio'], area: [size, 'area'] },
      value: share * size,
      dimension: 'area',
      source: cite(rule.clause),
      note: share === 0 ? 'too low or not for living' : undefined,
      role: 'item',
    }));
    return share * size;
  });
  const total = counted.reduce((sum, each) => sum + each, 0);
  sheet?.(() => ({ label: 'Living area', value: total, dimension: 'area', source: cite(rule.clause), role: 'total' }));
  return total;
}

/** Floor area above grade, m2, which decides the smallest service. */
export const floorAreaAboveGrade = (storeys: readonly Storey[]): number =>
  storeys.filter(storey => storey.level === 'above-grade').reduce((sum, storey) => sum + storey.area, 0);

function outsideArea({ label, area, outsideArea: measured }: Storey, sheet?: Sheet): number {
  if (measured !== undefined) return measured;
  const outside = (Math.sqrt(area) + 2 * WALL) ** 2;
  sheet?.(() => ({
    label: `${label}, by outside dimensions`,
    formula: '(sqrt(inside) + 2 * wall) ^ 2',
    inputs: { inside: [area, 'area'], wall: [WALL, 'length'] },
    value: outside,
    dimension: 'area',
    source: 'assumed: a square plan with walls of 0.2 m; state outside-area to be sure',
  }));
  return outside;
}
