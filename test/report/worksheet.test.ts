import { describe, expect, test } from 'vitest';
import type { Step } from '../../language/engine/worksheet.js';
import { withNumbers, worksheetMarkdown, worksheetText } from '../../server/report/worksheet.js';

const wall: Step = {
  label: 'Wall *south*',
  formula: 'U * A * (t_i - t_o)',
  inputs: {
    U: [0.35, 'u-value'],
    A: [34.25, 'area'],
    t_i: [22, 'temperature'],
    t_o: [-34, 'temperature'],
  },
  value: 0.35 * 34.25 * 56,
  dimension: 'heat-flow',
  source: 'ISO 6946',
};
const total: Step = { label: 'Design load', value: 12000, dimension: 'heat-flow', role: 'total' };

describe('a worksheet', () => {
  test('puts the numbers in with their units, negative ones in brackets', () => {
    expect(withNumbers(wall.formula!, wall.inputs)).toBe('0.35 W/m2K × 34.25 m2 × (22 °C - (−34 °C))');
  });

  test('leaves functions and unknown words alone', () => {
    expect(withNumbers('max(q, sqrt(2))', { q: [1500, 'power'] })).toBe('max(1.5 kW, sqrt(2))');
  });

  test('in Markdown escapes what would be markup and shows the source', () => {
    const text = worksheetMarkdown([wall, total]);
    expect(text).toContain('- Wall \\*south\\*: `U * A * (t_i - t_o)` = 0.35 W/m2K × 34.25 m2');
    expect(text).toContain('= 671 W');
    expect(text).toContain('*ISO 6946*');
    expect(text).toContain('- **Design load**: **12 kW**');
  });

  test('in inch-pound units gives the value in both, since the formula holds in SI', () => {
    expect(worksheetMarkdown([total], { system: 'ip' })).toContain('40946 BTU/h (12 kW)');
    expect(worksheetText([wall], { system: 'ip' })).toContain('0.35 W/m2K × 34.25 m2');
  });

  test('as plain text never goes beyond its width unless a word does', () => {
    const long = { ...wall, note: 'one two three four five six seven eight nine ten eleven twelve thirteen fourteen' };
    for (const width of [40, 60, 80])
      for (const line of worksheetText([long, total], { width }).split('\n'))
        expect(line.length, line).toBeLessThanOrEqual(width);
    expect(worksheetText([total], { width: 40 })).toBe('Design load ...................... 12 kW');
  });

  test('writes the currency of the house in the place of the sign', () => {
    const step: Step = { label: 'Cost', value: 250, dimension: 'money' };
    expect(worksheetText([step], { currency: 'CAD' })).toMatch(/250 CAD$/);
  });
});
