import {
  isClock,
  isDay,
  isNameValue,
  isQuantity,
  isText,
  isUnknownCell,
  numberOf,
  rangeOf,
  rangeOfProperty,
  type Cell as WrittenCell,
  type Column,
  type FileValue,
  type Table,
} from '../grammar/index.js';
import { dimensions, isOf, nearest, parseUnit, quantity, type Dimension, type Unit } from '../units/index.js';
import { camel, type Cell, type Property } from '../vocabulary/index.js';
import { unknownUnit } from './arithmetic.js';
import { clockValue, dayValue, MONTHS } from './calendar.js';
import { readCsv } from './csv.js';
import type { Evaluated } from './declared.js';
import type { Report, Span } from './problem.js';

/** What lies beside the house file, read beforehand. */
export interface Beside {
  /** Whether a named file is there; tells when it is not, or lies outside the workspace. */
  stands(node: FileValue, report: Report): boolean;
  /** The text of a csv that stands. */
  text(node: FileValue): string | undefined;
}

type TableType = Property & { readonly is: 'table' };
interface Wanted {
  readonly name: string;
  readonly cell: Cell;
  readonly optional: boolean;
  readonly unit: Unit | undefined;
}

/** So many faults of rows are told one by one. */
const TOLD = 20;

export function tableOf(
  node: Table | FileValue,
  type: TableType,
  key: string,
  report: Report,
  beside: Beside,
): Evaluated | undefined {
  const columns = wantedColumns(node, type, key, report);
  if (!columns) return undefined;
  const rows = node.$type === 'Table' ? writtenRows(node, columns, report) : csvRows(node, columns, report, beside);
  if (!rows) return undefined;
  if (rows.length < type.minimum) {
    const least = type.minimum === 1 ? 'one row' : `${type.minimum} rows`;
    report.add('input/too-few-rows', rangeOf(node), `${key} needs at least ${least}, not ${rows.length}`);
    return undefined;
  }
  return { is: 'value', value: rows };
}

/** The columns as written, each held against the vocabulary. */
function wantedColumns(node: Table | FileValue, type: TableType, key: string, report: Report): Wanted[] | undefined {
  const before = report.problems.length;
  const columns = node.columns.map(column => wantedColumn(column, type, report));
  const names = node.columns.map(c => c.name);
  for (const [i, name] of names.entries())
    if (names.indexOf(name) < i)
      report.add('input/unknown-column', rangeOf(node.columns[i]), `the column ${name} stands twice`);
  for (const [name, cell] of Object.entries(type.columns))
    // A misspelt column is told as that, and not as missing as well.
    if (typeof cell === 'string' && !names.includes(name) && !names.some(n => meant(n, type) === name)) {
      const span = node.columns.length
        ? { from: rangeOf(node.columns[0]).from, to: rangeOf(node.columns.at(-1)!).to }
        : rangeOf(node);
      report.add('input/missing-column', span, `${key} needs a column ${name} (${cellWords(cell)})`);
    }
  return report.problems.length > before ? undefined : (columns as Wanted[]);
}

/** The column that an unknown name was probably meant for. */
const meant = (name: string, { columns }: TableType): string | undefined =>
  Object.hasOwn(columns, name) ? undefined : nearest(name, Object.keys(columns));

function wantedColumn(column: Column, type: TableType, report: Report): Wanted | undefined {
  const entry = Object.hasOwn(type.columns, column.name) ? type.columns[column.name] : undefined;
  if (!entry) {
    const near = meant(column.name, type);
    const span = rangeOfProperty(column, 'name') ?? rangeOf(column);
    const known = Object.keys(type.columns).join(', ');
    report.add(
      'input/unknown-column',
      span,
      `there is no column ${column.name}; the columns are ${known}`,
      near ? { replace: [[`Write ${near}`, near]] } : {},
    );
    return undefined;
  }
  const optional = typeof entry !== 'string';
  const cell = optional ? entry.optional : entry;
  if (!isDimension(cell)) return { name: column.name, cell, optional, unit: undefined };
  const span = rangeOfProperty(column, 'unit') ?? rangeOf(column);
  const plain = dimensions[cell].si[0][0] === '';
  if (column.unit === undefined) {
    if (plain) return { name: column.name, cell, optional, unit: undefined };
    const symbol = dimensions[cell].si[0][0];
    report.add(
      'input/wrong-dimension',
      span,
      `the column ${column.name} is ${dimensions[cell].doc} and needs its unit, for example ${symbol}`,
      {
        replace: [[`Write ${column.name} ${symbol}`, `${column.name} ${symbol}`]],
      },
    );
    return undefined;
  }
  const unit = parseUnit(column.unit);
  if (!unit) {
    unknownUnit(column.unit, span, report, cell);
    return undefined;
  }
  if (!isOf(quantity(1, unit), cell)) {
    report.add(
      'input/wrong-dimension',
      span,
      `the column ${column.name} is ${dimensions[cell].doc}, and ${column.unit} is not`,
    );
    return undefined;
  }
  return { name: column.name, cell, optional, unit };
}

const isDimension = (cell: Cell): cell is Dimension => cell in dimensions;
const cellWords = (cell: Cell): string => (isDimension(cell) ? dimensions[cell].doc : `a ${cell}`);

function writtenRows(node: Table, columns: readonly Wanted[], report: Report): Record<string, unknown>[] | undefined {
  const rows: Record<string, unknown>[] = [];
  let faults = 0;
  for (const row of node.rows) {
    if (row.cells.length !== columns.length) {
      if (++faults <= TOLD)
        report.add(
          'input/ragged-row',
          rangeOf(row),
          `this row has ${row.cells.length} cells, and the table ${columns.length} columns`,
        );
      continue;
    }
    const out: Record<string, unknown> = {};
    for (const [i, column] of columns.entries()) {
      const v = cellValue(row.cells[i], column, report, faults < TOLD);
      if (v === BAD) faults++;
      else out[camel(column.name)] = v;
    }
    rows.push(out);
  }
  if (faults > TOLD)
    report.add('input/bad-cell', rangeOf(node), `${faults - TOLD} further rows of this table are faulty`);
  return faults ? undefined : rows;
}

const BAD = Symbol('bad cell');

function cellValue(cell: WrittenCell, column: Wanted, report: Report, tell: boolean): unknown {
  const bad = (message: string): typeof BAD => {
    if (tell) report.add('input/bad-cell', rangeOf(cell), message);
    return BAD;
  };
  if (isUnknownCell(cell)) return column.optional ? undefined : bad(`${column.name} must be known in every row`);
  const want = `${column.name} is ${cellWords(column.cell)}`;
  switch (column.cell) {
    case 'text':
      return isText(cell) ? cell.text : isNameValue(cell) ? cell.name : bad(want);
    case 'date':
      return isDay(cell) ? (ok(dayValue(cell.day, rangeOf(cell), report)) ?? BAD) : bad(want);
    case 'time':
      return isClock(cell) ? (ok(clockValue(cell.time, rangeOf(cell), report)) ?? BAD) : bad(want);
    case 'month': {
      const month = isNameValue(cell) ? MONTHS.indexOf(cell.name) + 1 : 0;
      return month || bad(`${want}: jan to dec`);
    }
    default: {
      if (!isQuantity(cell)) return bad(want);
      const reading = numberOf(cell.raw);
      if ('problem' in reading) return BAD;
      const number = cell.negative ? -reading.value : reading.value;
      if (column.cell === 'count') return Number.isInteger(number) ? number : bad(want);
      return quantity(number, column.unit).value;
    }
  }
}

const ok = (e: Evaluated | undefined): unknown => (e?.is === 'value' ? e.value : undefined);

/** Rows of a csv beside the house: our column, the header in the file, the unit. */
function csvRows(
  node: FileValue,
  columns: readonly Wanted[],
  report: Report,
  beside: Beside,
): Record<string, unknown>[] | undefined {
  if (!beside.stands(node, report)) return undefined;
  const text = beside.text(node);
  const span: Span = rangeOfProperty(node, 'path') ?? rangeOf(node);
  if (text === undefined) return undefined;
  const csv = readCsv(text);
  if ('problem' in csv) {
    report.add('input/bad-csv', span, `${node.path}: ${csv.problem}`);
    return undefined;
  }
  const before = report.problems.length;
  const indices = node.columns.map(column => {
    const header = column.header ?? column.name;
    const index = csv.header.indexOf(header);
    if (index < 0) {
      const near = nearest(header, csv.header);
      const known = csv.header
        .slice(0, 12)
        .map(h => `"${h}"`)
        .join(', ');
      report.add(
        'input/unknown-column',
        rangeOfProperty(column, 'header') ?? rangeOf(column),
        `${node.path} has no column "${header}"; it has ${known}`,
        near ? { replace: [[`Write "${near}"`, `"${near}"`]] } : {},
      );
    }
    return index;
  });
  if (report.problems.length > before) return undefined;
  const rows: Record<string, unknown>[] = [];
  let faults = 0;
  for (const { line, cells } of csv.rows) {
    const out: Record<string, unknown> = {};
    for (const [i, column] of columns.entries()) {
      const v = csvCell(cells[indices[i]], column);
      if (v === BAD) {
        if (++faults <= TOLD)
          report.add(
            'input/bad-csv',
            span,
            `${node.path}, line ${line}: "${(cells[indices[i]] ?? '').slice(0, 40)}" is no ${column.name} (${cellWords(column.cell)})`,
          );
      } else out[camel(column.name)] = v;
    }
    rows.push(out);
  }
  if (faults > TOLD) report.add('input/bad-csv', span, `${node.path}: ${faults - TOLD} further cells are faulty`);
  return faults ? undefined : rows;
}

function csvCell(raw: string | undefined, column: Wanted): unknown {
  const text = raw?.trim();
  if (!text || text === '-') return column.optional ? undefined : BAD;
  switch (column.cell) {
    case 'text':
      return text;
    case 'date':
      return /^\d{4}-\d{2}-\d{2}$/.test(text) ? text : BAD;
    case 'time': {
      const m = /^(\d{1,2}):(\d{2})$/.exec(text);
      return m && Number(m[1]) <= 24 && Number(m[2]) < 60 ? Number(m[1]) * 3600 + Number(m[2]) * 60 : BAD;
    }
    case 'month':
      return MONTHS.indexOf(text.toLowerCase()) + 1 || BAD;
    default: {
      if (!/^[-+−]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/.test(text)) return BAD;
      const number = Number(text.replace('−', '-'));
      if (!Number.isFinite(number) || (column.cell === 'count' && !Number.isInteger(number))) return BAD;
      return column.cell === 'count' ? number : quantity(number, column.unit).value;
    }
  }
}
