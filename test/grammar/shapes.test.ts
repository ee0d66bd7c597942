import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  type Block,
  docComment,
  isBlock,
  parse,
  rangeOf,
  rangeOfProperty,
  textOf,
} from '../../language/grammar/index.js';

const FIXTURES = new URL('./fixtures/', import.meta.url);

describe('the shapes of the language', () => {
  test.each(readdirSync(FIXTURES))('%s is read without a problem', name => {
    const { file, problems } = parse(readFileSync(new URL(name, FIXTURES), 'utf8'));
    expect(problems).toEqual([]);
    expect(file.members.length).toBeGreaterThan(0);
  });

  /** The members of a block that holds `inner`. */
  const members = (inner: string) => {
    const { file, problems } = parse(`block {\n${inner}\n}\n`);
    expect(problems).toEqual([]);
    return (file.members[0] as Block).members;
  };

  test('a header, its parts in any order', () => {
    const parts = { kind: 'wall', name: 'south', titles: ['South'], likes: ['old'], origins: ['audit'] };
    expect(members('wall south "South" like old from audit { }')).toMatchObject([parts]);
    expect(members('wall south from audit like old "South" { }')).toMatchObject([parts]);
    expect(members('site { }\nduct')).toMatchObject([{ kind: 'site' }, { kind: 'duct' }]);
  });

  test('instructions', () => {
    const text = `add circuit c-hp "Pump" like c-old in main { poles: 2 }
      change attic { assembly: none }
      remove furnace
      accept circuit/voltage-drop because "old run" until 2027-06-01
      accept heat because "known"`;
    expect(members(text)).toMatchObject([
      { $type: 'Add', kind: 'circuit', name: 'c-hp', titles: ['Pump'], likes: ['c-old'], parents: ['main'] },
      { $type: 'Change', target: 'attic', members: [{ key: 'assembly', value: { name: 'none' } }] },
      { $type: 'Remove', target: 'furnace' },
      { $type: 'Accept', code: 'circuit/voltage-drop', reason: 'old run', until: '2027-06-01' },
      { $type: 'Accept', code: 'heat', reason: 'known' },
    ]);
    expect(parse('import "a.house"\nimport "b.house"').file.imports).toMatchObject([
      { path: 'a.house' },
      { path: 'b.house' },
    ]);
  });

  test.each([
    [
      '2 * (1.2 m * 1.5 m) + 0.9 m2',
      { $type: 'Binary', op: '+', left: { op: '*', right: { $type: 'Group' } }, right: { unit: 'm2' } },
    ],
    ['10 m - 2 m − 1 m', { $type: 'Binary', op: '-', left: { op: '-' }, right: { raw: '1' } }],
    ['-(2 m)', { $type: 'Group', negative: true }],
    ['7 kW .. 8.5 kW', { $type: 'Range', low: { raw: '7' }, high: { raw: '8.5' } }],
    ['oct .. mar', { $type: 'Range', low: { name: 'oct' }, high: { name: 'mar' } }],
    ['07:00 .. 11:00', { $type: 'Range', low: { time: '07:00' }, high: { time: '11:00' } }],
    ['2026-05-01 .. 2026-08-01', { $type: 'Range', low: { day: '2026-05-01' } }],
    ['at least 0 kW', { $type: 'Bound', op: 'at least', value: { raw: '0', unit: 'kW' } }],
    ['at   most 5 %', { $type: 'Bound', op: 'at most' }],
    ['may-01', { $type: 'NameValue', name: 'may-01' }],
    ['"a \\"quoted\\" text"', { $type: 'Text', text: 'a "quoted" text' }],
    [
      '[a, 2 kW, "t", 07:00 .. 11:00,]',
      { $type: 'List', items: [{ name: 'a' }, { unit: 'kW' }, { text: 't' }, { $type: 'Range' }] },
    ],
    ['[]', { $type: 'List', items: [] }],
    ['espi "bills/a.xml"', { $type: 'FileValue', format: 'espi', path: 'bills/a.xml' }],
    ['csv "a.csv" (flow "Flow" L/s)', { format: 'csv', columns: [{ name: 'flow', header: 'Flow', unit: 'L/s' }] }],
    ['table (a) [ ]', { $type: 'Table', rows: [] }],
  ])('x: %s', (text, expected) => {
    expect(members(`x: ${text}`)).toMatchObject([{ key: 'x', value: expected }]);
  });

  test('rows keep their cells, ragged or not', () => {
    const text = 'x: table (month, from °C, to, b) [\n jan -15.2 11 "t"\n 2026-01-01 07:30 -\n - - 1\n] from audit';
    expect(members(text)).toMatchObject([
      {
        origin: 'audit',
        value: {
          columns: [{ name: 'month' }, { name: 'from', unit: '°C' }, { name: 'to' }, { name: 'b' }],
          rows: [
            { cells: [{ name: 'jan' }, { negative: true, raw: '15.2' }, { raw: '11' }, { text: 't' }] },
            { cells: [{ day: '2026-01-01' }, { time: '07:30' }, { mark: '-' }] },
            { cells: [{ mark: '-' }, { mark: '-' }, { raw: '1' }] },
          ],
        },
      },
    ]);
  });

  test.each(['from', 'to', 'in', 'at', 'on', 'table', 'add', 'like', 'import', 'heating.worst-margin'])(
    '%s is a key',
    key => {
      expect(members(`a: 1, ${key}: 2 m\n${key}: 3`)).toMatchObject([
        { key: 'a' },
        { key },
        { key, value: { raw: '3' } },
      ]);
    },
  );

  test('a value may go on in the next line where an operator says so', () => {
    expect(members('x: 1 m +\n 2 m\n + 3 m\ny: 4')).toMatchObject([
      { value: { $type: 'Binary', left: { $type: 'Binary' } } },
      { key: 'y' },
    ]);
  });

  test('places and comments', () => {
    const text =
      '/** The south wall.\n *  Brick. */\nwall south {\n  /** Net of windows. */\n  area: 3 m2 // here\n}\n';
    const wall = parse(text).file.members[0] as Block;
    expect(isBlock(wall) && docComment(wall)).toBe('The south wall.\n Brick.');
    expect(docComment(wall.members[0])).toBe('Net of windows.');
    expect(textOf(wall.members[0])).toBe('area: 3 m2');
    expect(rangeOf(wall).from).toBe(text.indexOf('wall south'));
    const name = rangeOfProperty(wall, 'name')!;
    expect(text.slice(name.from, name.to)).toBe('south');
    expect(docComment(parse('/** far */\n\nwall x { }').file.members[0])).toBeUndefined();
  });

  test('line endings, byte order mark and rare blanks change nothing', () => {
    const text = 'wall south {\n  area: 3 m2\n  x: table (a) [\n    1\n    2\n  ]\n}\n';
    const shape = (source: string) =>
      JSON.stringify(parse(source).file.members, (key, value: unknown) => (key.startsWith('$') ? undefined : value));
    for (const other of [
      text.replaceAll('\n', '\r\n'),
      text.replaceAll('\n', '\r'),
      `\ufeff${text}`,
      text.replaceAll(' ', '\u202f'),
    ]) {
      expect(parse(other).problems).toEqual([]);
      expect(shape(other)).toBe(shape(text));
    }
  });
});
