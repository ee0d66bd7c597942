import { dimensions, type Dimension } from './dimensions.js';
import { parseUnit } from './parse-unit.js';
import type { Unit } from './unit-table.js';
import { NONE, sameVector, spellVector, times, type Vector } from './vector.js';

/** An amount or a point in SI (points in °C) with its dimension, as arithmetic in a file makes it. */
export interface Quantity {
  readonly value: number;
  readonly vector: Vector;
  readonly point?: true;
  readonly currency?: string;
}

export type Outcome<T> = { readonly ok: T } | { readonly error: string };

/** `9 kW` in SI. A wire gauge is its conductor's area (ASTM B258: d = 0.127 mm × 92^((36 − n)/39)). */
export function quantity(value: number, unit: Unit | undefined): Quantity {
  if (!unit) return { value, vector: NONE };
  if (unit.special === 'awg') {
    const diameter = 0.127e-3 * 92 ** ((36 - value) / 39);
    return { value: (Math.PI / 4) * diameter ** 2, vector: unit.vector };
  }
  const si = unit.point ? (value + unit.before!) * unit.factor : value * unit.factor;
  return {
    value: si,
    vector: unit.vector,
    ...(unit.point ? { point: true as const } : {}),
    ...(unit.currency ? { currency: unit.currency } : {}),
  };
}

/** The number to write with a unit for a value in SI. */
export function inUnit(si: number, unit: Unit): number {
  if (unit.special === 'awg') return 36 - (39 * Math.log(Math.sqrt((4 * si) / Math.PI) / 0.127e-3)) / Math.log(92);
  return unit.point ? si / unit.factor - unit.before! : si / unit.factor;
}

export function add(a: Quantity, b: Quantity, sign: 1 | -1): Outcome<Quantity> {
  if (!sameVector(a.vector, b.vector))
    return { error: `${spell(a)} and ${spell(b)} cannot be ${sign === 1 ? 'added' : 'subtracted'}` };
  if (a.point && b.point && sign === 1)
    return { error: 'two temperatures cannot be added; a difference is written in K' };
  if (!a.point && b.point) return { error: 'a temperature stands first: 21 °C − 4 K' };
  const currency = oneCurrency(a, b);
  if (currency === null) return { error: `${a.currency} and ${b.currency} cannot be mixed` };
  return {
    ok: {
      value: a.value + sign * b.value,
      vector: a.vector,
      ...(a.point && !b.point ? { point: true as const } : {}),
      ...(currency ? { currency } : {}),
    },
  };
}

export function multiply(a: Quantity, b: Quantity, sign: 1 | -1): Outcome<Quantity> {
  if (a.point || b.point)
    return { error: 'a temperature cannot be multiplied or divided; a difference is written in K' };
  if (sign === -1 && b.value === 0) return { error: 'division by zero' };
  const currency = oneCurrency(a, b);
  if (currency === null) return { error: `${a.currency} and ${b.currency} cannot be mixed` };
  return {
    ok: {
      value: sign === 1 ? a.value * b.value : a.value / b.value,
      vector: times(a.vector, b.vector, sign),
      ...(currency ? { currency } : {}),
    },
  };
}

const oneCurrency = (a: Quantity, b: Quantity): string | undefined | null =>
  a.currency && b.currency && a.currency !== b.currency ? null : (a.currency ?? b.currency);

/** Whether a quantity is of a named dimension; a point never is an amount, nor an amount a point. */
export function isOf(q: Quantity, dimension: Dimension): boolean {
  const d: { vector: Vector; point?: true } = dimensions[dimension];
  return sameVector(q.vector, d.vector) && Boolean(q.point) === Boolean(d.point);
}

export function spell(q: Quantity): string {
  if (q.point) return 'a temperature';
  const named = Object.entries(dimensions).find(
    ([, d]) => sameVector(d.vector, q.vector) && !('point' in d && d.point),
  );
  return named ? named[1].doc : spellVector(q.vector);
}

/** `2.4 m` as the vocabulary and the tests write it: one number, one unit. Throws on anything else, it is our own text. */
export function read(text: string): Quantity {
  const m = /^\s*([-−]?[\d.]+(?:[eE][-+]?\d+)?)\s*(\S.*)?$/u.exec(text);
  const unit = m?.[2] ? parseUnit(m[2].trim()) : undefined;
  if (!m || (m[2] && !unit)) throw new Error(`not a quantity: ${text}`);
  return quantity(Number(m[1].replace('−', '-')), unit);
}
