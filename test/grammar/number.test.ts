import { describe, expect, test } from 'vitest';
import { isProperty, isQuantity, numberOf, parse } from '../../language/grammar/index.js';

/** The value of `x: …` and the problems that were told on the way. */
function value(text: string) {
  const { file, problems } = parse(`x: ${text}\n`);
  const property = file.members[0];
  if (!isProperty(property)) throw new Error(`${text} is no property`);
  return { value: property.value, problems };
}

describe('numbers are read as meant or told, never as another value', () => {
  test.each([
    ['0', 0],
    ['6400', 6400],
    ['3.50', 3.5],
    ['.5', 0.5],
    ['5e-4', 0.0005],
    ['1.5E3', 1500],
  ])('%s is read', (raw, expected) => {
    expect(numberOf(raw)).toEqual({ value: expected });
    expect(value(raw)).toMatchObject({ value: { raw }, problems: [] });
  });

  test.each([
    ['6,400', ['6400', '6, 400']],
    ['1,234,567.8', ['1234567.8', '1, 234, 567.8']],
    ['2,5', ['2.5', '2, 5']],
    ['$5', ['5 USD']],
    ['€5', ['5 EUR']],
    ['$1.25', ['1.25 USD']],
    ['1_000', ['1000']],
    ["1'000", ['1000']],
    ['1\u00a0000', ['1000']],
    ['0x10', ['16']],
    ['5.', ['5']],
    ['1.2.3', []],
    ['7-8', ['7 .. 8', '7 - 8']],
    ['2026-5-1', ['2026-05-01']],
    [`8'4"`, ['8 ft 4 in']],
    [`8' 4"`, ['8 ft 4 in']],
    [`8'`, ['8 ft']],
    [`4"`, ['4 in']],
    ['５', ['5']],
    ['٣٤', ['34']],
    ['३', ['3']],
    ['5²', []],
    ['1e999', []],
  ])('%s is told', (raw, suggestions) => {
    expect(numberOf(raw)).toMatchObject({ suggestions });
    const { problems } = value(raw);
    expect(problems).toMatchObject([{ code: 'syntax/number', from: 3, to: 3 + raw.length }]);
    expect((problems[0].replace ?? []).map(change => change.text)).toEqual(suggestions);
  });

  test('every offered writing is read without a problem', () => {
    for (const raw of ['6,400', '2,5', '$5', `8'4"`, '7-8', '2026-5-1', '0x10', '1\u00a0000']) {
      for (const { from, to, text } of value(raw).problems[0].replace!) {
        const mended = `x: [${`x: ${raw}`.slice(3, from)}${text}${`x: ${raw}`.slice(to)}]\n`;
        expect(parse(mended).problems, mended).toEqual([]);
      }
    }
  });

  test('signs: a plain and a typographic minus, and a dash that is none', () => {
    for (const minus of ['-', '−'])
      expect(value(`${minus}30 °C`)).toMatchObject({ value: { negative: true, raw: '30', unit: '°C' }, problems: [] });
    expect(value('–30 °C').problems).toMatchObject([{ code: 'syntax/character', replace: [{ text: '-' }] }]);
  });

  test('feet and inches are one length, every other pair of numbers is none', () => {
    expect(value('8 ft 4 in')).toMatchObject({
      value: { raw: '8', unit: 'ft', second: '4', secondUnit: 'in' },
      problems: [],
    });
    for (const pair of ['8 ft 4 cm', '8 m 4 in', '8 ft 4', '8.5 ft 4 in', '8 ft 14 in']) {
      expect(value(pair).problems, pair).toMatchObject([{ code: 'syntax/number' }]);
    }
    expect(value('1 000').problems).toMatchObject([{ code: 'syntax/unexpected', replace: [{ text: '1000' }] }]);
  });

  test('the mark between numbers is kept: ranges, times and dates glued or spaced', () => {
    expect(value('7..8.5 kW')).toMatchObject({
      value: { low: { raw: '7' }, high: { raw: '8.5', unit: 'kW' } },
      problems: [],
    });
    expect(value('7kW..8kW')).toMatchObject({ value: { low: { unit: 'kW' }, high: { raw: '8' } }, problems: [] });
    expect(value('07:30')).toMatchObject({ value: { time: '07:30' }, problems: [] });
    expect(value('2026-05-01')).toMatchObject({ value: { day: '2026-05-01' }, problems: [] });
  });

  test('only quantities carry a number', () => expect(isQuantity(value('none').value)).toBe(false));
});
