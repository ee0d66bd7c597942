import fc from 'fast-check';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  add,
  dimensions,
  inUnit,
  isOf,
  likelyUnits,
  multiply,
  nearestUnit,
  parseUnit,
  print,
  quantity,
  read,
  type Dimension,
} from '../../language/units/index.js';

const si = (text: string) => read(text).value;

describe('units against a general-purpose library', () => {
  // mathjs 15 as the oracle: our writing, its writing, its SI unit.
  const same: [ours: string, theirs: string, base: string][] = [
    ['8 ft', '8 ft', 'm'],
    ['3.5 in', '3.5 inch', 'm'],
    ['990 ft2', '990 sqft', 'm2'],
    ['40 gal', '40 gallon', 'm3'],
    ['120 cfm', '120 ft^3/minute', 'm^3/s'],
    ['31000 BTU/h', '31000 BTU/hour', 'W'],
    ['0.35 W/m2K', '0.35 W/(m^2 K)', 'W/(m^2 K)'],
    ['20 R', '20 hour ft^2 K / BTU * 5/9', 'm^2 K/W'],
    ['0.12 BTU/(h·ft2·°F)', '0.12 BTU/(hour ft^2 K) * 9/5', 'W/(m^2 K)'],
    ['4.9 kWh/m2d', '4.9 kW hour/(m^2 day)', 'W/m^2'],
    ['14.2 kWh/d', '14.2 kW hour/day', 'W'],
    ['14.7 psi', '14.7 psi', 'Pa'],
    ['5 mph', '5 mile/hour', 'm/s'],
    ['12 lb', '12 lbm', 'kg'],
    ['30 deg', '30 deg', 'rad'],
  ];
  it.each(same)('%s', (ours, theirs, base) => {
    const [, amount, factor = '1'] = /^(.*?)(?: \* ([\d/]+))?$/.exec(theirs)!;
    const scale = factor
      .split('/')
      .map(Number)
      .reduce((a, b) => a / b);
    // mathjs has the thermochemical-free BTU of 1055.05585262 J as we do.
    expect(si(ours) / (mathUnit(amount).toNumber(base) * scale)).toBeCloseTo(1, 9);
  });
});

describe('units against published factors', () => {
  // NIST SP 811 (2008), appendix B.8.
  it.each([
    ['1 inWC', 249.0889],
    ['1 inHg', 3386.389],
    ['1 ton', 3516.853],
    ['1 therm', 1.055056e8],
    ['1 R', 0.1761102],
    ['1 BTU/(h·ft2·°F)', 5.678263],
  ])('%s', (text, expected) => expect(si(text) / expected).toBeCloseTo(1, 6));
  // ASTM B258 by NEC Chapter 9 Table 8: 6 AWG is 26,240 circular mils = 13.30 mm2.
  it('wire gauges', () => {
    expect(si('6 AWG')).toBeCloseTo(13.3e-6, 8);
    expect(inUnit(si('6 AWG'), parseUnit('AWG')!)).toBeCloseTo(6, 9);
  });
});

describe('temperatures', () => {
  it('are points alone and differences in compounds', () => {
    expect(si('-22 degF')).toBeCloseTo(-30, 9);
    expect(isOf(read('21 °C'), 'temperature')).toBe(true);
    expect(isOf(read('21 °C'), 'temperature-difference')).toBe(false);
    expect(isOf(read('21 K'), 'temperature-difference')).toBe(true);
    expect(si('1 W/m2·°C')).toBe(1);
  });
  it('subtract to a difference and do not add', () => {
    const difference = add(read('21 °C'), read('70 °F'), -1);
    expect('ok' in difference && isOf(difference.ok, 'temperature-difference')).toBe(true);
    expect(add(read('21 °C'), read('20 °C'), 1)).toHaveProperty('error');
    expect(add(read('21 °C'), read('4 K'), -1)).toMatchObject({ ok: { value: 17, point: true } });
    expect(multiply(read('21 °C'), read('2'), 1)).toHaveProperty('error');
  });
});

describe('money', () => {
  it('keeps one currency', () => {
    expect(add(read('5 CAD'), read('5 USD'), 1)).toHaveProperty('error');
    expect(read('12 ¢/kWh').currency).toBeUndefined();
    expect(read('0.12 CAD/kWh').currency).toBe('CAD');
    expect(read('12 ¢/kWh').value).toBeCloseTo(read('0.12 CAD/kWh').value, 15);
  });
});

describe('slips', () => {
  it('offers the unit that was probably meant', () => {
    expect(likelyUnits(20, 'RSI', 'r-value', [0.05, 15])).toEqual(['R']);
    expect(likelyUnits(21, 'K', 'temperature', [10, 27])).toContain('°C');
    expect(likelyUnits(70, '°C', 'temperature', [10, 27])).toContain('°F');
    expect(likelyUnits(1200, 'L/s', 'air-flow', [0.02, 1])).toEqual(['cfm']);
  });
  it.each([
    ['kw', 'kW'],
    ['btu/h', 'BTU/h'],
    ['CFM', 'cfm'],
    ['l/s', 'L/s'],
    ['furlong', undefined],
  ])('nearest to %s', (text, expected) =>
    expected ? expect(nearestUnit(text)).toBe(expected) : expect(parseUnit(text)).toBeUndefined(),
  );
});

describe('printing', () => {
  it('can be pasted back, in both systems, within three figures', () => {
    // Money is printed to the cent and has cases of its own below.
    const all = (Object.keys(dimensions) as Dimension[]).filter(d => !d.startsWith('money') && !d.endsWith('price'));
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.double({ min: 1e-3, max: 1e7, noNaN: true }),
        fc.constantFrom('si', 'ip'),
        (d, v, system) => {
          const text = print(v, d, { system: system, currency: 'CAD' });
          const back = read(text);
          // Three figures of what is printed; for a temperature in °F its zero lies elsewhere.
          const size = 'point' in dimensions[d] ? Math.max(Math.abs(v), 40) : Math.abs(v);
          expect(Math.abs(back.value - v)).toBeLessThanOrEqual(0.006 * size);
          expect(isOf(back, d)).toBe(true);
        },
      ),
    );
  });
  it('keeps a unit and a number together through a round trip', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ft', '°F', 'R', 'BTU/h', 'kWh/d', 'inWC', '%'),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (symbol, v) => {
          const unit = parseUnit(symbol)!;
          expect(inUnit(quantity(v, unit).value, unit)).toBeCloseTo(v, 8);
        },
      ),
    );
  });
  it.each([
    [9612, 'heat-flow', 'si', '9.61 kW'],
    [-31, 'temperature', 'si', '−31 °C'],
    [-31, 'temperature', 'ip', '−23.8 °F'],
    [123456, 'power', 'si', '123 kW'],
    [0.68, 'ratio', 'si', '68 %'],
    [6400, 'money', 'si', '6400 CAD'],
    [0.12 / 3.6e6, 'energy-price', 'si', '0.12 CAD/kWh'],
    [0.0512 / 3.6e6, 'energy-price', 'ip', '0.0512 CAD/kWh'],
    [9.876e-9, 'fuel-price', 'si', '9.88 CAD/GJ'],
  ] as const)('%s %s %s', (v, d, system, text) => expect(print(v, d, { system, currency: 'CAD' })).toBe(text));
});

describe('unknown units', () => {
  it.each([
    ['sqft', 'area', 'ft2'],
    ['Amp', 'current', 'A'],
    ['Watt', 'power', 'W'],
    ['kw', 'power', 'kW'],
    ['meters', 'length', 'm'],
    ['L/sec', 'air-flow', 'L/s'],
    ['cad/kwh', 'energy-price', 'CAD/kWh'],
  ] as const)('%s of %s is probably %s', (text, dimension, expected) =>
    expect(nearestUnit(text, unit => isOf(quantity(1, unit), dimension))).toBe(expected),
  );
  it('is none where nothing is near', () => expect(nearestUnit('furlong')).toBeUndefined());
});
