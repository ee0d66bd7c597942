import { dimensions, type Dimension, type DimensionEntry } from './dimensions.js';
import { parseUnit } from './parse-unit.js';
import { inUnit } from './quantity.js';

export type UnitSystem = 'si' | 'ip';

export interface PrintOptions {
  readonly system?: UnitSystem;
  /** Significant figures; 3 unless said. */
  readonly figures?: number;
  /** ISO 4217 code put in the place of `$`. */
  readonly currency?: string;
}

/** A value in SI as people read it, in a form that can be pasted back into a house file. */
export function print(si: number, dimension: Dimension, options: PrintOptions = {}): string {
  const { unit, text } = printed(si, dimension, options);
  return unit ? `${text} ${unit}` : text;
}

/** The number and the unit of a value apart, for tables with a column for each. */
export function printed(si: number, dimension: Dimension, options: PrintOptions = {}): { text: string; unit: string } {
  const symbol = unitFor(si, dimension, options.system ?? 'si');
  if (!symbol) return { text: figures(si, options.figures ?? 3), unit: '' };
  const value = inUnit(si, parseUnit(symbol)!);
  const text =
    dimension.startsWith('money') || dimension.endsWith('price') ? money(value) : figures(value, options.figures ?? 3);
  return { text, unit: options.currency ? symbol.replace('$', options.currency) : symbol };
}

/** The unit in which a value of this size is printed. */
export function unitFor(si: number, dimension: Dimension, system: UnitSystem): string {
  const d: DimensionEntry = dimensions[dimension];
  const choices = d[system];
  return (choices.find(([, below]) => below !== undefined && Math.abs(si) < below) ?? choices[choices.length - 1])[0];
}

/** Significant figures without an exponent and without dropping digits left of the point. */
export function figures(value: number, count = 3): string {
  if (!Number.isFinite(value)) return Number.isNaN(value) ? 'not a number' : value > 0 ? 'unlimited' : '−unlimited';
  if (value === 0) return '0';
  const places = Math.max(0, count - 1 - Math.floor(Math.log10(Math.abs(value))));
  const text = Math.abs(value).toFixed(Math.min(places, 12));
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return value < 0 && Number(short) !== 0 ? `−${short}` : short;
}

/** To the cent below a hundred, whole above; a price per kWh keeps four places. */
function money(value: number): string {
  const size = Math.abs(value);
  const places = size >= 100 ? 0 : size >= 1 ? 2 : 4;
  const text = size.toFixed(places).replace(/(\.\d\d)0+$/, '$1');
  return value < 0 ? `−${text}` : text;
}
