import { describe, expect, test } from 'vitest';
import { isProperty, isQuantity, parse } from '../../language/grammar/index.js';

const first = (text: string) => {
  const { file, problems } = parse(text);
  const property = file.members[0];
  return { value: isProperty(property) ? property.value : undefined, problems, members: file.members };
};

describe('where a unit is one', () => {
  const UNITS = [
    ...[
      'm2',
      'W/m2K',
      'W/m2·K',
      'kWh/m2d',
      'h·ft2·°F/BTU',
      'BTU/(h·ft2·°F)',
      'kWh/(m2·d)',
      'CAD/kWh',
      '¢/kWh',
      '°C',
      '%',
      'pp',
    ],
    ...['in', 'inWC', 'L/s', 'm³', 'g/m3', 'degF', 'Ω', 'µm', 'ft^2', 'kWh/month', 'm3/s', 'R', '$/kWh', 'm3/h/m2'],
  ];
  test.each(UNITS)('%s behind a number', unit => {
    for (const text of [`x: 12 ${unit}\n`, `x: 12${unit}\n`, `x: 12\u00a0${unit} from audit\n`]) {
      expect(first(text), text).toMatchObject({ value: { raw: '12', unit }, problems: [] });
    }
  });

  test.each(UNITS.filter(unit => unit !== 'in'))('%s behind a column', unit => {
    const { value, problems } = first(`x: table (a ${unit}, b) [\n  1 2\n]\n`);
    expect(value).toMatchObject({ columns: [{ name: 'a', unit }, { name: 'b' }] });
    expect(problems).toEqual([]);
  });

  test('any word behind a number is its unit, known or not', () => {
    expect(first('x: 12 furlong').value).toMatchObject({ unit: 'furlong' });
    expect(first('x: 12 kW-h').value).toMatchObject({ unit: 'kW-h' });
  });

  test('the words of the language are none', () => {
    expect(first('x: 12 from audit')).toMatchObject({ value: { raw: '12' }, problems: [] });
    expect(first('x: 12 from audit').value).not.toHaveProperty('unit');
    expect(first('x: 12, y: 3 kW').members).toHaveLength(2);
    expect(first('x: 12 y: 3 kW').members).toMatchObject([{ key: 'x' }, { key: 'y' }]);
  });

  test('a unit stands on the line of its number', () => {
    const { members } = first('x: 12\nm2 { }\n');
    expect(members).toMatchObject([{ key: 'x', value: { raw: '12' } }, { kind: 'm2' }]);
    expect(members[0]).not.toHaveProperty('value.unit');
  });

  test('a slash with blanks divides, a glued one belongs to the unit', () => {
    expect(first('x: 1440 W / 240 V').value).toMatchObject({ op: '/', left: { unit: 'W' }, right: { unit: 'V' } });
    expect(first('x: 5 W/m2K').value).toMatchObject({ unit: 'W/m2K' });
  });

  test('in opens a parent in a header and is the inch behind a number', () => {
    expect(first('add panel x in main { length: 5 in }')).toMatchObject({
      members: [{ parents: ['main'], members: [{ value: { unit: 'in' } }] }],
      problems: [],
    });
  });

  test('a unit in a row is told', () => {
    expect(first('x: table (a °C) [\n  5 °C\n]').problems).toMatchObject([{ code: 'syntax/unit-place' }]);
  });

  test('a tolerance has its own unit', () => {
    const { value } = first('x: 68 % ± 3 pp');
    expect(isQuantity(value) && value).toMatchObject({ unit: '%', tolerance: '3', toleranceUnit: 'pp' });
  });
});
