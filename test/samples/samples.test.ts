import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../language/index.js';
import { addressOf, analyze, sound } from './read-sample.js';

const stageNames = (a: Analysis) => a.houses[0].views.map(view => view.name);
const valueIn = (a: Analysis, stage: string, name: string) =>
  a.houses[0].views.find(view => view.name === stage)!.result(name);

describe.each(sound)('%s', sample => {
  test('has no error, and none in what it imports', async () => {
    const { findings } = await analyze(addressOf(sample));
    expect(findings.filter(f => f.severity === 'error').map(f => `${f.code}: ${f.message}`)).toEqual([]);
  });

  test('knows its load, its margin and its service in every stage', async () => {
    const analysis = await analyze(addressOf(sample));
    for (const stage of stageNames(analysis))
      for (const name of ['heating.design-load', 'heating.worst-margin', 'service.demand', 'service.headroom'])
        expect(valueIn(analysis, stage, name), `${name} in ${stage}`).toBeTypeOf('number');
  });
});

test.each(['tamarack', 'juniper'])('%s goes from measurement to measurement', async sample => {
  const names = stageNames(await analyze(addressOf(sample)));
  const order = ['measure', 'shell', 'capacity', 'heat', 'gas-closed', 'solar-roof', 'measure-again'];
  const places = order.map(wanted => names.findIndex(name => name.startsWith(wanted)));
  expect(places.every(place => place > 0)).toBe(true);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

test('the two houses differ in code and currency', async () => {
  const [a, b] = await Promise.all(['tamarack', 'juniper'].map(s => analyze(addressOf(s))));
  const of = (analysis: Analysis) => {
    const { house } = analysis.houses[0].views[0];
    return [house.electricalCode, house.currency];
  };
  expect([of(a), of(b)]).toEqual([
    ['cec-2024', 'CAD'],
    ['nec-2023', 'USD'],
  ]);
});

test('100 A hold in Tamarack Lane only because the load manager keeps them', async () => {
  const analysis = await analyze(addressOf('tamarack'));
  expect(valueIn(analysis, 'measure-again', 'service.demand')).toBeLessThanOrEqual(100);
  expect(valueIn(analysis, 'measure-again', 'service.demand-without-management')).toBeGreaterThan(100);
});

test('the shell takes a third or more off the load of both houses', async () => {
  for (const sample of ['tamarack', 'juniper']) {
    const analysis = await analyze(addressOf(sample));
    const before = valueIn(analysis, 'measure', 'heating.design-load')!;
    expect(valueIn(analysis, 'shell', 'heating.design-load')! / before).toBeLessThan(2 / 3);
  }
});
