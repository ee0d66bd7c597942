import type { Block } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import { bufferTemperature } from './buffer-space.js';
import { named } from './named.js';

interface Condition {
  readonly indoor: Si<'temperature'>;
  readonly outdoor: Si<'temperature'>;
}

/**
 * Temperature of an unheated space at a design condition: as stated; from the balance of its losses to the outdoors with the
 * surfaces it shares with the house; by its reduction factor; else that of the outdoors, the unfavourable case.
 */
export function spaceTemperature(
  space: Block<'buffer-space'>,
  fromHouse: Si<'conductance'>,
  { indoor, outdoor }: Condition,
  sheet?: Sheet,
): Si<'temperature'> {
  const label = `Temperature of ${named(space)}`;
  if (space.temperature !== undefined) {
    const { temperature } = space;
    sheet?.(() => ({ label: `${label}, as stated`, value: temperature, dimension: 'temperature' }));
    return temperature;
  }
  if (space.lossOutdoors !== undefined) {
    const balanced = bufferTemperature(
      [
        { label: 'house', conductance: fromHouse, temperature: indoor },
        { label: 'outdoors', conductance: space.lossOutdoors, temperature: outdoor },
      ],
      0,
      sheet,
    );
    return balanced ?? outdoor;
  }
  if (space.reductionFactor !== undefined) {
    const b = space.reductionFactor;
    const temperature = indoor - b * (indoor - outdoor);
    sheet?.(() => ({
      label,
      formula: 't_i - b * (t_i - t_o)',
      inputs: { t_i: [indoor, 'temperature'], b: [b, 'ratio'], t_o: [outdoor, 'temperature'] },
      value: temperature,
      dimension: 'temperature',
      source: 'EN 12831-1:2017, temperature adjustment of unheated spaces',
    }));
    return temperature;
  }
  sheet?.(() => ({
    label: `${label}, taken as that of the outdoors`,
    value: outdoor,
    dimension: 'temperature',
    note: 'Neither temperature, loss-outdoors nor reduction-factor is written: assumed, the unfavourable case.',
  }));
  return outdoor;
}
