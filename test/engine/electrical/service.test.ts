import { describe, expect, test } from 'vitest';
import {
  serviceDemand,
  serviceDemandWithoutManagement,
  serviceHeadroom,
  serviceRatingNeeded,
} from '../../../language/engine/electrical/house-service.js';
import { electricalResults } from '../../../language/results/electrical.js';
import { Withheld } from '../../../language/model/index.js';
import { make } from '../../make-house.js';
import { checkSheet, stepsOf } from '../../worksheets.js';
import { baseboard, load, makeHouse, manager, retrofit, storey, waterHeater } from './houses.js';

/*
 * CEC, by hand: living area 92 + 56 + 0.75 * 88 = 214 m2, basic 7000 W; heat pump 19.5 A * 240 V = 4680 W, strip 9600 W,
 * blower 450 W, together 14730 W; range 6000 W; charger 7680 W; dryer 5000 W and tank 4500 W at 25 %, 2375 W.
 */
const CEC = { basic: 7000, heat: 14730, range: 6000, charger: 7680, others: 2375 };
const CEC_ALL = (CEC.basic + CEC.heat + CEC.range + CEC.charger + CEC.others) / 240;

describe('a house by the Canadian rule', () => {
  const { house, strip, ev } = retrofit('cec-2024');

  test('all loads, item by item', () => {
    expect(serviceDemandWithoutManagement(house())).toBeCloseTo(CEC_ALL, 9);
    expect(serviceDemand(house())).toBeCloseTo(CEC_ALL, 9);
    expect(serviceHeadroom(house())).toBeCloseTo(100 - CEC_ALL, 9);
  });

  test('2024 credits every managed load, 2021 the charger alone', () => {
    const both = { loadManager: [manager([ev, strip])] };
    // 20505 W are left, 85.4 A; the rating needed is the smallest service of 100 A.
    const left = (7000 + 5130 + 6000 + 2375) / 240;
    expect(serviceDemand(house(both))).toBeCloseTo(left, 9);
    expect(serviceRatingNeeded(house(both))).toBe(100);
    expect(serviceHeadroom(house(both))).toBeCloseTo(100 - left, 9);
    expect(serviceDemandWithoutManagement(house(both))).toBeCloseTo(CEC_ALL, 9);
    const older = retrofit('cec-2021');
    const olderHouse = older.house({ loadManager: [manager([older.ev, older.strip])] });
    expect(serviceDemand(olderHouse)).toBeCloseTo(CEC_ALL - 32, 9);
  });

  test('of 2024 the credit for other loads than chargers names its doubt', () => {
    const steps = stepsOf(sheet => serviceDemand(house({ loadManager: [manager([ev, strip])] }), sheet));
    const [forStrip, forCharger] = steps.filter(({ label }) => label.includes('shed by'));
    expect(forCharger.source).toBe('CEC 2024 8-106 11) (seen in part)');
    expect(forStrip.source).toMatch(/^CEC 2024 8-500, by a municipal bulletin; the rule's own words not seen/);
    expect(forStrip.note).toBe('ask the authority before relying on it');
    expect(forStrip.inputs?.power).toEqual([9600, 'power']);
  });

  test('a letter of the authority credits what the edition does not, and none credits nothing', () => {
    const older = retrofit('cec-2021');
    const accepted = manager([older.strip], { credit: { says: 'authority-accepts', text: 'letter of March' } });
    expect(serviceDemand(older.house({ loadManager: [accepted] }))).toBeCloseTo(CEC_ALL - 40, 9);
    const none = manager([ev], { credit: { says: 'none', text: undefined } });
    expect(serviceDemand(house({ loadManager: [none] }))).toBeCloseTo(CEC_ALL, 9);
  });

  test('the smallest service governs the rating of a house that draws little, and is no load', () => {
    const small = makeHouse({ code: 'cec-2021', storeys: [storey('main', 85)] });
    expect(serviceDemand(small)).toBeCloseTo(5000 / 240, 9);
    expect(serviceRatingNeeded(small)).toBe(100);
    const governing = stepsOf(sheet => serviceRatingNeeded(small, sheet)).at(-1);
    expect(governing?.label).toBe('Rating needed: the smallest service of the code governs');
    expect(governing?.note).toBe('not the load of 20.8 A; load management cannot lower the smallest');
    expect(governing?.source).toContain('8-200 1)b)');
    expect(serviceHeadroom(small)).toBeCloseTo(100 - 5000 / 240, 9);
    const tooSmall = makeHouse({ code: 'cec-2021', storeys: [storey('main', 85)], rating: 60 });
    expect(serviceHeadroom(tooSmall)).toBe(-40);
    const cabin = makeHouse({ code: 'cec-2021', storeys: [storey('main', 79)], rating: 60 });
    expect(serviceRatingNeeded(cabin)).toBe(60);
  });

  test('room heat has its demand factor and no strip beside it', () => {
    const electric = makeHouse({
      code: 'cec-2021',
      heating: { baseboard: [baseboard('rooms', { output: 18000, units: 7 })] },
    });
    expect(serviceDemand(electric)).toBeCloseTo((6000 + 16000) / 240, 9);
  });

  test('of interlocked loads only the larger counts', () => {
    const kiln = load('kiln', { kind: 'other', rating: 9000, lockedOutBy: ev });
    const range = load('range', { kind: 'range', rating: 10000 });
    const apart = makeHouse({ code: 'cec-2024', electrical: { load: [kiln, range], evse: [ev] } });
    const charging = makeHouse({ code: 'cec-2024', electrical: { load: [range], evse: [ev] } });
    const firing = makeHouse({ code: 'cec-2024', electrical: { load: [kiln, range] } });
    const ratings = [apart, charging, firing].map(each => 100 - serviceHeadroom(each));
    expect(ratings[0]).toBeCloseTo(ratings[2], 9);
    expect(ratings[0]).not.toBeCloseTo(ratings[1], 3);
  });
});

/*
 * NEC optional method, by hand, for storeys by outside dimensions of 100 + 60 + 96 = 256 m2 = 2755.6 ft2:
 * 3 VA/ft2 make 8266.7 VA, with 4500 VA of circuits, range, dryer and tank 32466.7 VA; pool 10000 + 0.4 * 22466.7.
 */
const AREA = 256 / 0.3048 ** 2;
const POOL = 10000 + 0.4 * (3 * AREA + 4500 + 10200 + 5000 + 4500 - 10000);
const HVAC = 4680 + 450 + 0.65 * 9600;

describe('a house by the American rule', () => {
  const storeys = [
    storey('main', 92, { outsideArea: 100 }),
    storey('upper', 56, { outsideArea: 60 }),
    storey('basement', 88, { outsideArea: 96, level: 'below-grade' }),
  ];
  const { house, strip, ev } = retrofit('nec-2023', { storeys, rating: 200 });

  test('optional method with the charger beside the pool', () => {
    const power = POOL + HVAC + 7680;
    expect(serviceDemand(house())).toBeCloseTo(power / 240, 6);
    // The charger lasts more than three hours: a quarter more on breaker and conductors.
    expect(serviceRatingNeeded(house())).toBeCloseTo((power + 0.25 * 7680) / 240, 6);
    expect(serviceHeadroom(house())).toBeCloseTo(200 - (power + 0.25 * 7680) / 240, 6);
  });

  test('2023 carries the set-point as a continuous load', () => {
    const held = house({ loadManager: [manager([ev, strip], { limit: 110 })] });
    expect(serviceDemand(held)).toBeCloseTo(110, 9);
    expect(serviceRatingNeeded(held)).toBeCloseTo(137.5, 9);
  });

  test('a set-point below what cannot be controlled does not lower the load', () => {
    const held = house({ loadManager: [manager([ev], { limit: 30 })] });
    expect(serviceDemand(held)).toBeCloseTo((POOL + HVAC) / 240, 6);
  });

  test('a set-point above all loads gains nothing', () => {
    const held = house({ loadManager: [manager([ev], { limit: 180 })] });
    expect(serviceDemand(held)).toBeCloseTo((POOL + HVAC + 7680) / 240, 6);
  });

  test('raising the limit never raises the headroom, and no limit gains beyond what it cannot control', () => {
    const at = (limit: number) => house({ loadManager: [manager([ev], { limit })] });
    const limits = Array.from({ length: 200 }, (_, i) => i + 1);
    const headrooms = limits.map(limit => serviceHeadroom(at(limit)));
    const rises = headrooms.filter((left, i) => i > 0 && left > headrooms[i - 1] + 1e-9);
    expect(rises).toEqual([]);
    // Uncontrolled loads last nothing here: they decide until a quarter more of the limit is more than they are.
    const uncontrolled = (POOL + HVAC) / 240;
    expect(headrooms[0]).toBeCloseTo(200 - uncontrolled, 6);
    const between = Math.ceil(uncontrolled / 1.25);
    expect(between).toBeLessThan(uncontrolled);
    expect(serviceDemand(at(between))).toBeCloseTo(uncontrolled, 6);
    expect(serviceHeadroom(at(between))).toBeCloseTo(200 - 1.25 * between, 6);
    expect(headrooms.at(-1)).toBeCloseTo(serviceHeadroom(house()), 9);
  });

  test.each([
    ['nec-2023', '750.30(C)', 'restricted from the user'],
    ['nec-2026', 'article 130', 'listed power control system'],
  ] as const)('%s says what the manager must be', (code, clause, words) => {
    const { house: made, ev: shed } = retrofit(code, { rating: 200 });
    const steps = stepsOf(sheet => serviceDemand(made({ loadManager: [manager([shed])] }), sheet));
    const line = steps.find(({ label }) => label.startsWith('Setting of'));
    expect(line?.source).toContain(clause);
    expect(line?.note).toContain(words);
  });

  test('2020 credits the charger but no strip', () => {
    const older = retrofit('nec-2020', { storeys, rating: 200 });
    const without = serviceDemand(older.house());
    const stripOnly = older.house({ loadManager: [manager([older.strip])] });
    expect(serviceDemand(stripOnly)).toBeCloseTo(without, 9);
    const chargerOnly = older.house({ loadManager: [manager([older.ev], { limit: 30 })] });
    expect(serviceDemand(chargerOnly)).toBeCloseTo(without - 32, 9);
  });

  test('a service under 100 A is counted by the standard method and falls short of the smallest', () => {
    const small = retrofit('nec-2023', { storeys, rating: 60 }).house();
    const steps = stepsOf(sheet => serviceDemandWithoutManagement(small, sheet));
    expect(steps.some(({ label }) => label.startsWith('Light, outlets'))).toBe(true);
    expect(serviceRatingNeeded(small)).toBeGreaterThanOrEqual(100);
    expect(serviceHeadroom(small)).toBeLessThan(-40);
  });
});

describe('worksheets', () => {
  test.each(['cec-2021', 'cec-2024', 'nec-2020', 'nec-2023', 'nec-2026'] as const)('%s: every line evaluates', code => {
    const { house, strip, ev } = retrofit(code, { rating: 200 });
    const managed = house({ loadManager: [manager([ev, strip])] });
    for (const subject of [house(), managed])
      for (const result of electricalResults.filter(({ of }) => of === 'house')) {
        let value = NaN;
        const steps = stepsOf(sheet => (value = result.compute(subject, subject, sheet)));
        checkSheet(steps);
        expect(steps.every(({ source }) => source)).toBe(true);
        expect(value, result.name).toBe(result.compute(subject, subject));
        expect(steps.at(-1)?.value, `${result.name} ends with its value`).toBeCloseTo(value, 9);
        expect(steps.at(-1)?.dimension).toBe(result.dimension);
      }
  });

  test('each clause carries the edition of the house', () => {
    const { house } = retrofit('nec-2026', { rating: 200 });
    const sources = stepsOf(sheet => serviceDemand(house(), sheet)).map(({ source }) => source ?? '');
    const clauses = sources.filter(source => /^(NEC|CEC)/.test(source));
    expect(clauses.length).toBeGreaterThan(10);
    expect(clauses.every(clause => clause.startsWith('NEC 2026'))).toBe(true);
  });
});

describe('what the house does not say is withheld', () => {
  const missing: readonly (readonly [string, () => unknown])[] = [
    ['electrical-code', () => serviceDemand(makeHouse({ code: undefined }))],
    ['storey', () => serviceDemand(makeHouse({ code: 'cec-2021', storeys: [] }))],
    ['service', () => serviceDemand(makeHouse({ code: 'cec-2021', electrical: { service: undefined } }))],
    [
      'rating',
      () => serviceDemand(makeHouse({ code: 'cec-2021', electrical: { load: [load('range', { kind: 'range' })] } })),
    ],
    [
      'element',
      () => serviceDemand(makeHouse({ code: 'cec-2021', waterHeaters: [waterHeater('tank', { kind: 'storage' })] })),
    ],
    ['dwelling', () => serviceDemand(makeHouse({ code: 'cec-2021', suites: [make('suite', { area: 40 })] }))],
    [
      'limit',
      () =>
        serviceDemand(
          makeHouse({ code: 'cec-2021', electrical: { loadManager: [manager([], { limit: undefined })] } }),
        ),
    ],
  ];
  test.each(missing)('%s', (word, run) => {
    expect(run).toThrow(Withheld);
    expect(run).toThrow(word);
  });
});
