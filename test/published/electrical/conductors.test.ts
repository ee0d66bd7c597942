import { describe, expect, test } from 'vitest';
import {
  conductorSizes,
  edition,
  resistancePerMetre,
  tableAmpacity,
  type ConductorSize,
  type Metal,
} from '../../../language/codes/index.js';
import { serviceConductor } from '../../../language/engine/electrical/conductor.js';
import { longestRun, voltageDrop } from '../../../language/engine/electrical/voltage-drop.js';
import { check } from './checks.js';

const FOOT = 0.3048;
/** `1/0` of the trade is `awg-1-0`; from 250 on the numbers are thousands of circular mils. */
const named = (size: string) =>
  (Number(size) >= 250 ? `kcmil-${size}` : `awg-${size.replace('/', '-')}`) as ConductorSize;
const METALS: Record<string, Metal> = { Cu: 'copper', Al: 'aluminium' };

describe('tables of conductors', () => {
  const ampacity = check('NEC-T310.16');
  test(ampacity.title, () => {
    const columns = ampacity.inputs.columns as string[];
    const rows = ampacity.expected as Record<string, (number | null)[]>;
    expect(Object.keys(rows).length).toBe(13);
    for (const [size, row] of Object.entries(rows))
      columns.forEach((column, i) => {
        const metal = METALS[column.slice(0, 2)];
        expect(tableAmpacity(named(size), metal, Number(column.slice(2)) as 60) ?? null).toBe(row[i]);
      });
  });

  const canadian = check('CEC-T2-T4-60C');
  test(canadian.title, () => {
    for (const [metal, rows] of Object.entries(canadian.expected as Record<string, Record<string, number>>))
      for (const [size, amperes] of Object.entries(rows))
        expect(tableAmpacity(named(size), METALS[metal], 60)).toBe(amperes);
  });

  const dwellings = check('NEC-T310.12');
  test(dwellings.title, () => {
    const nec = edition('nec-2023');
    for (const rating of dwellings.inputs.ratings_A as number[])
      for (const [short, metal] of Object.entries(METALS)) {
        const size = serviceConductor(rating, metal, nec)!;
        expect(size).toBe(named(dwellings.expected.table[rating][short]));
        const least = nec.conductors.dwelling!.share * rating;
        expect(least).toBeCloseTo(dwellings.expected.min_ampacity_A[rating], 9);
        expect(tableAmpacity(size, metal, 75)! >= least).toBe(dwellings.expected.table_meets_83pct_rule[rating][short]);
      }
  });

  const resistance = check('NEC-T8-resistance');
  test(resistance.title, () => {
    for (const [size, row] of Object.entries(resistance.expected as Record<string, Record<string, number>>)) {
      expect(resistancePerMetre(named(size), 'copper') * 1000 * FOOT).toBeCloseTo(row.Cu_ohm_per_kft, 9);
      expect(resistancePerMetre(named(size), 'aluminium') * 1000 * FOOT).toBeCloseTo(row.Al_ohm_per_kft, 9);
    }
  });

  test('ambient factors against the equation that the table is made with, NEC 310.15(B): √((Tc − Ta)/(Tc − 30))', () => {
    const { bands } = edition('nec-2023').conductors.ambient;
    for (const { upTo, factors } of bands)
      for (const column of [60, 75, 90] as const) {
        // The table prints each band of five degrees at its warm end, and the first at 10 °C; 26 to 30 °C is the base.
        const exact = upTo < column ? Math.sqrt((column - upTo) / (column - 30)) : 0;
        expect(Math.abs(factors[column] - exact)).toBeLessThan(0.006);
      }
  });

  test('thicker conductors carry more and resist less', () => {
    for (const metal of Object.values(METALS))
      conductorSizes.slice(2).forEach((size, i) => {
        const thinner = conductorSizes[i + 1];
        expect(tableAmpacity(size, metal, 75)!).toBeGreaterThan(tableAmpacity(thinner, metal, 75) ?? 0);
        expect(resistancePerMetre(size, metal)).toBeLessThan(resistancePerMetre(thinner, metal));
      });
  });
});

describe('voltage drop', () => {
  const charger = check('NEC-VD-EV');
  test(charger.title, () => {
    const { inputs, expected } = charger;
    const run = { size: 'awg-8', metal: 'copper', current: inputs.I_A, voltage: inputs.V } as const;
    const drop = voltageDrop({ ...run, length: inputs.L_ft_one_way * FOOT }, edition('nec-2023'));
    expect(drop * inputs.V).toBeCloseTo(expected.VD_V, 3);
    expect(drop * 100).toBeCloseTo(expected.pct, 3);
    expect(longestRun(run, edition('nec-2023').voltageDrop.branch) / FOOT).toBeCloseTo(expected.max_L_ft_at_3pct, 1);
  });

  const canadian = check('CEC-8-102');
  test(canadian.title, () => {
    const { inputs, expected } = canadian;
    const { voltageDrop: rule } = edition('cec-2021');
    const current = rule.shareOfBreaker * inputs.ocpd_A;
    expect(current).toBe(expected.I_A);
    expect(rule.branch * inputs.V).toBeCloseTo(expected.max_VD_V, 9);
    const run = { size: 'awg-14', metal: 'copper', current, voltage: inputs.V } as const;
    expect(longestRun(run, rule.branch)).toBeCloseTo(expected.max_L_m, 1);
    expect(rule.standing).toBe('mandatory');
  });
});
