import {
  isBinary,
  isBound,
  isClock,
  isDamaged,
  isDay,
  isFileValue,
  isGroup,
  isList,
  isNameValue,
  isQuantity,
  isRange,
  isTable,
  isText,
  rangeOf,
  type Arithmetic,
  type Property as WrittenProperty,
  type Value,
} from '../grammar/index.js';
import {
  dimensions,
  isCurrency,
  isOf,
  likelyUnits,
  nearest,
  print,
  read,
  sameVector,
  spell,
  unitFor,
  type Dimension,
} from '../units/index.js';
import type { Limits, Property } from '../vocabulary/index.js';
import { worth, type Worth } from './arithmetic.js';
import type { Evaluated, Limit, Name } from './declared.js';
import { clockValue, DAYS, dayValue, MONTHS } from './calendar.js';
import type { Report } from './problem.js';
import { tableOf, type Beside } from './table.js';
import { article } from './words.js';

const damaged = (reason: string): Evaluated => ({ is: 'damaged', reason });
const value = (v: unknown): Evaluated => ({ is: 'value', value: v });

/** Judges a written value by what the vocabulary says of its property. */
export function evaluate(written: WrittenProperty, type: Property, report: Report, beside: Beside): Evaluated {
  const { key, value: node } = written;
  if (isDamaged(written)) return damaged(`the text of ${key} is damaged`);
  if (!node) return damaged(`${key} has no value yet`); // The grammar has told it.
  if (isNameValue(node) && node.name === 'none' && !acceptsNone(type)) return { is: 'none' };
  const outcome = judge(node, type, key, report, beside);
  return outcome ?? damaged(`${key} could not be read`);
}

const acceptsNone = (type: Property): boolean => 'of' in type && type.of.includes('none');

function judge(node: Value, type: Property, key: string, report: Report, beside: Beside): Evaluated | undefined {
  switch (type.is) {
    case 'quantity':
      return quantityValue(node, type.dimension, type.within, key, report);
    case 'quantities': {
      const all = each(node).map(n => quantityValue(n, type.dimension, type.within, key, report));
      return all.every(v => v?.is === 'value') ? value(all.map(v => (v as { value: number }).value)) : undefined;
    }
    case 'count':
      return countValue(node, type.within, key, report);
    case 'choice':
      return choiceValue(node, type.of, key, report, value);
    case 'choices': {
      const all = each(node).map(n => choiceValue(n, type.of, key, report, value));
      return all.every(v => v?.is === 'value') ? value(all.map(v => (v as { value: string }).value)) : undefined;
    }
    case 'statement':
      if (isFileValue(node) && type.citing.includes(node.format)) return value({ says: node.format, text: node.path });
      if (isNameValue(node) && type.citing.includes(node.name)) {
        report.add('input/wrong-kind', rangeOf(node), `${node.name} cites a text: ${node.name} "..."`);
        return undefined;
      }
      return choiceValue(node, type.of, key, report, says => value({ says, text: undefined }));
    case 'flag':
      return choiceValue(node, ['yes', 'no'], key, report, word => value(word === 'yes'));
    case 'text':
      return isText(node) ? value(node.text) : wrongKind(node, type, key, report);
    case 'date':
      return isDay(node) ? dayValue(node.day, rangeOf(node), report) : wrongKind(node, type, key, report);
    case 'time':
      return isClock(node) ? clockValue(node.time, rangeOf(node), report) : wrongKind(node, type, key, report);
    case 'month-day':
      return monthDayValue(node, type, key, report);
    case 'currency':
      if (!isNameValue(node)) return wrongKind(node, type, key, report);
      if (isCurrency(node.name)) return value(node.name);
      report.add(
        'input/unknown-choice',
        rangeOf(node),
        `${node.name} is no currency code of ISO 4217, such as CAD or USD`,
      );
      return undefined;
    case 'months':
      return monthsValue(node, type, key, report);
    case 'hours':
      return hoursValue(node, type, key, report);
    case 'reference':
      if (!isNameValue(node)) return wrongKind(node, type, key, report);
      if (type.or.includes(node.name)) return value(node.name);
      return { is: 'reference', reference: { ref: [nameOf(node)], many: false } };
    case 'references': {
      const names = each(node);
      if (!names.every(isNameValue)) return wrongKind(node, type, key, report);
      return { is: 'reference', reference: { ref: names.map(nameOf), many: true } };
    }
    case 'file':
      return fileValue(node, type, key, report, beside);
    case 'table':
      if (!isTable(node) && !(isFileValue(node) && node.format === 'csv')) return wrongKind(node, type, key, report);
      return tableOf(node, type, key, report, beside);
  }
}

const each = (node: Value): Value[] => (isList(node) ? node.items : [node]);
const nameOf = (node: { name: string } & Value): Name => ({ name: node.name, span: rangeOf(node) });

function wrongKind(node: Value, type: Property, key: string, report: Report): undefined {
  report.add('input/wrong-kind', rangeOf(node), `${key} is ${wanted(type)}, not ${kindOf(node)}`);
}

/** What a property wants, in words. */
export function wanted(type: Property): string {
  switch (type.is) {
    case 'quantity': {
      const symbol = dimensions[type.dimension].si[0][0];
      return dimensions[type.dimension].doc + (symbol ? `, for example in ${symbol}` : '');
    }
    case 'quantities':
      return `${dimensions[type.dimension].doc} or a list of such`;
    case 'count':
      return 'a whole number';
    case 'choice':
    case 'choices':
      return `one of ${type.of.join(', ')}`;
    case 'statement':
      return `one of ${[...type.of, ...type.citing.map(c => `${c} "..."`)].join(', ')}`;
    case 'flag':
      return 'yes or no';
    case 'text':
      return 'a text in quotes';
    case 'date':
      return 'a date such as 2026-05-01';
    case 'time':
      return 'a time such as 07:30';
    case 'month-day':
      return 'a day of the year such as may-01';
    case 'currency':
      return 'a currency code such as CAD';
    case 'months':
      return 'a month or months such as nov .. apr';
    case 'hours':
      return 'hours such as 07:00 .. 11:00';
    case 'reference':
      return `the name of ${article([...type.to, ...type.or].join(' or '))}`;
    case 'references':
      return `the name of ${article(type.to.join(' or '))}, or a list of names`;
    case 'file':
      return `a file: ${type.formats.map(f => `${f} "..."`).join(' or ')}`;
    case 'table':
      return `a table (${Object.keys(type.columns).join(', ')})`;
  }
}

function kindOf(node: Value): string {
  if (isText(node)) return 'a text';
  if (isDay(node)) return 'a date';
  if (isClock(node)) return 'a time';
  if (isNameValue(node)) return `the name ${node.name}`;
  if (isList(node)) return 'a list';
  if (isTable(node)) return 'a table';
  if (isFileValue(node)) return 'a file';
  if (isBound(node)) return 'a bound';
  if (isRange(node)) return 'a range';
  return 'a quantity';
}

const isArithmetic = (node: Value): node is Arithmetic & Value => isQuantity(node) || isBinary(node) || isGroup(node);

function quantityValue(
  node: Value,
  dimension: Dimension,
  within: Limits | undefined,
  key: string,
  report: Report,
): Evaluated | undefined {
  if (!isArithmetic(node)) {
    const what = isTable(node) ? 'a table' : kindOf(node);
    report.add('input/wrong-kind', rangeOf(node), `${key} is ${dimensions[dimension].doc}, not ${what}`);
    return undefined;
  }
  // A literal alone must have the dimension; the parts of a sum or product need not.
  const w = worth(node, report, isQuantity(node) ? dimension : undefined);
  if (!w) return undefined;
  const limits = within?.map(t => read(t).value) as [number, number] | undefined;
  if (!isOf(w.quantity, dimension)) return wrongDimension(node, w, dimension, limits, key, report);
  const v = w.quantity.value;
  if (!Number.isFinite(v)) {
    report.add('input/impossible', rangeOf(node), `${key} is too large to calculate with`);
    return undefined;
  }
  if (limits && (v < limits[0] || v > limits[1])) {
    if (!plausible(node, w, dimension, limits, within!, key, report)) return undefined;
  }
  return {
    is: 'value',
    value: v,
    ...(w.halfWidth === undefined ? {} : { halfWidth: w.halfWidth }),
    ...(w.quantity.currency ? { currency: w.quantity.currency } : {}),
  };
}

function wrongDimension(
  node: Value,
  w: Worth,
  dimension: Dimension,
  limits: readonly [number, number] | undefined,
  key: string,
  report: Report,
): undefined {
  const units = w.literal ? likelyUnits(w.literal.number, w.literal.unit, dimension, limits) : [];
  const bare = w.literal && w.literal.unit === '';
  const offers = bare ? usualUnits(dimension, limits) : units;
  report.add(
    'input/wrong-dimension',
    rangeOf(node),
    bare
      ? `${key} is ${dimensions[dimension].doc} and needs its unit, for example ${offers[0] ?? dimensions[dimension].si[0][0]}`
      : `${key} is ${dimensions[dimension].doc}, not ${spell(w.quantity)}`,
    { replace: offers.slice(0, 3).map(u => [`Write ${spelled(w, u)}`, spelled(w, u)] as const) },
  );
}

/** Units in which a value of the dimension is usually written: that of the middle of its limits first. */
function usualUnits(dimension: Dimension, limits: readonly [number, number] | undefined): string[] {
  const all = dimensions[dimension].si.map(([u]) => u).filter(Boolean);
  const middle = limits && unitFor(Math.sqrt(Math.max(limits[0], 1e-9) * Math.max(limits[1], 1e-9)), dimension, 'si');
  return middle ? [middle, ...all.filter(u => u !== middle)] : all;
}

const spelled = (w: Worth, unit: string): string => (unit ? `${w.literal!.number} ${unit}` : String(w.literal!.number));

/** Tells why a value outside its limits is doubtful; false when no house can have it. */
function plausible(
  node: Value,
  w: Worth,
  dimension: Dimension,
  limits: readonly [number, number],
  within: Limits,
  key: string,
  report: Report,
): boolean {
  const v = w.quantity.value;
  const range = `${within[0]} to ${within[1]}`;
  if (v <= 0 && limits[0] > 0 && !('point' in dimensions[dimension])) {
    report.add('input/impossible', rangeOf(node), `${key} must be more than zero (usual: ${range})`);
    return false;
  }
  const units = w.literal ? likelyUnits(w.literal.number, w.literal.unit, dimension, limits) : [];
  if (units.length) {
    const meant = units.map(u => spelled(w, u));
    report.add(
      'input/unit-slip',
      rangeOf(node),
      `${key} of ${written(w, dimension)} is outside ${range}; is it ${meant.join(' or ')}?`,
      { replace: meant.map(m => [`Write ${m}`, m] as const) },
    );
  } else
    report.add(
      'input/implausible',
      rangeOf(node),
      `${key} of ${written(w, dimension)} is outside the plausible ${range}`,
    );
  return true;
}

const written = (w: Worth, dimension: Dimension): string =>
  w.literal ? spelled(w, w.literal.unit) : print(w.quantity.value, dimension);

function countValue(
  node: Value,
  within: readonly [number, number] | undefined,
  key: string,
  report: Report,
): Evaluated | undefined {
  if (!isArithmetic(node)) {
    report.add('input/wrong-kind', rangeOf(node), `${key} is a whole number, not ${kindOf(node)}`);
    return undefined;
  }
  const w = worth(node, report);
  if (!w) return undefined;
  const n = w.quantity.value;
  if (
    !sameVector(w.quantity.vector, [0, 0, 0, 0, 0, 0, 0]) ||
    (w.literal && w.literal.unit !== '') ||
    !Number.isInteger(n)
  ) {
    report.add('input/wrong-kind', rangeOf(node), `${key} is a whole number without a unit`);
    return undefined;
  }
  if (within && (n < within[0] || n > within[1])) {
    const impossible = n < 0 || (n < 1 && within[0] >= 1);
    report.add(
      impossible ? 'input/impossible' : 'input/implausible',
      rangeOf(node),
      `${key} of ${n} is outside the plausible ${within[0]} to ${within[1]}`,
    );
    if (impossible) return undefined;
  }
  return value(n);
}

function choiceValue<T>(
  node: Value,
  of: readonly string[],
  key: string,
  report: Report,
  make: (word: string) => T,
): T | undefined {
  if (isNameValue(node) && of.includes(node.name)) return make(node.name);
  const span = rangeOf(node);
  const word = isNameValue(node) ? node.name : gauge(node);
  const near = word === undefined ? undefined : of.includes(word) ? word : nearest(word, of);
  report.add(
    'input/unknown-choice',
    span,
    `${key} is one of ${of.length > 12 ? `${of.slice(0, 10).join(', ')}, …` : of.join(', ')}`,
    near ? { replace: [[`Write ${near}`, near]] } : {},
  );
  return undefined;
}

/** A conductor written as a quantity: `6 AWG` is the name awg-6. */
function gauge(node: Value): string | undefined {
  return isQuantity(node) && node.unit === 'AWG' ? `awg-${node.raw}` : undefined;
}

function monthDayValue(node: Value, type: Property, key: string, report: Report): Evaluated | undefined {
  const m = isNameValue(node) ? /^([a-z]{3})-(\d\d)$/.exec(node.name) : null;
  const month = m ? MONTHS.indexOf(m[1]) + 1 : 0;
  const day = m ? Number(m[2]) : 0;
  if (month && day >= 1 && day <= DAYS[month - 1]) return value({ month, day });
  return wrongKind(node, type, key, report);
}

function monthsValue(node: Value, type: Property, key: string, report: Report): Evaluated | undefined {
  const list: number[] = [];
  for (const item of each(node)) {
    const ends = isRange(item) ? [item.low, item.high] : [item, item];
    const [first, last] = ends.map(e => (isNameValue(e) ? MONTHS.indexOf(e.name) : -1));
    if (first < 0 || last < 0) return wrongKind(item, type, key, report);
    for (let m = first; ; m = (m + 1) % 12) {
      list.push(m + 1);
      if (m === last) break;
    }
  }
  return value([...new Set(list)]);
}

function hoursValue(node: Value, type: Property, key: string, report: Report): Evaluated | undefined {
  const list: { from: number; to: number }[] = [];
  for (const item of each(node)) {
    if (!isRange(item) || !isClock(item.low) || !isClock(item.high)) return wrongKind(item, type, key, report);
    const from = clockValue(item.low.time, rangeOf(item.low), report);
    const to = clockValue(item.high.time, rangeOf(item.high), report);
    if (from?.is !== 'value' || to?.is !== 'value') return undefined;
    list.push({ from: from.value as number, to: to.value as number });
  }
  return value(list);
}

function fileValue(
  node: Value,
  type: Property & { is: 'file' },
  key: string,
  report: Report,
  beside: Beside,
): Evaluated | undefined {
  if (isNameValue(node) && type.or.length) return { is: 'reference', reference: { ref: [nameOf(node)], many: false } };
  if (!isFileValue(node)) return wrongKind(node, type, key, report);
  if (!type.formats.includes(node.format)) {
    report.add('input/unknown-choice', rangeOf(node), `${key} is ${wanted(type)}`);
    return undefined;
  }
  if (!beside.stands(node, report)) return undefined;
  return value({
    format: node.format,
    path: node.path,
    columns: node.columns.map(c => ({ name: c.name, header: c.header ?? c.name, unit: c.unit })),
  });
}

/** The bound of an expectation: `at least X`, `at most X`, `X .. Y`, or one value for both ends. */
export function boundsOf(written: WrittenProperty, report: Report): Evaluated {
  const { key, value: node } = written;
  if (isDamaged(written)) return damaged(`the text of ${key} is damaged`);
  if (!node) return damaged(`${key} has no bound yet`); // The grammar has told it.
  const limit = (n: Value | undefined): Limit | undefined => {
    if (!n || !isArithmetic(n)) {
      report.add('input/wrong-kind', n ? rangeOf(n) : rangeOf(node), `${key} is bounded by quantities`);
      return undefined;
    }
    const w = worth(n, report);
    return (
      w && {
        value: w.quantity.value,
        vector: w.quantity.vector,
        ...(w.quantity.point ? { point: true as const } : {}),
        span: rangeOf(n),
      }
    );
  };
  if (isBound(node)) {
    const end = limit(node.value);
    if (!end) return damaged(`${key} could not be read`);
    return /least/.test(node.op) ? { is: 'bounds', low: end } : { is: 'bounds', high: end };
  }
  const low = limit(isRange(node) ? node.low : node);
  const high = isRange(node) ? limit(node.high) : low;
  return low && high ? { is: 'bounds', low, high } : damaged(`${key} could not be read`);
}
