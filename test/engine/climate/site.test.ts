import { describe, expect, test } from 'vitest';
import { greatCircle, nearestDesignPlace } from '../../../language/engine/climate/design-temperatures.js';
import { annualMeanTemperature } from '../../../language/engine/climate/site.js';
import { make, makeHouse } from '../../make-house.js';

const radians = (degrees: number) => (degrees * Math.PI) / 180;

describe('the listed place that speaks for a site', () => {
  test('is the nearest one within 60 km and 200 m', () => {
    const site = { latitude: radians(50.4), longitude: radians(-104.6), elevation: 577 };
    expect(nearestDesignPlace(site, p => p.basis === 'January 2.5 %')?.place).toMatchObject({
      place: 'Regina',
      outdoor: -34,
    });
    expect(nearestDesignPlace(site, p => p.status === 'seen')?.place).toMatchObject({
      place: 'Regina airport',
      outdoor: -31.1,
    });
    expect(nearestDesignPlace({ ...site, elevation: 900 })).toBeUndefined();
    expect(nearestDesignPlace({ ...site, latitude: radians(52) })).toBeUndefined();
  });
  test('one degree of latitude is 111.2 km', () => {
    const at = (degrees: number) => ({ latitude: radians(degrees), longitude: 0 });
    expect(greatCircle(at(50), at(51)) / 1000).toBeCloseTo(111.2, 1);
  });
});

describe('annual mean temperature of a site', () => {
  const months = Array.from({ length: 12 }, (_, i) => ({
    month: i + 1,
    mean: i,
    dailyRange: 10,
    global: 100,
    wind: 4,
  }));
  const climate = make('climate', { months }, 'plains');
  test('as stated, else from the months, else estimated', () => {
    expect(annualMeanTemperature(makeHouse({ site: make('site', { meanTemperature: 3 }), climate: [climate] }))).toBe(
      3,
    );
    expect(annualMeanTemperature(makeHouse({ climate: [climate] }))).toBe(5.5);
    expect(annualMeanTemperature(makeHouse({ site: make('site', { weather: climate }) }))).toBe(5.5);
    expect(() => annualMeanTemperature(makeHouse())).toThrow(/neither mean-temperature nor latitude/);
  });
  test('the estimate is near the known means of inland places (from memory: 3, 8, 10.4 and 7 °C)', () => {
    const estimate = (latitude: number, elevation: number) =>
      annualMeanTemperature(makeHouse({ site: make('site', { latitude: radians(latitude), elevation }) }));
    expect(Math.abs(estimate(50.4, 577) - 3)).toBeLessThan(2);
    expect(Math.abs(estimate(44.9, 254) - 8)).toBeLessThan(2);
    expect(Math.abs(estimate(39.8, 1650) - 10.4)).toBeLessThan(2);
    expect(Math.abs(estimate(46.6, 1167) - 7)).toBeLessThan(2);
  });
});
