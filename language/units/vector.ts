/** Exponents of the base quantities: metre, kilogram, second, kelvin, ampere, money, radian. */
export type Vector = readonly [number, number, number, number, number, number, number];

export const NONE: Vector = [0, 0, 0, 0, 0, 0, 0];

export function times(a: Vector, b: Vector, sign: 1 | -1 = 1): Vector {
  return a.map((e, i) => e + sign * b[i]) as unknown as Vector;
}

export function power(a: Vector, exponent: number): Vector {
  return a.map(e => e * exponent) as unknown as Vector;
}

export function sameVector(a: Vector, b: Vector): boolean {
  return a.every((e, i) => e === b[i]);
}

const SYMBOLS = ['m', 'kg', 's', 'K', 'A', 'money', 'rad'];

/** A vector in words for messages, for example `kg·m2/s3`. */
export function spellVector(v: Vector): string {
  const part = (sign: 1 | -1) =>
    v.flatMap((e, i) => (e * sign > 0 ? [SYMBOLS[i] + (Math.abs(e) === 1 ? '' : Math.abs(e))] : [])).join('·');
  const above = part(1);
  const below = part(-1);
  if (!below) return above || 'a plain number';
  return `${above || '1'}/${below}`;
}
