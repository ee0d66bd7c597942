import { print, type Outcome, type Si } from '../../units/index.js';
import { at, line, onlyWithin, through, type Curve, type Range } from './curve.js';
import { DEFROST, keptInDefrost } from './defrost.js';

/** One row of a maker's table at full speed. */
export interface PerformancePoint {
  readonly outdoor: Si<'temperature'>;
  readonly output: Si<'heat-flow'>;
  readonly input: Si<'power'>;
}

export type Defrost = 'included' | 'left-out';

/** The rows from cold to warm. Two rows at one temperature contradict each other, so that the table says nothing. */
export function inOrder(table: readonly PerformancePoint[]): Outcome<readonly PerformancePoint[]> {
  if (table.length < 2) return { error: 'a performance table needs two rows' };
  const rows = [...table].sort((a, b) => a.outdoor - b.outdoor);
  const twice = rows.find((r, i) => i > 0 && r.outdoor === rows[i - 1].outdoor);
  return twice
    ? { error: `the performance table has two rows at ${print(twice.outdoor, 'temperature')}` }
    : { ok: rows };
}

/**
 * Output at full speed against outdoor temperature: straight lines between the points of the table, which keeps the order
 * of the points and never overshoots. Below the coldest point nothing is credited; above the warmest its value is held,
 * which understates the output of a heat pump on a mild day. Without defrost in the table its loss is taken off at the
 * points and at the bends of the loss, with straight lines between.
 */
export function creditedOutput(points: readonly PerformancePoint[], defrost: Defrost, range: Range): Curve {
  const coldest = points[0].outdoor;
  if (coldest >= range.to) return line(range, () => 0);
  return onlyWithin(wholeOutput(points, defrost, range), {
    from: Math.max(coldest, range.from),
    to: range.to,
  });
}

function wholeOutput(points: readonly PerformancePoint[], defrost: Defrost, range: Range): Curve {
  const listed = points.map(p => [p.outdoor, p.output] as const);
  if (defrost === 'included') return through(range, listed);
  const whole = through({ from: Math.min(range.from, -7), to: Math.max(range.to, 5) }, listed);
  const bends = [...new Set([...listed.map(([t]) => t), ...DEFROST.points.map(([t]) => t)])].sort((a, b) => a - b);
  return through(
    range,
    bends.map(t => [t, at(whole, t) * keptInDefrost(t)] as const),
  );
}

/** Electric input at full speed, held beyond both ends of the table. */
export function inputAt(points: readonly PerformancePoint[], outdoor: Si<'temperature'>): Si<'power'> {
  return at(
    through(
      { from: outdoor, to: outdoor },
      points.map(p => [p.outdoor, p.input] as const),
    ),
    outdoor,
  );
}

/** What the last two points would give below the table, if their line went on: information, never credited. Not below zero. */
export function extrapolatedOutput(
  points: readonly PerformancePoint[],
  outdoor: Si<'temperature'>,
): Si<'heat-flow'> | undefined {
  const [cold, next] = points;
  if (outdoor >= cold.outdoor) return undefined;
  const slope = (next.output - cold.output) / (next.outdoor - cold.outdoor);
  return Math.max(0, cold.output + slope * (outdoor - cold.outdoor));
}

export interface RunningLimits {
  readonly cutOut?: Si<'temperature'> | undefined;
  readonly cutIn?: Si<'temperature'> | undefined;
  readonly lockoutBelow?: Si<'temperature'> | undefined;
}

/** The temperature below which a heat pump is not counted on, and what keeps it off there. */
export interface Stop {
  readonly from: Si<'temperature'>;
  readonly by: 'cut-out' | 'cut-in' | 'lockout';
}

/**
 * What keeps a heat pump off in weather that goes down to `coldest`; undefined when nothing does. Once it has cut out it
 * waits for its cut-in, so that between the two it is not credited when the design day reaches below the cut-out. A
 * lockout of the thermostat applies as it stands.
 */
export function stopOf({ cutOut, cutIn, lockoutBelow }: RunningLimits, coldest: Si<'temperature'>): Stop | undefined {
  const stops: Stop[] = [];
  if (cutOut !== undefined && coldest < cutOut) {
    stops.push({ from: cutOut, by: 'cut-out' });
    if (cutIn !== undefined) stops.push({ from: cutIn, by: 'cut-in' });
  }
  if (lockoutBelow !== undefined) stops.push({ from: lockoutBelow, by: 'lockout' });
  return stops.reduce<Stop | undefined>((last, s) => (last && last.from >= s.from ? last : s), undefined);
}

/** The temperature from which a heat pump can be counted on. */
export const runsFrom = (limits: RunningLimits, coldest: Si<'temperature'>): Si<'temperature'> =>
  stopOf(limits, coldest)?.from ?? Number.NEGATIVE_INFINITY;

/** An output that is there only from a temperature up. */
export function runningFrom(output: Curve, from: Si<'temperature'>): Curve {
  const last = output[output.length - 1].to;
  return onlyWithin(output, { from, to: Math.max(last, from) });
}

/** An output that is there only up to a temperature: an auxiliary under its lockout. */
export function runningUpTo(output: Curve, to: Si<'temperature'>): Curve {
  return onlyWithin(output, { from: Math.min(output[0].from, to), to });
}
