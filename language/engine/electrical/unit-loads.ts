import { cite, type UnitLoads } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import type { Dwelling, Load } from './loads.js';

/** VA for light and outlets by floor area, and for small-appliance and laundry circuits. */
export function lightAndOutlets(dwelling: Dwelling, rule: UnitLoads, sheet?: Sheet): number {
  const { lighting } = rule;
  const light = lighting.perArea * dwelling.livingArea;
  sheet?.(() => ({
    label: 'Light and outlets',
    formula: 'unitLoad * area',
    inputs: { unitLoad: [lighting.perArea, 'irradiance'], area: [dwelling.livingArea, 'area'] },
    value: light,
    dimension: 'power',
    source: cite(lighting.clause),
    note: `${lighting.perSquareFoot} VA/ft2`,
    role: 'item',
  }));
  return (
    light +
    circuits('Small-appliance circuits', dwelling.smallApplianceCircuits, rule.smallAppliance, sheet) +
    circuits('Laundry circuits', dwelling.laundryCircuits, rule.laundry, sheet)
  );
}

function circuits(label: string, stated: number, rule: UnitLoads['laundry'], sheet?: Sheet): number {
  const count = Math.max(stated, rule.atLeast);
  sheet?.(() => ({
    label,
    formula: 'count * each',
    inputs: { count: [count, 'number'], each: [rule.each, 'power'] },
    value: count * rule.each,
    dimension: 'power',
    source: cite(rule.clause),
    role: 'item',
  }));
  return count * rule.each;
}

/** VA of one charger: its rating or restricted setting, or the least that the edition counts. */
export function vehicleLoad(charger: Pick<Load, 'label' | 'power'>, { vehicle }: UnitLoads, sheet?: Sheet): number {
  const value = Math.max(charger.power, vehicle.atLeast);
  sheet?.(() => ({
    label: charger.label,
    formula: 'max(rating, least)',
    inputs: { rating: [charger.power, 'power'], least: [vehicle.atLeast, 'power'] },
    value,
    dimension: 'power',
    source: cite(vehicle.clause),
    note: vehicle.clause.note,
    role: 'item',
  }));
  return value;
}
