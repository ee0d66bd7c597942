import { describe, expect, it } from 'vitest';
import { analyze, mended, stage, told } from '../analyze.js';

describe('names', () => {
  it('are unique within their kind, over all stages', async () => {
    const a = await analyze(`house example {
  storey main { area: 90 m2, height: 2.4 m, level: above-grade }
  electrical { panel main { bus: 100 A, spaces: 24 } }
  room one { storey: main }
  stage later { add storey main { area: 50 m2, height: 2.4 m, level: above-grade } }
}`);
    expect(told(a, 'input')).toEqual([
      'input/duplicate-name "main" another storey is called main; names are shared over all stages',
    ]);
    expect(stage(a).house.room[0].storey).toBe(stage(a).house.storey[0]);
  });

  it('of unknown blocks offer the nearest', async () => {
    const a = await analyze(`house example {
  electrical {
    panel main { bus: 100 A, spaces: 24
      circuit c-range { breaker: 40 A, poles: 2, conductor: awg-8 }
    }
    load range { kind: range, rating: 9 kW, on: c-rage }
  }
}`);
    expect(told(a, 'input')).toEqual([
      'input/unknown-name "c-rage" there is no circuit c-rage; the nearest is c-range',
    ]);
    expect(told(await analyze(mended(a, 'input/unknown-name')), 'input')).toEqual([]);
  });

  it('see what the file imports, and not what that imports in turn', async () => {
    const beside = {
      'lib/one.house': 'import "two.house"\nassembly mine like theirs { }\n',
      'lib/two.house': 'assembly theirs { r-value: 20 R }\n',
    };
    const a = await analyze(
      'import "lib/one.house"\nhouse h { envelope { ceiling c { area: 9 m2, assembly: mine } } }',
      beside,
    );
    expect(told(a)).toEqual([]);
    expect(stage(a).house.envelope.ceiling[0].assembly!.rValue).toBeCloseTo(20 * 0.1761102, 5);
    const b = await analyze(
      'import "lib/one.house"\nhouse h { envelope { ceiling c { area: 9 m2, assembly: theirs } } }',
      beside,
    );
    expect(told(b, 'input/unknown-name')).toHaveLength(1);
  });

  it('clash between two imports with both files named', async () => {
    const a = await analyze('import "a.house"\nimport "b.house"\nhouse h { }', {
      'a.house': 'assembly same { r-value: 20 R }\n',
      'b.house': 'assembly same { r-value: 30 R }\n',
    });
    expect(told(a)).toEqual([
      'input/duplicate-name "\\"b.house\\"" same stands for an assembly in a.house and for an assembly in b.house',
    ]);
  });

  it('go round in a circle of imports or of likeness only with a finding', async () => {
    const a = await analyze('import "other.house"\nhouse h { }', { 'other.house': 'import "house.house"\n' });
    expect(told(a)).toEqual(['input/import-cycle "\\"other.house\\"" "other.house" imports this file in turn']);
    const b = await analyze('assembly a like b { }\nassembly b like a { }\nhouse h { }');
    expect(told(b, 'input/like-cycle').length).toBeGreaterThan(0);
  });

  it('of files that lie outside are never followed', async () => {
    const paths = [
      '../outside.house',
      '/etc/passwd',
      'file:///etc/passwd',
      'http://example.org/x.house',
      'a/../../x.house',
      '..\\\\x.house',
      'C:/x.house',
    ];
    for (const path of paths) {
      const a = await analyze(`import "${path}"\nhouse h { }`);
      expect(told(a, 'input/file-outside'), path).toHaveLength(1);
    }
    const missing = await analyze('import "no.house"\nhouse h { }');
    expect(told(missing)).toEqual(['input/file-missing "\\"no.house\\"" there is no file "no.house" to import']);
  });

  it('of sources must stand; origins do not cross into what is copied', async () => {
    const a = await analyze(`source audit { kind: measured }
ceiling template { r-value: 30 R from audit }
house h from audit {
  envelope { ceiling attic like template { area: 9 m2 from nobody } }
}`);
    expect(told(a)).toEqual([
      'input/unknown-name "nobody" there is no source nobody: source nobody { kind: measured }',
    ]);
    const place = stage(a).built.places.get('h/envelope/attic')!;
    expect(place.properties.get('r-value')).toMatchObject({ how: 'copied', source: undefined });
  });
});

describe('words that every object of the machine has', () => {
  it('are no properties, columns, units or blocks of the language', async () => {
    const a = await analyze(
      'house h {\n  constructor: 2\n  site { hasOwnProperty: 3 }\n  storey a { area: 3 constructor, height: 2.4 m, level: above-grade }\n  envelope { blower-door-test t { readings: table (pressure toString, valueOf L/s) [\n    50 300\n    40 200\n  ] } }\n  room r { storey: toString }\n}',
    );
    expect(told(a, 'internal')).toEqual([]);
    expect(told(a, 'input/unknown-property')).toHaveLength(2);
    expect(told(a, 'input/unknown-unit')).toHaveLength(2);
    expect(told(a, 'input/unknown-column')).toHaveLength(1);
    expect(told(a, 'input/unknown-name')).toHaveLength(1);
  });
  it('and very long names and chains end in bounded time', async () => {
    const long = await analyze(
      `house h {\n  storey ${'n'.repeat(200_000)} { area: 9 m2, height: 2.4 m, level: above-grade }\n  room r { storey: ${'m'.repeat(200_000)} }\n}`,
    );
    expect(told(long, 'input/unknown-name')).toHaveLength(1);
    const chain = Array.from(
      { length: 3000 },
      (_, i) =>
        `storey s${i}${i ? ` like s${i - 1}` : ''} { ${i ? '' : 'area: 9 m2, height: 2.4 m, level: above-grade'} }`,
    );
    const began = performance.now();
    const a = await analyze(`house h {\n${chain.join('\n')}\n}`);
    expect(told(a, 'input/like-cycle').length).toBeGreaterThan(0);
    expect(performance.now() - began).toBeLessThan(8000);
  });
});

it('a block that a stage writes without add is told as that alone, and counts', async () => {
  const a = await analyze(
    'house h {\n  electrical { panel main { bus: 100 A, spaces: 24 } }\n  stage s {\n    circuit c-hp in main { breaker: 30 A, poles: 2, conductor: awg-10 }\n    add heat-pump hp like cold-climate-3t { on: c-hp }\n  }\n}',
  );
  expect(told(a, 'input', 'syntax')).toEqual([
    'input/misplaced-block "circuit" a stage adds its blocks: add circuit c-hp',
  ]);
  expect(stage(a, 's').house.electrical.panel[0].circuit.map(c => c.name)).toEqual(['c-hp']);
  expect(told(await analyze(mended(a, 'input/misplaced-block')), 'input')).toEqual([]);
});
