/** Currents on the two legs of a 120/240 V service, A. */
export interface Legs {
  readonly a: number;
  readonly b: number;
  readonly neutral: number;
  /** The more loaded leg decides whether the main breaker carries it. */
  readonly controlling: number;
  /** Difference of the legs over their mean, 0 to 2. */
  readonly imbalance: number;
}

/** Kirchhoff's current law for a split-phase service: 240 V loads are on both legs and not on the neutral. */
export function legCurrents(lineToNeutralA: number, lineToNeutralB: number, lineToLine: number): Legs {
  const a = lineToNeutralA + lineToLine;
  const b = lineToNeutralB + lineToLine;
  const mean = (a + b) / 2;
  return {
    a,
    b,
    neutral: Math.abs(lineToNeutralA - lineToNeutralB),
    controlling: Math.max(a, b),
    imbalance: mean > 0 ? Math.abs(a - b) / mean : 0,
  };
}

/** Neutral of a multiwire circuit, A: the legs subtract when they differ and add when both are on the same one. */
export const multiwireNeutral = (one: number, other: number, legs: 'different' | 'same'): number =>
  legs === 'different' ? Math.abs(one - other) : one + other;
