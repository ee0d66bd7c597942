import { describe, expect, it } from 'vitest';
import { analyze, resultIn, stage, told } from '../analyze.js';

const HOUSE = (stages: string, more = '') => `
house example {
  ${more}
  electrical {
    service { rating: 100 A }
    panel main { bus: 100 A, main-breaker: 100 A, spaces: 24
      circuit c-one { breaker: 15 A, poles: 1, conductor: awg-14 }
    }
  }
  envelope { ceiling attic { area: 100 m2, r-value: 12 R } }
${stages}
}`;

describe('stages', () => {
  it('change, add and remove, each upon the stage before', async () => {
    const a = await analyze(
      HOUSE(`
  stage one { change attic { r-value: 40 R } }
  stage two { add circuit c-two { breaker: 30 A, poles: 2, conductor: awg-10 } }
  stage three { remove c-one }`),
    );
    expect(told(a, 'input', 'syntax')).toEqual([]);
    const r = (name: string) => Number((stage(a, name).house.envelope.ceiling[0].rValue! / 0.1761102).toFixed(1));
    expect([r('today'), r('one'), r('two'), r('three')]).toEqual([12, 40, 40, 40]);
    const circuits = (name: string) => stage(a, name).house.electrical.panel[0].circuit.map(c => c.name);
    expect([circuits('one'), circuits('two'), circuits('three')]).toEqual([['c-one'], ['c-one', 'c-two'], ['c-two']]);
  });

  it('branch where two come after the same one', async () => {
    const a = await analyze(
      HOUSE(`
  stage one { change attic { r-value: 40 R } }
  stage left { after: one, add circuit c-left { breaker: 15 A, poles: 1, conductor: awg-14 } }
  stage right { after: one, add circuit c-right { breaker: 15 A, poles: 1, conductor: awg-14 } }`),
    );
    expect(told(a, 'input', 'syntax')).toEqual([]);
    const circuits = (name: string) => stage(a, name).house.electrical.panel[0].circuit.map(c => c.name);
    expect(circuits('left')).toEqual(['c-one', 'c-left']);
    expect(circuits('right')).toEqual(['c-one', 'c-right']);
  });

  it('let a reference wait for a later stage, and its block with it where it cannot do without', async () => {
    const a = await analyze(
      HOUSE(
        `
  stage strip { add auxiliary strip { output: 5 kW, on: c-one } }`,
      ).replace(
        'service {',
        'load-manager manager { limit: 80 A, channel one { sheds: strip, shed-order: 1 } }\n    service {',
      ),
    );
    expect(told(a, 'input')).toEqual([]);
    const channels = (name: string) => stage(a, name).house.electrical.loadManager[0].channel.length;
    expect([channels('today'), channels('strip')]).toEqual([0, 1]);
  });

  it('tell of a name that no longer stands', async () => {
    const a = await analyze(
      HOUSE(`\n  stage one { remove c-one }`).replace(
        'service {',
        'evse charger { setting: 12 A, on: c-one }\n    service {',
      ),
    );
    expect(told(a, 'input/not-alive')).toEqual([
      'input/not-alive "c-one" c-one no longer stands in a stage that evse charger is part of',
    ]);
  });

  it('ask for the parent where several may hold the block', async () => {
    const a = await analyze(
      HOUSE(
        `\n  stage one {\n    add panel garage { bus: 60 A, spaces: 12 }\n    add circuit c-g { breaker: 15 A, poles: 1, conductor: awg-14 }\n  }`,
      ),
    );
    expect(told(a, 'input')).toHaveLength(1);
    expect(told(a, 'input')[0]).toContain('input/needs-parent "c-g" more than one block may hold a circuit');
    const b = await analyze(a.file.syntax.text.replace('add circuit c-g', 'add circuit c-g in garage'));
    expect(told(b, 'input')).toEqual([]);
    expect(stage(b, 'one').house.electrical.panel[1].circuit.map(c => c.name)).toEqual(['c-g']);
  });

  it('unset a property with none', async () => {
    const a = await analyze(HOUSE(`\n  stage one { change attic { r-value: none, u-value: 0.2 W/m2K } }`));
    expect(stage(a, 'one').house.envelope.ceiling[0]).toMatchObject({ rValue: undefined, uValue: 0.2 });
  });

  it('come round in a circle only with a finding', async () => {
    const a = await analyze(HOUSE(`\n  stage one { after: two }\n  stage two { after: one }`));
    expect(told(a, 'input/stage-cycle')).toHaveLength(1);
    expect(a.houses[0].views.map(v => v.name)).toEqual(['today', 'one', 'two']);
  });

  it('give sections and what is not written a place', async () => {
    const a = await analyze(`house bare {\n  stage one { add heat-pump hp like cold-climate-3t { } }\n}`);
    expect(told(a, 'input')).toEqual([]);
    expect(stage(a, 'one').house.heating.heatPump.map(h => h.name)).toEqual(['hp']);
  });

  it('take children along when a block is removed', async () => {
    const a = await analyze(HOUSE(`\n  stage one { remove main }`));
    expect(stage(a, 'one').house.electrical.panel).toEqual([]);
    expect(told(a, 'input')).toEqual([]);
  });
});

describe('models', () => {
  it('withhold what rests on a damaged value, and say why; the rest stays', async () => {
    const whole = await analyze(
      HOUSE('', 'design code { outdoor: -30 °C }\n  stated-load { heating: 9 kW, indoor: 21 °C, outdoor: -30 °C }'),
    );
    expect(resultIn(stage(whole), 'main.spaces-left')).toEqual({ value: 23 });
    const broken = await analyze(whole.file.syntax.text.replace('-30 °C }', '-30 ) °C }'));
    expect(resultIn(stage(broken), 'heating.design-load')).toHaveProperty('withheld');
    expect(resultIn(stage(broken), 'main.spaces-left')).toEqual({ value: 23 });
  });

  it('withhold a list that a misspelt block may belong to', async () => {
    const a = await analyze(HOUSE('').replace('ceiling attic', 'celing attic'));
    expect(told(a, 'input')).toEqual([
      'input/unknown-block "celing" there is no block "celing"; the nearest is ceiling',
    ]);
    expect(() => stage(a).house.envelope.ceiling).toThrow('a ceiling in the envelope is misspelt');
    expect(stage(a).house.envelope.wall).toEqual([]);
  });

  it('are the same object while their values are, wherever the text moves', async () => {
    const a = await analyze(HOUSE(''));
    const { sessionOver, HOUSE: uri, ASKED } = await import('../analyze.js');
    const session = sessionOver({ 'house.house': a.file.syntax.text });
    const first = (await session.analyze(uri, ASKED))!;
    session.update(uri, `// moved\n\n${a.file.syntax.text}`);
    const second = (await session.analyze(uri, ASKED))!;
    expect(second.houses[0].views[0].house).toBe(first.houses[0].views[0].house);
    session.update(uri, a.file.syntax.text.replace('12 R', '13 R'));
    const third = (await session.analyze(uri, ASKED))!;
    expect(third.houses[0].views[0].house).not.toBe(first.houses[0].views[0].house);
  });
});
