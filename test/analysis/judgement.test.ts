import { describe, expect, it } from 'vitest';
import { analyze, ASKED, mended, sessionOver, HOUSE, told } from '../analyze.js';

const house = (body: string, strip = '3 kW') => `house h {
  electrical-code: cec-2024
  design code { outdoor: -30 °C }
  stated-load { heating: 9 kW, indoor: 22 °C, outdoor: -30 °C }
  stage heat {
    add auxiliary strip { output: ${strip}, steps: 2 }
${body}
  }
}`;

describe('one finding over several stages', () => {
  it('is told as where it arises, and names the later stage whose figures are others', async () => {
    const worse = house('').replace(
      /\}\n\}$/,
      '}\n  stage colder { change code { outdoor: -35 °C } }\n  stage same { change strip { steps: 1 } }\n}',
    );
    const a = await analyze(worse);
    const found = a.findings.filter(f => f.code === 'heat/equipment-undersized');
    expect(found.map(f => f.stages)).toEqual([['heat', 'colder', 'same']]);
    expect(found[0].message).toContain('6 kW short at −30 °C');
    expect(found[0].related.map(r => [worse.slice(r.from, r.to), r.message.split(':')[0]])).toEqual([
      ['colder', 'in stage colder'],
      ['same', 'in stage same'],
    ]);
    expect(found[0].related[0].message).toContain('short at −35 °C');
  });
  it('names no stage whose figures are the same', async () => {
    const a = await analyze(house('').replace(/\}\n\}$/, '}\n  stage same { change strip { steps: 1 } }\n}'));
    const found = a.findings.filter(f => f.code === 'heat/equipment-undersized');
    expect(found.map(f => [f.stages, f.related])).toEqual([[['heat', 'same'], []]]);
  });
});

describe('expectations', () => {
  it('are errors where a result breaks them, with both numbers', async () => {
    const a = await analyze(house('    expect { heating.worst-margin: at least 0 kW }'));
    expect(told(a, 'expect')).toEqual([
      'expect/broken "at least 0 kW" heating.worst-margin is −6 kW in stage heat, 6 kW below the expected 0 W',
    ]);
    const b = await analyze(
      house('    expect { heating.worst-margin: at least 0 kW, heating.design-load: 8 kW .. 10 kW }', '10 kW'),
    );
    expect(told(b, 'expect')).toEqual([]);
  });
  it('hold from their stage on', async () => {
    const a = await analyze(
      house('    expect { heating.auxiliary-installed: at least 3 kW }').replace(
        /\}\n\}$/,
        '}\n  stage worse { change strip { output: 1 kW } }\n}',
      ),
    );
    expect(told(a, 'expect')[0]).toContain('is 1 kW in stage worse');
  });
  it('that cannot be judged are not taken for met', async () => {
    const a = await analyze(
      house('    expect { heating.worst-margin: at least 0 kW }').replace('design code { outdoor: -30 °C }', ''),
    );
    expect(told(a, 'expect')[0]).toContain('heating.worst-margin is not known in stage heat');
  });
  it('name results that there are, in their dimension', async () => {
    const a = await analyze(
      house(
        '    expect { heating.wrst-margin: at least 0 kW, heating.design-load: at most 9 A, strip.nothing: at most 1 kW }',
      ),
    );
    expect(told(a, 'input')).toEqual([
      'input/unknown-result "heating.wrst-margin" there is no result heating.wrst-margin; the nearest is heating.worst-margin',
      'input/wrong-dimension "9 A" heating.design-load is a heat flow, not a current',
      'input/unknown-result "strip.nothing" an auxiliary has no result nothing',
    ]);
    expect(told(await analyze(mended(a, 'input/unknown-result')), 'input/unknown-result')).toHaveLength(1);
  });
});

describe('acceptances', () => {
  const accepted = (accept: string, where: 'stage' | 'house' = 'stage') =>
    analyze(where === 'stage' ? house(`    ${accept}`) : house('').replace('stage heat', `${accept}\n  stage heat`));
  it('silence a finding, in the stage and in the house', async () => {
    expect(told(await accepted(''), 'heat/equipment-undersized')).toHaveLength(1);
    for (const where of ['stage', 'house'] as const) {
      const a = await accepted('accept heat/equipment-undersized because "wood stove"', where);
      expect(told(a, 'heat/equipment-undersized', 'accept')).toEqual([]);
    }
  });
  it('that silence nothing are told, and can be taken out', async () => {
    const a = await accepted('accept circuit/voltage-drop because "long ago"');
    expect(told(a, 'accept')).toEqual([
      'accept/unused "accept circuit/voltage-drop because \\"long ago\\"" nothing is found of circuit/voltage-drop here; the acceptance can go',
    ]);
    expect(told(await analyze(mended(a, 'accept/unused')), 'accept')).toEqual([]);
  });
  it('run out, and then silence nothing', async () => {
    const a = await accepted('accept heat/equipment-undersized because "until autumn" until 2026-05-31');
    expect(told(a, 'accept/expired')).toEqual([
      'accept/expired "2026-05-31" this was accepted until 2026-05-31, and today is 2026-06-01',
    ]);
    expect(told(a, 'heat/equipment-undersized')).toHaveLength(1);
    const b = await accepted('accept heat/equipment-undersized because "until autumn" until 2026-06-01');
    expect(told(b, 'accept', 'heat/equipment-undersized')).toEqual([]);
  });
  it('need a reason and a known code', async () => {
    expect(told(await accepted('accept heat/equipment-undersized'), 'accept/no-reason')).toHaveLength(1);
    expect(told(await accepted('accept heat/equipment-undersizd because "x"'), 'accept/unknown-code')[0]).toContain(
      'the nearest is heat/equipment-undersized',
    );
  });
  it('hold for texts as well, within their block', async () => {
    const text =
      'house h {\n  envelope {\n    accept input/implausible because "a hall"\n    wall south { area: 1200 m2, r-value: 12 R }\n  }\n}';
    expect(told(await analyze(text.replace('1200 m2', '11000 ft2')), 'input', 'accept')).toEqual([]);
  });
});

describe('settings', () => {
  const withSettings = async (json: string) => {
    const session = sessionOver({ 'house.house': house(''), 'wattwright.json': json });
    return (await session.analyze(HOUSE, ASKED))!;
  };
  it('of the project decide severity and units', async () => {
    const a = await withSettings('{ "units": "ip", "severity": { "heat/equipment-undersized": "warning" } }');
    const f = a.findings.find(x => x.code === 'heat/equipment-undersized')!;
    expect(f.severity).toBe('warning');
    expect(f.message).toContain('BTU/h');
    expect(
      told(await withSettings('{ "severity": { "heat/equipment-undersized": "off" } }'), 'heat/equipment-undersized'),
    ).toEqual([]);
  });
  it('that cannot be read are an error, and nothing of them is used', async () => {
    for (const json of [
      '{',
      '[]',
      '{ "unit": "ip" }',
      '{ "units": "metric" }',
      '{ "severity": { "heat/no-heat": "fatal" } }',
      '{ "severity": { "heat/no-het": "off" } }',
      '{ "severity": { "syntax/unexpected": "off" } }',
      '{ "severity": { "internal/fault": "off" } }',
    ])
      expect(told(await withSettings(json), 'settings/unreadable'), json).toHaveLength(1);
  });
});
