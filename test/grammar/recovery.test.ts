import { describe, expect, test } from 'vitest';
import {
  type Block,
  isBodyDamaged,
  isDamaged,
  isProperty,
  parse,
  type Property,
  textOf,
} from '../../language/grammar/index.js';

const read = (inner: string) => {
  const syntax = parse(`house alder {\n${inner}\n}\n`);
  const house = syntax.file.members[0] as Block;
  const property = (key: string) =>
    house.members.find((member): member is Property => isProperty(member) && member.key === key)!;
  return { ...syntax, house, property };
};
const codes = (inner: string) => read(inner).problems.map(problem => problem.code);

describe('a slip stays in its own member', () => {
  test.each([
    ['area: 34 m2 +'],
    ['area: 34 34 m2'],
    ['area: (34 m2'],
    ['area: 34 m2)'],
    ['area: [1, 2'],
    ['area: 34 # m2'],
    ['area: * 3'],
    ['area: 34 m2 from 5'],
    ['area: table (a Pa, b [ 1 2 ]'],
    ['area: 6,400 m2'],
    ['area: "never closed'],
    ['area: at least'],
    ['area: 1 .. '],
    ['area: from audit like'],
    ['area:'],
    ['area: 3 m2 ± '],
    ['area = 34 m2'],
    ['area 34 m2'],
    ['area: 3 × 4 m2'],
  ])('%s', line => {
    for (const text of [`  built: 1971\n  ${line}\n  height: 2.4 m`, `  built: 1971\n  height: 2.4 m\n  ${line}`]) {
      const { house, problems, property } = read(text);
      expect(problems.length).toBeGreaterThan(0);
      expect(house.members).toHaveLength(3);
      expect(isDamaged(property('area'))).toBe(true);
      expect([isDamaged(property('built')), isDamaged(property('height')), isDamaged(house)]).toEqual([
        false,
        false,
        false,
      ]);
      expect([textOf(property('built')), textOf(property('height'))]).toEqual(['built: 1971', 'height: 2.4 m']);
    }
  });

  // Found by random texts: each of these once left the parser without a place to go on.
  test.each([
    'change from { x: 1 }',
    'change a b { x: 1 }',
    'change { x: 1 }',
    'add { x: 1 }',
    'wall like',
    'change a from b',
    'remove from',
  ])('%s', line => {
    const { house, problems, property } = read(`  built: 1971\n  ${line}\n  height: 2.4 m`);
    expect(problems.map(problem => problem.code)).not.toContain('syntax/internal');
    expect(house.members).toHaveLength(3);
    expect([isDamaged(property('built')), isDamaged(property('height'))]).toEqual([false, false]);
  });

  test('within a line as well', () => {
    const { property } = read('  built: 1971, area: 34 +, height: 2.4 m, depth: (3 m, width: 1 m');
    expect(['built', 'area', 'height', 'depth', 'width'].map(key => isDamaged(property(key)))).toEqual([
      false,
      true,
      false,
      true,
      false,
    ]);
  });

  test('what belongs to no member damages the body around it', () => {
    const { house } = read('  built: 1971\n  % 5\n  height: 2 m');
    expect([isDamaged(house), isBodyDamaged(house)]).toEqual([false, true]);
    expect(isBodyDamaged(read('  built: 1971 +\n  height: 2 m').house)).toBe(false);
  });

  test('a damaged header leaves the body alone', () => {
    const { house } = read('  wall # south {\n    area: 3 m2\n  }');
    const wall = house.members[0] as Block;
    expect([isDamaged(wall), isDamaged(wall.members[0]), isDamaged(house)]).toEqual([true, false, false]);
  });

  test('a bad cell takes its row and its table, no other value', () => {
    const { property } = read('  a: table (x, y) [\n    1 2\n    1 + 2\n    3 4\n  ]\n  b: 5');
    const table = property('a').value;
    if (table?.$type !== 'Table') throw new Error('a is no table');
    expect(table.rows.map(isDamaged)).toEqual([false, true, false]);
    expect([isDamaged(property('a')), isDamaged(property('b'))]).toEqual([true, false]);
  });
});

describe('every slip is told at its place in plain words, with what mends it', () => {
  test.each<[string, string, string | undefined]>([
    ['area 34 m2', 'syntax/missing', ':'],
    ['area = 34 m2', 'syntax/missing', ': '],
    ['a: 1 b: 2', 'syntax/separator', ','],
    ['a: (1', 'syntax/not-closed', ')'],
    ['a: 1)', 'syntax/closes-nothing', ''],
    ['a: 3 × 4 m', 'syntax/character', '*'],
    ['a: ≤ 4 m', 'syntax/character', 'at most '],
    ['étage { }', 'syntax/name', 'etage'],
    ['main_floor { }', 'syntax/name', 'main-floor'],
    ['import "a.house"', 'syntax/import-place', undefined],
    ['wall x like { }', 'syntax/missing', undefined],
    ['remove', 'syntax/missing', undefined],
    ['accept heat because', 'syntax/missing', undefined],
    ['accept heat until 2027', 'syntax/missing', undefined],
    ['ducts: { }', 'syntax/unexpected', ''],
  ])('%s', (text, code, mend) => {
    const { problems } = read(`  ${text}`);
    expect(problems[0]).toMatchObject({ code });
    expect(problems[0].replace?.[0]?.text).toBe(mend);
    for (const { message } of problems)
      expect(message).not.toMatch(/token|expect|redundant|\b(?:KEY|HEAD|END|ROW|UNIT|NUMBER|MINUS|JUNK)\b/);
  });

  test('an open comment ends with its line, starred lines included', () => {
    const { problems, house } = read('  /** what\n   * this is\n  built: 1971\n  /* fine */ height: 2 m');
    expect(problems.map(problem => problem.code)).toEqual(['syntax/comment']);
    expect(house.members).toHaveLength(2);
  });

  test('an open text ends with its line', () => {
    const { house } = read('  note: "open\n  other: "closed", height: 2 m');
    expect(house.members).toHaveLength(3);
    expect(codes('  note: "open')).toEqual(['syntax/string']);
  });

  test('a missing and a surplus brace are told where they are', () => {
    const open = 'house alder {\n  wall south {\n    area: 3 m2\n  wall north { area: 4 m2 }\n}\n';
    expect(parse(open).problems).toMatchObject([{ code: 'syntax/not-closed', from: open.indexOf('{', 14) }]);
    expect((parse(open).file.members[0] as Block).members).toMatchObject([{ name: 'south' }, { name: 'north' }]);
    const surplus = 'house alder {\n  wall south {\n    area: 3 m2 }\n  }\n  wall north { area: 4 m2 }\n}\n';
    expect(parse(surplus).problems).toMatchObject([{ code: 'syntax/closes-nothing' }]);
    expect((parse(surplus).file.members[0] as Block).members).toHaveLength(2);
  });
});
