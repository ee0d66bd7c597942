import { atoms, type Unit } from './unit-table.js';
import { NONE, power, times, type Vector } from './vector.js';

const cache = new Map<string, Unit | undefined>();

/**
 * A unit as people write it: `W/m2K`, `kWh/(m2·d)`, `h·ft2·°F/BTU`, `¢/kWh`. Everything behind the slash divides.
 * A scale of points (°C) alone is a point; inside a product it is a difference.
 */
export function parseUnit(text: string): Unit | undefined {
  if (text.length > 40) return undefined;
  if (!cache.has(text)) {
    if (cache.size > 5000) cache.clear();
    cache.set(text, compound(text));
  }
  return cache.get(text);
}

function compound(text: string): Unit | undefined {
  const alone = atoms.get(text);
  if (alone) return alone;
  const parts = text.replace(/\s/g, '').split('/');
  if (parts.length > 2) return undefined;
  const above = parts[0] === '1' ? [] : factors(parts[0]);
  const below = parts.length === 2 ? factors(parts[1].replace(/^\((.*)\)$/, '$1')) : [];
  if (!above || !below) return undefined;
  let vector: Vector = NONE;
  let factor = 1;
  let currency: string | undefined;
  for (const [list, sign] of [
    [above, 1],
    [below, -1],
  ] as const)
    for (const { unit, exponent } of list) {
      if (unit.special) return undefined;
      if (unit.currency && currency && unit.currency !== currency) return undefined;
      currency ??= unit.currency;
      vector = times(vector, power(unit.vector, exponent), sign);
      factor *= unit.factor ** (exponent * sign);
    }
  return { symbol: text, vector, factor, ...(currency ? { currency } : {}) };
}

interface Factor {
  readonly unit: Unit;
  readonly exponent: number;
}

function factors(text: string): Factor[] | undefined {
  const list: Factor[] = [];
  for (const piece of text.split(/[·*]/)) {
    let rest = piece;
    if (!rest) return undefined;
    while (rest) {
      const next = longestAtom(rest);
      if (!next) return undefined;
      list.push(next.factor);
      rest = rest.slice(next.length);
    }
  }
  return list;
}

const EXPONENTS: Record<string, number> = { '²': 2, '³': 3, '2': 2, '3': 3 };

/** The longest known unit at the start, with its exponent: `m2K` gives m2, then K. */
function longestAtom(text: string): { factor: Factor; length: number } | undefined {
  for (let length = Math.min(text.length, 7); length > 0; length--) {
    const unit = atoms.get(text.slice(0, length));
    if (!unit) continue;
    const caret = text[length] === '^' ? 1 : 0;
    const exponent = EXPONENTS[text[length + caret]];
    if (exponent) return { factor: { unit, exponent }, length: length + caret + 1 };
    if (caret) return undefined;
    return { factor: { unit, exponent: 1 }, length };
  }
  return undefined;
}

/** Nothing longer than this is held against names and units: it is no slip of one. */
const LONGEST = 60;

/** What people write for units that have another writing here. */
const SPOKEN: Readonly<Record<string, string>> = {
  sqft: 'ft2',
  sf: 'ft2',
  sqm: 'm2',
  sqin: 'in2',
  feet: 'ft',
  feets: 'ft',
  foot: 'ft',
  inches: 'in',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  amp: 'A',
  amps: 'A',
  ampere: 'A',
  amperes: 'A',
  volt: 'V',
  volts: 'V',
  watt: 'W',
  watts: 'W',
  kilowatt: 'kW',
  kilowatts: 'kW',
  litre: 'L',
  litres: 'L',
  liter: 'L',
  liters: 'L',
  gallon: 'gal',
  gallons: 'gal',
  celsius: '°C',
  fahrenheit: '°F',
  c: '°C',
  f: '°F',
  deg: '°C',
  percent: '%',
  pct: '%',
  hour: 'h',
  hours: 'h',
  minute: 'min',
  minutes: 'min',
  second: 's',
  seconds: 's',
  pascal: 'Pa',
  pascals: 'Pa',
  btuh: 'BTU/h',
  tons: 'ton',
  dollars: '$',
  cents: '¢',
  rvalue: 'R',
  iwc: 'inWC',
  'l/sec': 'L/s',
  lps: 'L/s',
};
const WRITTEN = [
  ...[
    'm2',
    'ft2',
    'cm2',
    'in2',
    'm3',
    'ft3',
    'W/m2K',
    'W/mK',
    'W/K',
    'kg/m3',
    'J/kgK',
    'L/s',
    'L/min',
    'L/d',
    'm/s',
    '%/K',
  ],
  ...['BTU/h', 'kWh/d', 'kWh/yr', 'GJ/yr', 'CAD/kWh', 'USD/kWh', '¢/kWh', 'CAD/GJ', 'CAD/month', 'CAD/d', 'g/kWh'],
];

/**
 * The known unit nearest to an unknown one, among those that are wanted: by what people say, by letter case, then by an
 * edit distance of one or two.
 */
export function nearestUnit(text: string, wanted: (unit: Unit) => boolean = () => true): string | undefined {
  if (text.length > LONGEST) return undefined;
  const lower = text.toLowerCase();
  const spoken = Object.hasOwn(SPOKEN, lower) ? SPOKEN[lower] : undefined;
  if (spoken !== undefined && wanted(parseUnit(spoken)!)) return spoken;
  const known = [...atoms.keys(), ...WRITTEN].filter(u => wanted(parseUnit(u)!) && !dropsPrefix(text, u));
  // A code of currency is near to almost any short word; it is offered for a difference of case alone.
  return (
    known.find(u => u.toLowerCase() === lower) ??
    nearest(lower, new Set(known.filter(u => !atoms.get(u)?.currency).map(u => u.toLowerCase())), known)
  );
}

/** Whether an offer would leave out a prefix that was written: it would change the value a thousandfold. */
const dropsPrefix = (text: string, offer: string): boolean =>
  text.length === offer.length + 1 && text.endsWith(offer) && /^[kMGmµ]/.test(text);

/** Levenshtein distance, given up as soon as it must reach `limit`. */
function editDistance(a: string, b: string, limit = Infinity): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + cost));
    }
    if (Math.min(...next) >= limit) return limit;
    row = next;
  }
  return row[b.length];
}

/**
 * The nearest of some names, within two edits or a third of the length; of `written`, the one that is the same but for its
 * letter case.
 */
export function nearest(text: string, names: Iterable<string>, written?: readonly string[]): string | undefined {
  if (text.length > LONGEST) return undefined;
  let best: string | undefined;
  let bestDistance = Math.min(2, Math.ceil(text.length / 3)) + 1;
  for (const name of names) {
    const d = editDistance(text, name, bestDistance);
    if (d < bestDistance) {
      best = name;
      bestDistance = d;
    }
  }
  return best === undefined ? undefined : (written?.find(w => w.toLowerCase() === best) ?? best);
}
