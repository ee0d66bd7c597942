import type { House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import { storeysAboveGrade } from '../envelope/volume.js';
import type { Sheet } from '../worksheet.js';
import { ductLossFactor } from './duct-loss.js';

/**
 * Part of the load that the ducts of the house lose: as stated; none inside the heated space; else the table's column of
 * 11 % leakage and 0.7 m²K/W, an assumption that the sheet names. A garage is read as an attic.
 */
export function houseDuctLoss(house: House, sheet?: Sheet): Si<'ratio'> {
  const { ducts, heatPump } = house.heating;
  if (!ducts) return 0;
  if (ducts.lossFactor !== undefined) {
    const { lossFactor } = ducts;
    sheet?.(() => ({ label: 'Lost from the ducts, as stated', value: lossFactor, dimension: 'ratio' }));
    return lossFactor;
  }
  if (ducts.location === 'conditioned') return 0;
  // A basement that belongs to the heated storeys keeps what its ducts lose.
  const inside = house.storey.some(s => s.level === 'below-grade' && s.heated);
  if (ducts.location === 'basement' && inside) return 0;
  const factor = ductLossFactor({
    location: ducts.location === 'garage' ? 'attic' : ducts.location,
    storeys: storeysAboveGrade(house),
    heat: heatPump.length > 0 ? 'heat-pump' : 'furnace',
    leakage: 0.11,
    insulation: 0.7,
  });
  sheet?.(() => ({
    label: `Lost from ducts in the ${ducts.location.replace('-', ' ')}`,
    value: factor,
    dimension: 'ratio',
    source: 'ASHRAE Fundamentals 2021 ch. 17 Table 6',
    note: 'Assumed: 11 % leakage and insulation of 0.7 m²K/W. Write loss-factor to replace it.',
  }));
  return factor;
}
