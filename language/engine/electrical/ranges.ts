import { cite, type StandardDwelling } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';

/**
 * Demand of household cooking appliances, W, by the table for their number and size. Small ones count at a share of their
 * sum; those above 8.75 kW together at the figure of column C, which grows by 5 % for each kilowatt, or major fraction of
 * one, by which their mean exceeds 12 kW (smaller ones taken as 12 kW). Up to 27 kW each and 40 in number.
 */
export function rangesDemand(ratings: readonly number[], table: StandardDwelling['range'], sheet?: Sheet): number {
  const small = ratings.filter(rating => rating < table.smallUnder);
  const medium = ratings.filter(rating => rating >= table.smallUnder && rating <= table.mediumUpTo);
  const large = ratings.filter(rating => rating > table.mediumUpTo);
  return (
    share('Cooking appliances under 3.5 kW', small, table.columnA, table, sheet) +
    share('Cooking appliances of 3.5 to 8.75 kW', medium, table.columnB, table, sheet) +
    largeRanges(large, table, sheet)
  );
}

function share(
  label: string,
  ratings: readonly number[],
  column: readonly number[],
  table: StandardDwelling['range'],
  sheet?: Sheet,
): number {
  if (ratings.length === 0) return 0;
  const load = ratings.reduce((sum, each) => sum + each, 0);
  const factor = column[Math.min(ratings.length, column.length) - 1];
  sheet?.(() => ({
    label,
    formula: 'factor * load',
    inputs: { factor: [factor, 'ratio'], load: [load, 'power'] },
    value: factor * load,
    dimension: 'power',
    source: cite(table.clause),
    role: 'item',
  }));
  return factor * load;
}

function largeRanges(ratings: readonly number[], table: StandardDwelling['range'], sheet?: Sheet): number {
  if (ratings.length === 0) return 0;
  const KILOWATT = 1000;
  const base = table.columnC[Math.min(ratings.length, table.columnC.length) - 1];
  const mean = ratings.reduce((sum, each) => sum + Math.max(each, table.largeUpTo), 0) / ratings.length;
  const kilowatts = Math.floor((mean - table.largeUpTo) / KILOWATT + 0.5);
  const value = base * (1 + table.perKilowatt * kilowatts);
  sheet?.(() => ({
    label: ratings.length === 1 ? 'Range' : `${ratings.length} ranges`,
    formula: 'base * (1 + perKilowatt * floor((mean - limit) / kilowatt + 0.5))',
    inputs: {
      base: [base, 'power'],
      perKilowatt: [table.perKilowatt, 'ratio'],
      mean: [mean, 'power'],
      limit: [table.largeUpTo, 'power'],
      kilowatt: [KILOWATT, 'power'],
    },
    value,
    dimension: 'power',
    source: cite(table.clause),
    role: 'item',
  }));
  return value;
}
