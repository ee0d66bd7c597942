import type { Si } from '../../units/index.js';
import type { Input, Sheet } from '../worksheet.js';

/** One side of an unheated space: a conductance in W/K (U·A, or air times its volumetric heat) to a temperature. */
export interface BufferSide {
  readonly label: string;
  readonly conductance: Si<'conductance'>;
  readonly temperature: Si<'temperature'>;
}

/**
 * Temperature of an unheated space (garage, attic, crawl space) in balance between its sides and any heat set free in it.
 * ASHRAE Fundamentals 2021 ch. 17, buffer-space temperature. Undefined for a space without sides.
 */
export function bufferTemperature(
  sides: readonly BufferSide[],
  gain: Si<'heat-flow'> = 0,
  sheet?: Sheet,
): Si<'temperature'> | undefined {
  const total = sides.reduce((sum, s) => sum + s.conductance, 0);
  if (!(total > 0)) return undefined;
  const temperature = (sides.reduce((sum, s) => sum + s.conductance * s.temperature, 0) + gain) / total;
  sheet?.(() => ({
    label: 'Temperature of the unheated space',
    formula: `(${sides.map((_, i) => `H_${i + 1}*t_${i + 1}`).join(' + ')} + q) / (${sides.map((_, i) => `H_${i + 1}`).join(' + ')})`,
    inputs: Object.fromEntries<Input>([
      ...sides.flatMap((s, i): [string, Input][] => [
        [`H_${i + 1}`, [s.conductance, 'conductance']],
        [`t_${i + 1}`, [s.temperature, 'temperature']],
      ]),
      ['q', [gain, 'heat-flow']],
    ]),
    value: temperature,
    dimension: 'temperature',
    source: 'ASHRAE Fundamentals 2021 ch. 17, buffer spaces',
    note: sides.map(s => s.label).join(', '),
  }));
  return temperature;
}
