import type { Si } from '../../units/index.js';
import { at, lowest, minus, plus, warmestBelowZero, within, type Curve } from './curve.js';

/** Load and sources of heat against the outdoor temperature, from the design temperature up. */
export interface HeatBalance {
  readonly load: Curve;
  readonly heatPump: Curve;
  /** Everything that may help the heat pump or stand in for it. */
  readonly auxiliary: Curve;
}

export interface WorstMargin {
  /** Heat over at the worst temperature, in W; negative when it is short. */
  readonly margin: Si<'heat-flow'>;
  readonly outdoor: Si<'temperature'>;
  /** Which side of a cut-out or lockout at that temperature is meant. */
  readonly side: 'warmer' | 'colder';
  readonly load: Si<'heat-flow'>;
  readonly heatPump: Si<'heat-flow'>;
  readonly auxiliary: Si<'heat-flow'>;
  /** The warmest temperature looked at: above it the heat pump carries the load by itself. */
  readonly upTo: Si<'temperature'>;
}

/**
 * Where capacity and load meet. `crossing`: the load passes the output there. `jump`: the heat pump stops there (cut-out,
 * lockout, end of its table) while it still carried the load. Undefined where the heat pump carries the load at every
 * temperature of the range.
 */
export function balancePoint(
  load: Curve,
  heatPump: Curve,
): { readonly outdoor: Si<'temperature'>; readonly by: 'crossing' | 'jump' } | undefined {
  return warmestBelowZero(minus(heatPump, load));
}

/**
 * The smallest margin over every outdoor temperature from the design temperature to the balance point. Load and outputs
 * are straight between their bends, so that the smallest value stands at a bend or on one side of a jump, and all of
 * them are looked at: the result is exact.
 */
export function worstMargin({ load, heatPump, auxiliary }: HeatBalance): WorstMargin {
  const design = load[0].from;
  const upTo = balancePoint(load, heatPump)?.outdoor ?? design;
  const all = minus(plus(heatPump, auxiliary), load);
  const { outdoor, side, value } = lowest(within(all, { from: design, to: upTo }));
  return {
    margin: value,
    outdoor,
    side,
    load: at(load, outdoor, side),
    heatPump: at(heatPump, outdoor, side),
    auxiliary: at(auxiliary, outdoor, side),
    upTo,
  };
}

/** What the heat pump leaves uncovered at worst, and where; none when it carries the load everywhere. */
export function auxiliaryRequired(
  load: Curve,
  heatPump: Curve,
): { readonly required: Si<'heat-flow'>; readonly outdoor: Si<'temperature'> } {
  const { outdoor, value } = lowest(minus(heatPump, load));
  return { required: Math.max(0, -value), outdoor };
}
