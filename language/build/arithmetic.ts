import {
  isBinary,
  isGroup,
  numberOf,
  rangeOf,
  rangeOfProperty,
  type Arithmetic,
  type Quantity as Written,
} from '../grammar/index.js';
import {
  add,
  isOf,
  multiply,
  nearestUnit,
  parseUnit,
  quantity,
  sameVector,
  spell,
  type Dimension,
  type Quantity,
  type Unit,
} from '../units/index.js';
import type { Report, Span } from './problem.js';

/** What an expression is worth, with the half-width of its 95 % interval in SI where one is written; undefined after a problem. */
export interface Worth {
  readonly quantity: Quantity;
  readonly halfWidth?: number;
  /** The number and the unit as written, for a value that is one literal. */
  readonly literal?: { readonly number: number; readonly unit: string };
}

/** Evaluates arithmetic on quantities. Problems go to the report; then there is no value. */
export function worth(node: Arithmetic | undefined, report: Report, want?: Dimension): Worth | undefined {
  if (!node) return undefined;
  if (isBinary(node)) return binary(node, report);
  if (isGroup(node)) {
    const inner = worth(node.inner, report);
    if (!inner || !node.negative) return inner;
    return { ...inner, quantity: { ...inner.quantity, value: -inner.quantity.value } };
  }
  return literal(node, report, want);
}

/** Sums and products are walked with a loop on the left, where long ones grow. */
function binary(node: Arithmetic, report: Report): Worth | undefined {
  const chain: { op: string; right: Arithmetic; span: Span }[] = [];
  let left: Arithmetic = node;
  while (isBinary(left)) {
    chain.push({ op: left.op, right: left.right, span: rangeOf(left) });
    left = left.left;
  }
  let total = worth(left, report);
  for (const { op, right, span } of chain.reverse()) {
    const next = worth(right, report);
    if (!total || !next) return undefined;
    if (total.halfWidth !== undefined || next.halfWidth !== undefined) {
      report.add('input/tolerance', span, 'a tolerance belongs to a single value, not to a part of a sum or product');
      return undefined;
    }
    const sum = op === '+' || op === '-' || op === '−';
    const outcome = sum
      ? add(total.quantity, next.quantity, op === '+' ? 1 : -1)
      : multiply(total.quantity, next.quantity, op === '*' ? 1 : -1);
    if ('error' in outcome) {
      report.add('input/wrong-dimension', span, outcome.error);
      return undefined;
    }
    total = { quantity: outcome.ok };
  }
  return total;
}

function literal(node: Written, report: Report, want: Dimension | undefined): Worth | undefined {
  const reading = numberOf(node.raw);
  if ('problem' in reading) return undefined; // The grammar has told it.
  const number = node.negative ? -reading.value : reading.value;
  if (node.unit === undefined)
    return tolerated(node, { value: number, vector: quantity(0, undefined).vector }, { number, unit: '' }, report);
  const unit = known(node, 'unit', node.unit, report, want);
  if (!unit) return undefined;
  const first = quantity(number, unit);
  if (node.second === undefined) return tolerated(node, first, { number, unit: node.unit }, report);
  const second = numberOf(node.second);
  const secondUnit = node.secondUnit === undefined ? undefined : known(node, 'secondUnit', node.secondUnit, report);
  if ('problem' in second || !secondUnit) return undefined;
  // Only feet and inches stand side by side; the grammar has told of anything else.
  if (unit.symbol !== 'ft' || secondUnit.symbol !== 'in') return undefined;
  const inches = quantity(node.negative ? -second.value : second.value, secondUnit).value;
  return tolerated(node, { ...first, value: first.value + inches }, { number, unit: 'ft' }, report);
}

/** The unit, or a problem that offers the nearest one. */
function known(
  node: Written,
  property: 'unit' | 'secondUnit' | 'toleranceUnit',
  text: string,
  report: Report,
  want?: Dimension,
): Unit | undefined {
  const unit = parseUnit(text);
  if (unit) return unit;
  const span = rangeOfProperty(node, property) ?? rangeOf(node);
  unknownUnit(text, span, report, want);
  return undefined;
}

/** Tells of an unknown unit and offers the nearest one; where a dimension is wanted, the nearest of those that have it. */
export function unknownUnit(text: string, span: Span, report: Report, want?: Dimension): void {
  const near = want === undefined ? nearestUnit(text) : nearestUnit(text, unit => isOf(quantity(1, unit), want));
  report.add(
    'input/unknown-unit',
    span,
    near ? `there is no unit "${text}"; the nearest is ${near}` : `there is no unit "${text}"`,
    near ? { replace: [[`Write ${near}`, near]] } : {},
  );
}

function tolerated(
  node: Written,
  q: Quantity,
  lit: { number: number; unit: string },
  report: Report,
): Worth | undefined {
  if (node.tolerance === undefined) return { quantity: q, literal: lit };
  const reading = numberOf(node.tolerance);
  if ('problem' in reading) return undefined;
  const span = rangeOfProperty(node, 'tolerance') ?? rangeOf(node);
  const symbol = node.toleranceUnit;
  const unit = symbol === undefined ? undefined : known(node, 'toleranceUnit', symbol, report);
  if (symbol !== undefined && !unit) return undefined;
  if (unit?.symbol === '%' && isOf(q, 'ratio')) {
    report.add(
      'input/tolerance',
      span,
      'for a value that is itself in per cent, write the tolerance in points: ± 3 pp',
      {
        mend: () => [
          {
            title: 'Write points',
            changes: [{ uri: report.uri, ...(rangeOfProperty(node, 'toleranceUnit') ?? span), text: 'pp' }],
          },
        ],
      },
    );
    return undefined;
  }
  if (unit?.symbol === '%') {
    if (q.point) {
      report.add('input/tolerance', span, 'a temperature has no per cent; write its tolerance in K');
      return undefined;
    }
    return { quantity: q, literal: lit, halfWidth: Math.abs(q.value) * reading.value * 0.01 };
  }
  const half = quantity(reading.value, unit?.point ? parseUnit(unit.symbol === '°F' ? 'Δ°F' : 'K') : unit);
  if (!sameVector(half.vector, q.vector)) {
    report.add('input/tolerance', span, `the tolerance of ${spell(q)} is ${spell(half)}`);
    return undefined;
  }
  return { quantity: q, literal: lit, halfWidth: half.value };
}
