import { describe, expect, test } from 'vitest';
import { type Context, contextAt } from '../../language/grammar/index.js';

/** The context at the bar in a text. */
function at(text: string): Context {
  const offset = text.indexOf('|');
  return contextAt(text.slice(0, offset) + text.slice(offset + 1), offset);
}

const house = (inner: string): string =>
  `house alder {\n  built: 1971\n  envelope {\n${inner}\n  }\n  heating { }\n}\n`;

describe('where a cursor stands', () => {
  test.each<[string, Partial<Context>]>([
    ['    |', { place: 'member-head', prefix: '' }],
    ['    wal|', { place: 'member-head', prefix: 'wal' }],
    ['    |area: 3 m2', { place: 'member-head', prefix: '' }],
    ['    area: 3 m2, hei|', { place: 'member-head', prefix: 'hei' }],
    ['    are|a: 3 m2', { place: 'member-head', prefix: 'are' }],
    ['    area: |', { place: 'value', property: 'area', prefix: '' }],
    ['    faces: no|', { place: 'value', property: 'faces', prefix: 'no' }],
    ['    area: 3 |', { place: 'unit', property: 'area', number: '3', prefix: '' }],
    ['    area: 3 m|', { place: 'unit', property: 'area', number: '3', prefix: 'm' }],
    ['    area: 3 m2 + |', { place: 'value', property: 'area' }],
    ['    area: 2 * (1.5 |', { place: 'unit', property: 'area', number: '1.5' }],
    ['    area: 3 m2 |', { place: 'after-value', property: 'area' }],
    ['    area: 3 m2 from |', { place: 'after-value', property: 'area', header: { keyword: 'from' } }],
    ['    area: 3 m2 from au|', { place: 'after-value', header: { keyword: 'from' }, prefix: 'au' }],
    ['    flow: 3 L/s ± 4 |', { place: 'unit', number: '4' }],
    ['    days: [|', { place: 'list', property: 'days' }],
    ['    days: [sat, su|', { place: 'list', property: 'days', prefix: 'su' }],
    ['    readings: table (pressure |', { place: 'unit', columns: ['pressure'] }],
    ['    readings: table (pressure Pa, |', { place: 'table-head', columns: ['pressure'] }],
    ['    readings: csv "a.csv" (pressure "dP" |', { place: 'unit', columns: ['pressure'] }],
    ['    readings: table (a Pa, b L/s) [\n  1 |', { place: 'table-cell', columns: ['a', 'b'], cell: 1 }],
    ['    readings: table (a Pa, b L/s) [\n  1 2\n  |', { place: 'table-cell', columns: ['a', 'b'], cell: 0 }],
    ['    note: "some |', { place: 'string', property: 'note' }],
    ['    note: "some | text"', { place: 'string', property: 'note' }],
    ['    area: 3 // m|', { place: 'comment' }],
    ['    /* m| */', { place: 'comment' }],
    ['    wall |', { place: 'header', header: { kind: 'wall' } }],
    ['    wall south like |', { place: 'header', header: { kind: 'wall', name: 'south', keyword: 'like' } }],
    ['    wall south "South" from au|', { place: 'header', header: { kind: 'wall', name: 'south', keyword: 'from' } }],
    ['    remove |', { place: 'header', header: { instruction: 'remove', keyword: 'remove' } }],
    [
      '    add wall east in |',
      { place: 'header', header: { instruction: 'add', kind: 'wall', name: 'east', keyword: 'in' } },
    ],
    ['    change att|', { place: 'header', header: { instruction: 'change', keyword: 'change' }, prefix: 'att' }],
  ])('%s', (text, expected) => {
    const context = at(house(text));
    expect(context).toMatchObject(expected);
    expect(context.enclosing.map(({ kind, name }) => [kind, name])).toEqual([
      ['house', 'alder'],
      ['envelope', undefined],
    ]);
  });

  test('the path of an import', () => {
    expect(at('import "../lib|"\n')).toMatchObject({ place: 'import-path', enclosing: [] });
    expect(at('import |')).toMatchObject({ place: 'import-path' });
  });

  test('added and changed blocks tell their instruction', () => {
    const { enclosing } = at('stage shell {\n  add wall east in main { are| }\n}\n');
    expect(enclosing).toMatchObject([{ kind: 'stage' }, { instruction: 'add', kind: 'wall', name: 'east' }]);
    expect(at('stage shell {\n  change attic { | }\n}\n').enclosing.at(-1)).toMatchObject({
      instruction: 'change',
      name: 'attic',
    });
  });

  test('a block that is not closed yet encloses the cursor', () => {
    expect(at('house alder {\n  wall south {\n    area: |').enclosing.map(block => block.kind)).toEqual([
      'house',
      'wall',
    ]);
    const { enclosing } = at('house alder {\n  wall south {\n    fa|\n  wall north { area: 3 m2 }\n}\n');
    expect(enclosing.map(block => block.name)).toEqual(['alder', 'south']);
  });

  test('an empty text offers members', () => {
    expect(at('|')).toEqual({ place: 'member-head', enclosing: [], prefix: '', from: 0 });
  });
});
