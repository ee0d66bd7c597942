import { describe, expect, test } from 'vitest';
import { isProperty, numberOf, type Block, type Row } from '../../language/grammar/index.js';
import { declared, written } from './files.js';

const heatPumps = declared.filter(b => b.kind === 'heat-pump').map(b => ({ name: b.name!, block: b }));

/** Least circuit ampacity and largest breaker of a compressor circuit: NEC 440.32, 440.33 and 440.22 (figures seen quoted). */
describe.each(heatPumps)('$name', ({ block }) => {
  const of = (key: string) => written(block, key)![0];

  test('its nameplate amperes agree with one another', () => {
    const pan = written(block, 'base-pan-heater')?.[0] ?? 0;
    const least = 1.25 * of('rla') + of('fan-fla') + pan / 240;
    expect(of('mca')).toBeGreaterThanOrEqual(least - 0.05);
    expect(of('mca')).toBeLessThan(least + 1);
    expect(of('mocp')).toBeGreaterThanOrEqual(of('mca'));
    expect(of('mocp')).toBeLessThanOrEqual(2.25 * of('rla') + of('fan-fla'));
  });

  test('its highest input is what compressor and fan draw at 240 V', () => {
    const running = (240 * (of('rla') + of('fan-fla'))) / 1000;
    expect(of('rated-input')).toBeLessThanOrEqual(running);
    expect(of('rated-input')).toBeGreaterThan(0.75 * running);
  });

  test('its table falls with the cold and never beats physics', () => {
    const rows = table(block, 'performance');
    expect(rows.length).toBeGreaterThanOrEqual(4);
    rows.forEach(([outdoor, output, input], i) => {
      expect(input).toBeLessThanOrEqual(of('rated-input'));
      expect(output / input).toBeGreaterThan(1);
      // Carnot between outdoor air and supply air of 40 °C.
      expect(output / input).toBeLessThan(313 / (40 - outdoor));
      if (i > 0) expect([outdoor, output].map((v, k) => v < rows[i - 1][k])).toEqual([true, true]);
    });
  });
});

function table(block: Block, key: string): readonly (readonly [number, number, number])[] {
  const value = block.members.filter(isProperty).find(p => p.key === key)?.value;
  if (value?.$type !== 'Table') throw new Error(`${block.name} has no table ${key}`);
  return value.rows.map(row => numbers(row) as [number, number, number]);
}

const numbers = (row: Row) =>
  row.cells.map(cell => {
    const reading = cell.$type === 'Quantity' ? numberOf(cell.raw) : undefined;
    if (!reading || !('value' in reading)) throw new Error('a cell of the table is not a number');
    return cell.$type === 'Quantity' && cell.negative ? -reading.value : reading.value;
  });
