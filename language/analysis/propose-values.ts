import { dimensions, isCurrency, isOf, parseUnit, quantity, type Dimension } from '../units/index.js';
import type { Property } from '../vocabulary/index.js';
import { defaultOf, describeProperty } from './describe.js';
import { inSnippet, type Proposal } from './proposal.js';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const COMMON_CURRENCIES = ['CAD', 'USD', 'EUR', 'GBP', 'AUD', 'NZD'].filter(isCurrency);

const choice = (label: string, rank = 100, detail?: string): Proposal => ({
  label,
  kind: 'choice',
  insert: label,
  rank,
  ...(detail ? { detail } : {}),
});

/** What may be written as a value, names apart: choices, typical values, the frame of a table or a file. */
export function valuesFor(key: string, property: Property, today: string): Proposal[] {
  const standing = defaultOf(property);
  const detail = (word: string) => (word === standing ? 'when left out' : undefined);
  switch (property.is) {
    case 'choice':
    case 'choices':
      return property.of.map((word, i) => choice(word, 100 + i / 1000, detail(word)));
    case 'statement':
      return [
        ...property.of.filter(w => !property.citing.includes(w)).map((w, i) => choice(w, 100 + i / 1000, detail(w))),
        ...property.citing.map(w => ({
          ...choice(w, 150),
          insert: `${w} ""`,
          snippet: `${w} "\${1}"`,
        })),
      ];
    case 'flag':
      return ['yes', 'no'].map((word, i) => choice(word, 100 + i, detail(word)));
    case 'currency':
      return COMMON_CURRENCIES.map((word, i) => choice(word, 100 + i / 1000));
    case 'months':
      return MONTHS.map((word, i) => choice(word, 100 + i / 1000));
    case 'month-day':
      return MONTHS.map((word, i) => choice(`${word}-01`, 100 + i / 1000));
    case 'reference':
      return property.or.map(word => choice(word, 150, detail(word)));
    case 'file':
      return property.formats.map(word => ({
        ...choice(word, 150, 'a file beside this one'),
        insert: `${word} ""`,
        snippet: `${word} "\${1}"`,
      }));
    case 'table':
      return [tableFrame(key, property)];
    case 'date':
      return [value(today, 'today')];
    case 'text':
      return (property.typical ?? []).map(t => value(t, 'typical'));
    default: {
      const typical = (property.typical ?? []).filter(t => t !== standing).map(t => value(t, 'typical'));
      return [
        ...(standing ? [value(standing, `when left out${property.source ? `, ${property.source}` : ''}`)] : []),
        ...typical,
      ];
    }
  }
}

const value = (text: string, detail: string): Proposal => ({
  label: text,
  kind: 'value',
  insert: text,
  detail,
  rank: 100,
});

/** The head of a table as it would be written: its columns with their usual units. */
export const headsOf = ({ columns }: Property & { is: 'table' }): string =>
  Object.entries(columns)
    .map(([name, cell]) => {
      const unit = unitsOf(dimensionOf(typeof cell === 'object' ? cell.optional : cell), undefined)[0];
      return unit === undefined ? name : `${name} ${unit}`;
    })
    .join(', ');

function tableFrame(key: string, property: Property & { is: 'table' }): Proposal {
  const heads = headsOf(property);
  return {
    label: 'table',
    kind: 'value',
    detail: `(${heads})`,
    doc: describeProperty(key, property),
    insert: `table (${heads}) [ ]`,
    snippet: `table (${inSnippet(heads)}) [\n\t$0\n]`,
    rank: 100,
  };
}

/** Columns that a table does not name yet. */
export function columnsFor(property: Property & { is: 'table' }, given: readonly string[]): Proposal[] {
  return Object.entries(property.columns)
    .filter(([name]) => !given.includes(name))
    .map(([name, cell], i) => {
      const isOptional = typeof cell === 'object';
      const unit = unitsOf(dimensionOf(isOptional ? cell.optional : cell), undefined)[0];
      return {
        label: name,
        kind: 'property' as const,
        detail: isOptional ? 'optional' : 'required',
        insert: unit === undefined ? name : `${name} ${unit}`,
        rank: (isOptional ? 200 : 100) + i / 1000,
      };
    });
}

/** Units of a column's name. */
export function columnUnits(
  property: Property & { is: 'table' },
  column: string,
  currency: string | undefined,
): Proposal[] {
  const cell = property.columns[column];
  if (cell === undefined) return [];
  return unitProposals(dimensionOf(typeof cell === 'object' ? cell.optional : cell), currency);
}

/** What a cell of a column may hold, where that is a word. */
export function cellsFor(property: Property & { is: 'table' }, column: string): Proposal[] {
  const cell = property.columns[column];
  const is = typeof cell === 'object' ? cell.optional : cell;
  return is === 'month' ? MONTHS.map((word, i) => choice(word, 100 + i / 1000)) : [];
}

const dimensionOf = (cell: string): Dimension | undefined => (cell in dimensions ? (cell as Dimension) : undefined);

/** Units that people write besides those in which values are printed. */
const OTHER_UNITS = [
  ...[
    'mm',
    'cm',
    'm',
    'in',
    'ft',
    'm2',
    'cm2',
    'ft2',
    'in2',
    'L',
    'm3',
    'gal',
    'ft3',
    'kg',
    'lb',
    's',
    'min',
    'h',
    'd',
  ],
  ...[
    'week',
    'month',
    'yr',
    '°C',
    '°F',
    'degC',
    'degF',
    'K',
    'W',
    'kW',
    'BTU/h',
    'MBH',
    'ton',
    'kWh',
    'MWh',
    'GJ',
    'MJ',
  ],
  ...[
    'therm',
    'RSI',
    'R',
    'W/m2K',
    'BTU/(h·ft2·°F)',
    'W/mK',
    'Pa',
    'kPa',
    'inWC',
    'L/s',
    'cfm',
    'm3/h',
    'L/min',
    'gpm',
  ],
  ...[
    'L/d',
    'gal/d',
    'A',
    'V',
    'deg',
    '%',
    'ACH',
    'kWh/d',
    'kWh/yr',
    'GJ/yr',
    'dB',
    'm/s',
    'mph',
    'fpm',
    '¢/kWh',
    '$/kWh',
  ],
  ...['$/GJ', '$/therm', '$/month', '$/d', '$/yr', '$', '$/kW', 'g/kWh', 'kg/yr', '%/yr', '%/K'],
];

/** Units of a dimension, the usual ones first; money in the currency of the house. */
function unitsOf(dimension: Dimension | undefined, currency: string | undefined): string[] {
  if (!dimension) return [];
  const usual = [...dimensions[dimension].si, ...dimensions[dimension].ip].map(([symbol]) => symbol);
  const fits = (symbol: string) => {
    const unit = parseUnit(symbol);
    return unit !== undefined && isOf(quantity(1, unit), dimension);
  };
  const all = [...new Set([...usual, ...OTHER_UNITS])].filter(
    symbol => symbol && !symbol.includes('Δ') && fits(symbol),
  );
  return all.map(symbol => symbol.replace('$', currency ?? 'CAD'));
}

export const unitProposals = (dimension: Dimension | undefined, currency: string | undefined): Proposal[] =>
  unitsOf(dimension, currency).map((label, i) => ({
    label,
    kind: 'unit',
    insert: label,
    rank: 100 + i / 1000,
    ...(dimension ? { detail: dimensions[dimension].doc } : {}),
  }));
