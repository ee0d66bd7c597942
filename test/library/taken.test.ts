import { expect, test } from 'vitest';
import { Session, type Analysis } from '../../language/index.js';
import { library } from '../../language/library/index.js';
import { declared } from './files.js';

const of = (...kinds: readonly string[]) => declared.filter(b => kinds.includes(b.kind)).map(b => b.name ?? '');
const lines = (names: readonly string[], line: (name: string, i: number) => string) =>
  names.map((name, i) => '    ' + line(name, i)).join('\n');

/** A house that takes every type of the library once: bad data or a name that leads nowhere shows in it. */
const house = `assembly all-materials {
${lines(of('material'), (name, i) => `layer layer-${i} { material: ${name}, thickness: 20 mm }`)}
}
house taker {
  electrical-code: nec-2023
  design code { outdoor: -20 °C, indoor: 21 °C }
  storey one { area: 100 m2, height: 2.5 m, level: above-grade }
  envelope {
    unit-leakage: average
    wall materials { area: 10 m2, assembly: all-materials }
${lines(of('assembly'), (name, i) => `wall wall-${i} { area: 10 m2, assembly: ${name} }`)}
    wall glazed {
      area: 90 m2, assembly: wall-2x4-r12
${lines(of('glazing'), (name, i) => `window window-${i} { area: 2 m2, glazing: ${name} }`)}
    }
  }
  heating {
${lines(of('heat-pump', 'air-handler', 'auxiliary'), (name, i) => `${kindOf(name)} equipment-${i} like ${name} { }`)}
  }
  water-heating {
${lines(of('water-heater'), (name, i) => `water-heater tank-${i} like ${name} { }`)}
  }
  electrical {
    service { rating: 400 A }
${lines(of('load', 'evse', 'hot-tub'), (name, i) => `${kindOf(name)} load-${i} like ${name} { }`)}
  }
  solar {
    inverter inv { rating: 10 kW, at: supply-tap }
${lines(of('module'), (name, i) => `array array-${i} { modules: 10, module: ${name}, tilt: 30 deg, azimuth: 180 deg }`)}
  }
}
`;

function kindOf(name: string): string {
  return declared.find(b => b.name === name)!.kind;
}

async function analyze(text: string): Promise<Analysis> {
  const host = {
    read: () => Promise.resolve(text),
    exists: () => Promise.resolve(false),
    roots: () => ['file:///w'],
    library,
    fault: (error: unknown) => {
      throw error;
    },
  };
  return (await new Session(host).analyze('file:///w/taker.house', { upto: 'design', today: '2026-07-15' }))!;
}

test('a house can take every type of the library', async () => {
  const { findings } = await analyze(house);
  expect(findings.filter(f => /^(syntax|input)\//.test(f.code)).map(f => f.message)).toEqual([]);
});

test('every assembly and glazing of the library gives a U-value between those of a good roof and of a single pane', async () => {
  const [{ views }] = (await analyze(house)).houses;
  const { wall } = views[0].house.envelope;
  const found = wall.flatMap(w => [w, ...w.window]).map(b => ({ name: b.name, u: views[0].result('u-value', b) }));
  expect(found.length).toBeGreaterThanOrEqual(of('assembly').length + of('glazing').length);
  expect(found.filter(({ u }) => !(u !== undefined && u > 0.02 && u <= 7.24)).map(f => `${f.name} ${f.u}`)).toEqual([]);
});

test('the test notices a type that is not there', async () => {
  const { findings } = await analyze(house.replace('glazing: single-clear ', 'glazing: single-clare '));
  expect(findings.map(f => f.code)).toContain('input/unknown-name');
});
