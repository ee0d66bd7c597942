import { cite, type HvacPart, type HvacSelection, type OptionalDwelling } from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { listLoads, shareOf, sumOf, tiered } from './amount.js';
import { ofKind, totalPower, type Demand, type Dwelling, type Load, type LoadKind } from './loads.js';
import { lightAndOutlets, vehicleLoad } from './unit-loads.js';

/**
 * Load of one dwelling by the optional American method: a pool of light, outlets and nameplates, most of it at a share,
 * and the largest selection of heating and cooling. VA. For a dwelling served by one three-wire set of 100 A or more.
 */
export function optionalDwelling(dwelling: Dwelling, rule: OptionalDwelling, sheet?: Sheet): Demand {
  const { loads } = dwelling;
  const nameplates = ofKind(loads, 'range', 'cooking-unit', 'dryer', 'water-heater', 'tankless', 'spa', 'appliance');
  const general = lightAndOutlets(dwelling, rule.units, sheet) + totalPower(nameplates);
  listLoads(nameplates, rule.nameplates, sheet);
  const vehicles = ofKind(loads, 'vehicle').reduce((sum, each) => sum + vehicleLoad(each, rule.units, sheet), 0);
  const pooled = rule.vehicle.reading === 'in-pool' ? vehicles : 0;
  const pool = tiered({ label: 'General loads', load: general + pooled, ...rule.pool }, sheet);
  const apart =
    vehicles > pooled
      ? shareOf({ label: 'Vehicle charging, beside the general loads', load: vehicles, ...rule.vehicle }, sheet)
      : 0;
  const parts = { pool, vehicles: apart, climate: heatingOrCooling(loads, rule, sheet) };
  return { power: sumOf('Calculated load', parts, cite(rule.total), sheet), continuous: vehicles };
}

/** Loads that stand for a part of a selection. Where a heat pump runs, all other electric heat supplements it. */
function partsOf(loads: readonly Load[]): Readonly<Record<HvacPart, readonly Load[]>> {
  const heat: readonly LoadKind[] = ['supplementary', 'room-heat', 'central-heat'];
  const heatPumps = ofKind(loads, 'heat-pump');
  const heaters = ofKind(loads, ...heat);
  const supplements = heatPumps.length > 0;
  return {
    cooling: ofKind(loads, 'cooling'),
    'heat-pump': heatPumps,
    supplementary: supplements ? heaters : [],
    'central-or-room': supplements ? [] : heaters,
    storage: ofKind(loads, 'storage-heat'),
    blower: ofKind(loads, 'blower'),
  };
}

/** Heat pumps that also cool are in the first three selections alike, so a heat pump stands for its own cooling. */
function heatingOrCooling(loads: readonly Load[], { hvac }: OptionalDwelling, sheet?: Sheet): number {
  const parts = partsOf(loads);
  const sum = (names: readonly HvacPart[]) => names.reduce((total, name) => total + totalPower(parts[name]), 0);
  const heaters = parts['central-or-room'].reduce((count, load) => count + (load.units ?? 1), 0);
  const candidates = hvac.selections
    .filter(({ heaters: range }) => !range || (heaters >= range.from && heaters < range.below))
    .map(selection => ({
      selection,
      inFull: sum(selection.inFull),
      reduced: sum(selection.reduced),
      value: sum(selection.inFull) + selection.factor * sum(selection.reduced),
    }))
    .filter(({ selection, value }) => value > 0 && stands(selection, parts));
  const largest = candidates.reduce<(typeof candidates)[number] | undefined>(
    (best, next) => (best && best.value >= next.value ? best : next),
    undefined,
  );
  if (!largest) return 0;
  listLoads(
    [...largest.selection.inFull, ...largest.selection.reduced].flatMap(name => parts[name]),
    hvac.clause,
    sheet,
  );
  sheet?.(() => ({
    label: largest.selection.name,
    formula: 'inFull + factor * reduced',
    inputs: {
      inFull: [largest.inFull, 'power'],
      factor: [largest.selection.factor, 'ratio'],
      reduced: [largest.reduced, 'power'],
    },
    value: largest.value,
    dimension: 'power',
    source: cite(largest.selection.clause),
    note: candidates.length > 1 ? `the largest of ${candidates.length} selections` : undefined,
    role: 'item',
  }));
  return largest.value;
}

/** A selection stands when something other than the blower is in it; a blower alone counts under the first. */
const stands = (selection: HvacSelection, parts: Readonly<Record<HvacPart, readonly Load[]>>): boolean =>
  selection.inFull.includes('cooling') ||
  [...selection.inFull, ...selection.reduced].some(name => name !== 'blower' && parts[name].length > 0);
