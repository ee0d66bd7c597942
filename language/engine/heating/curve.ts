import type { Si } from '../../units/index.js';

/** A straight piece between two outdoor temperatures, with the values at its ends in W. */
export interface Piece {
  readonly from: Si<'temperature'>;
  readonly to: Si<'temperature'>;
  readonly start: number;
  readonly end: number;
}

/**
 * A load or an output against the outdoor temperature: straight pieces in ascending order without gaps. Where one piece
 * ends and the next begins the value may jump, as it does at a cut-out; both sides of the jump are kept, so that a
 * smallest value found on the ends of the pieces is exact.
 */
export type Curve = readonly Piece[];

export interface Range {
  readonly from: Si<'temperature'>;
  readonly to: Si<'temperature'>;
}

/** A straight line over a range, by its value at each temperature. */
export function line(range: Range, value: (outdoor: number) => number): Curve {
  return [{ ...range, start: value(range.from), end: value(range.to) }];
}

/** Straight pieces through points of ascending temperature; beyond the last points their values are held. */
export function through(range: Range, points: readonly (readonly [outdoor: number, value: number])[]): Curve {
  const [first, last] = [points[0], points[points.length - 1]];
  const all = [[Math.min(range.from, first[0]), first[1]], ...points, [Math.max(range.to, last[0]), last[1]]] as const;
  const pieces = all
    .slice(1)
    .flatMap(([to, end], i) => (to > all[i][0] ? [{ from: all[i][0], to, start: all[i][1], end }] : []));
  return within(pieces, range);
}

/** The value at a temperature, coming from the warmer side, or from the colder. */
export function at(curve: Curve, outdoor: Si<'temperature'>, side: 'warmer' | 'colder' = 'warmer'): number {
  const piece =
    side === 'warmer'
      ? (curve.find(p => outdoor < p.to) ?? curve[curve.length - 1])
      : (curve.findLast(p => outdoor > p.from) ?? curve[0]);
  if (piece.to === piece.from) return piece.start;
  // Exact at the ends, whatever rounding does between them.
  if (outdoor === piece.from) return piece.start;
  if (outdoor === piece.to) return piece.end;
  return piece.start + ((piece.end - piece.start) * (outdoor - piece.from)) / (piece.to - piece.from);
}

/** The part of a curve inside a range. */
export function within(curve: Curve, range: Range): Curve {
  if (range.to <= range.from) {
    const value = at(curve, range.from);
    return [{ ...range, to: range.from, start: value, end: value }];
  }
  return curve
    .filter(p => p.to > range.from && p.from < range.to)
    .map(p => {
      const from = Math.max(p.from, range.from);
      const to = Math.min(p.to, range.to);
      return { from, to, start: at([p], from), end: at([p], to, 'colder') };
    });
}

/** Whether something that starts at a temperature is there at another, seen from one side of it. */
export function runsAt(from: Si<'temperature'>, outdoor: Si<'temperature'>, side: 'warmer' | 'colder'): boolean {
  return side === 'warmer' ? outdoor >= from : outdoor > from;
}

/** Nothing outside a range, the curve inside. */
export function onlyWithin(curve: Curve, range: Range): Curve {
  return split(curve, [range.from, range.to]).map(p =>
    p.from >= range.from && p.to <= range.to ? p : { ...p, start: 0, end: 0 },
  );
}

/** Values combined piece by piece; exact for any combination that keeps straight pieces straight. */
function combine(a: Curve, b: Curve, value: (a: number, b: number) => number): Curve {
  const cuts = [...a, ...b].flatMap(p => [p.from, p.to]);
  const other = split(b, cuts);
  return split(a, cuts).map((p, i) => ({
    ...p,
    start: value(p.start, other[i].start),
    end: value(p.end, other[i].end),
  }));
}

export const plus = (a: Curve, b: Curve): Curve => combine(a, b, (x, y) => x + y);
export const minus = (a: Curve, b: Curve): Curve => combine(a, b, (x, y) => x - y);

/** The larger of two curves, with a cut where they cross. */
export function larger(a: Curve, b: Curve): Curve {
  const crossings = zeros(minus(a, b));
  return combine(split(a, crossings), split(b, crossings), Math.max);
}

/** The smallest value and where it stands, on which side of a jump. The coldest place wins a tie. */
export function lowest(curve: Curve): {
  readonly outdoor: Si<'temperature'>;
  readonly side: 'warmer' | 'colder';
  readonly value: number;
} {
  let best = { outdoor: curve[0].from, side: 'warmer' as 'warmer' | 'colder', value: curve[0].start };
  for (const p of curve) {
    if (p.start < best.value) best = { outdoor: p.from, side: 'warmer', value: p.start };
    if (p.end < best.value) best = { outdoor: p.to, side: 'colder', value: p.end };
  }
  return best;
}

/** The warmest temperature below which the curve is under zero: a crossing, or a jump. Undefined where it never is. */
export function warmestBelowZero(
  curve: Curve,
): { readonly outdoor: Si<'temperature'>; readonly by: 'crossing' | 'jump' } | undefined {
  for (let i = curve.length - 1; i >= 0; i--) {
    const p = curve[i];
    if (p.end < 0) return { outdoor: p.to, by: 'jump' };
    if (p.start < 0) return { outdoor: crossing(p), by: 'crossing' };
  }
  return undefined;
}

function zeros(curve: Curve): readonly number[] {
  return curve.filter(p => p.start * p.end < 0).map(crossing);
}

function crossing(p: Piece): number {
  return p.from + ((p.to - p.from) * p.start) / (p.start - p.end);
}

function split(curve: Curve, cuts: readonly number[]): Curve {
  const sorted = [...new Set(cuts)].sort((a, b) => a - b);
  return curve.flatMap(p => {
    const inside = sorted.filter(c => c > p.from && c < p.to);
    const ends = [p.from, ...inside, p.to];
    return ends.slice(1).map((to, i) => ({
      from: ends[i],
      to,
      start: at([p], ends[i]),
      end: at([p], to, 'colder'),
    }));
  });
}
