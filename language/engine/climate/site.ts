import { Withheld, type House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import { pressureAtElevation } from './atmosphere.js';

/** Barometric pressure at the house, from its elevation. */
export function sitePressure(house: House, sheet?: Sheet): Si<'pressure'> {
  return pressureAtElevation(house.site.elevation, sheet);
}

/**
 * Annual mean temperature of the outdoor air: as the site says; else the mean of the months of a climate block; else an
 * estimate from latitude and elevation, 45 °C less 0.83 K for each degree and 1 K for each km above 300 m. The estimate is ours,
 * fitted by memory to inland stations of North America (within about 2 K there, and too cold, thus safe, at the coasts).
 */
export function annualMeanTemperature(house: House, sheet?: Sheet): Si<'temperature'> {
  const { meanTemperature, weather, latitude, elevation } = house.site;
  if (meanTemperature !== undefined) {
    sheet?.(() => ({
      label: 'Annual mean temperature, as stated for the site',
      value: meanTemperature,
      dimension: 'temperature',
    }));
    return meanTemperature;
  }
  const climate = weather && 'is' in weather ? weather : house.climate.length === 1 ? house.climate[0] : undefined;
  if (climate) {
    const mean = climate.months.reduce((sum, m) => sum + m.mean, 0) / climate.months.length;
    sheet?.(() => ({
      label: `Annual mean temperature, mean of the months of ${climate.name}`,
      value: mean,
      dimension: 'temperature',
    }));
    return mean;
  }
  if (latitude === undefined)
    throw new Withheld('the site says neither mean-temperature nor latitude, which the ground temperature rests on');
  const degrees = (Math.abs(latitude) * 180) / Math.PI;
  const mean = 45 - 0.83 * degrees - 0.001 * Math.max(0, elevation - 300);
  sheet?.(() => ({
    label: 'Annual mean temperature, estimated from latitude and elevation',
    formula: '45 - 0.83 * L * 180 / pi - 0.001 * max(0, z - 300)',
    inputs: { L: [Math.abs(latitude), 'angle'], z: [elevation, 'length'] },
    value: mean,
    dimension: 'temperature',
    source: 'common practice, an estimate of ours for inland North America: assumed',
    note: 'Write mean-temperature in the site to replace the estimate',
  }));
  return mean;
}
