import { expect, test } from 'vitest';
import { addressOf, analyze } from './read-sample.js';

/*
 * Two service loads and one heating load of the samples, added up on paper from the figures in their files and the clauses
 * named beside each term (the clauses as in test/codes; those of the reference were seen quoted, not in the books).
 */

const result = async (sample: string, stage: string, name: string) => {
  const [house] = (await analyze(addressOf(sample))).houses;
  return house.views.find(view => view.name === stage)?.result(name);
};

test('Tamarack Lane without its manager, by CEC 8-200 1)', async () => {
  const basic = 5000 + 1000; // i, ii: 72 + 44 + 0.75 · 70 = 168.5 m2 of living area
  const heatPump = (16 + 1.2) * 240 + 150; // iii: running amperes, base pan heater
  const blower = 4.1 * 240;
  const strip = 10_000;
  const range = 6000; // iv: below 12 kW
  const charger = 32 * 240; // vi
  const dryer = 0.25 * 5000; // vii: over 1500 W, beside a range
  const tank = 0.25 * 4500; // vii: the element
  const sum = basic + heatPump + blower + strip + range + charger + dryer + tank;
  expect(await result('tamarack', 'heat-and-water', 'service.demand-without-management')).toBeCloseTo(sum / 240, 6);
});

test('Juniper Court without its manager, by NEC 220.82', async () => {
  const area = 616 + 668 + 646; // ft2 by outside dimensions
  const general = 3 * area + 2 * 1500 + 1500; // 220.41, 220.52
  const nameplates = 12_000 + 5000 + 1300 + 180 + 600 + 4500 + 70; // range to ventilation, 220.82(B)(3)
  const pool = 10_000 + 0.4 * (general + nameplates - 10_000); // 220.82(B)
  const charger = 32 * 240; // 220.57: more than 7200
  const heat = (16.5 + 1.2) * 240 + 140 + 4.1 * 240 + 0.65 * 10_000; // 220.82(C)(3)
  expect(await result('juniper', 'heat', 'service.demand-without-management')).toBeCloseTo(
    (pool + charger + heat) / 240,
    1,
  );
});

test('the start needs what its auditor said, less what the table of the heat pump gives', async () => {
  const atDesign = 6.5; // kW at −25 °C, the row of the library's table
  expect(await result('start', 'heat', 'heating.auxiliary-required')).toBeCloseTo((9.8 - atDesign) * 1000, 6);
  expect(await result('start', 'heat', 'heating.worst-margin')).toBeCloseTo((atDesign + 5 - 9.8) * 1000, 6);
});
