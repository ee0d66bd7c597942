import psychrolib from 'psychrolib';
import { describe, expect, test } from 'vitest';
import {
  dryAirDensity,
  latentHeatOfAir,
  pressureAtElevation,
  sensibleHeatOfAir,
  standardTemperature,
} from '../../../language/engine/climate/atmosphere.js';
import { designPlaces } from '../../../language/engine/climate/design-temperatures.js';
import * as air from '../../../language/engine/climate/moist-air.js';
import { check, off } from './checks.js';

describe('air against published values', () => {
  const atmosphere = check('atm-pressure');
  test(atmosphere.title, () => {
    atmosphere.inputs.z.value.forEach((z: number, i: number) => {
      expect(Math.abs(pressureAtElevation(z) - atmosphere.expected.p.value[i])).toBeLessThan(1);
      expect(standardTemperature(z)).toBeCloseTo(atmosphere.expected.t.value[i], 0);
    });
  });

  const stations = check('atm-pressure-stations');
  test(stations.title, () => {
    stations.inputs.z.value.forEach((z: number, i: number) =>
      expect(Math.abs(pressureAtElevation(z) / 1000 - stations.expected.p.value[i])).toBeLessThan(0.01),
    );
  });

  const first = check('psy-ex1');
  test(first.title, () => {
    const { t, t_wb, p } = first.inputs;
    const w = air.humidityRatioFromWetBulb(t.value, t_wb.value, p.value);
    expect(Math.abs(w - first.expected.W.value)).toBeLessThan(1.01e-4);
    expect(Math.abs(air.dewPoint(w, p.value) - first.expected.t_dp.value)).toBeLessThan(0.5);
    expect(Math.abs(air.relativeHumidity(t.value, w, p.value) - first.expected.RH.value)).toBeLessThan(0.01);
    expect(Math.abs(air.enthalpy(t.value, w) / 1000 - first.expected.h.value)).toBeLessThan(0.1);
    expect(off(air.specificVolume(t.value, w, p.value), first.expected.v.value)).toBeLessThan(0.01);
  });

  const pressure = check('psy-pws');
  test(pressure.title, () => {
    pressure.inputs.t.value.forEach((t: number, i: number) => {
      const printed: number = pressure.expected.p_ws.value[i];
      const tolerance = t === -60 ? 0.01 : 3e-4 * printed;
      expect(Math.abs(air.saturationPressure(t) - printed)).toBeLessThan(tolerance);
    });
  });

  const saturated = check('psy-Ws');
  test(saturated.title, () => {
    saturated.inputs.t.value.forEach((t: number, i: number) => {
      const w = air.saturationHumidityRatio(t, 101325);
      expect(off(w, saturated.expected.W_s.value[i])).toBeLessThan(0.01);
      expect(off(air.enthalpy(t, w) / 1000, saturated.expected.h_s.value[i])).toBeLessThan(0.03);
    });
  });

  const grid = check('psy-grid');
  test(grid.title, () => {
    grid.inputs.cases.value.forEach(([t, rh, p]: number[], i: number) => {
      const e = grid.expected;
      const w = air.humidityRatioAt(t, rh, p);
      expect(off(w, e.W.value[i])).toBeLessThan(5e-4);
      expect(off(air.enthalpy(t, w) / 1000, e.h.value[i])).toBeLessThan(5e-4);
      expect(Math.abs(air.wetBulb(t, w, p) - e.t_wb.value[i])).toBeLessThan(0.002);
      expect(Math.abs(air.dewPoint(w, p) - e.t_dp.value[i])).toBeLessThan(0.002);
      expect(off(air.moistAirDensity(t, w, p), e.rho.value[i])).toBeLessThan(5e-4);
    });
  });

  test('the same grid computed here by psychrolib 1.1.1', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    for (let t = -40; t <= 45; t += 8.5)
      for (const rh of [0.15, 0.5, 0.9])
        for (const p of [84000, 101325]) {
          const w = air.humidityRatioAt(t, rh, p);
          expect(off(w, psychrolib.GetHumRatioFromRelHum(t, rh, p))).toBeLessThan(1e-5);
          expect(Math.abs(air.wetBulb(t, w, p) - psychrolib.GetTWetBulbFromHumRatio(t, w, p))).toBeLessThan(0.002);
          expect(Math.abs(air.dewPoint(w, p) - psychrolib.GetTDewPointFromHumRatio(t, w, p))).toBeLessThan(0.002);
          expect(off(air.moistAirDensity(t, w, p), psychrolib.GetMoistAirDensity(t, w, p))).toBeLessThan(1e-5);
        }
  });

  const standard = check('air-std');
  test(standard.title, () => {
    expect(off(dryAirDensity(20, 101325), standard.expected.rho.value)).toBeLessThan(0.001);
    expect(sensibleHeatOfAir(101325) / 1000).toBeCloseTo(standard.expected.C_s.value, 12);
    expect(latentHeatOfAir(101325) / 1000).toBeCloseTo(standard.expected.C_l.value, 9);
    // At 1050 m the factor is 1.084 W per L/s and K.
    expect(off(sensibleHeatOfAir(pressureAtElevation(1050)) / 1000, 1.084)).toBeLessThan(0.001);
  });

  const us = check('design-us');
  test(us.title, () => {
    for (const [, lat, lon, elevation, , cold] of us.expected.rows.value) {
      const place = designPlaces.find(
        p => Math.abs(p.latitude * 57.29578 - lat) < 1e-3 && Math.abs(p.longitude * 57.29578 - lon) < 1e-3,
      );
      expect(place).toMatchObject({ elevation, outdoor: cold, basis: 'annual 99 %', status: 'seen' });
    }
  });

  const ca = check('design-ca-ashrae');
  test(ca.title, () => {
    for (const [, lat, west, elevation, , , cold] of ca.expected.rows.value) {
      const place = designPlaces.find(
        p => Math.abs(p.latitude * 57.29578 - lat) < 1e-3 && Math.abs(p.longitude * 57.29578 + west) < 1e-3,
      );
      expect(place).toMatchObject({ elevation, outdoor: cold, basis: 'annual 99 %', status: 'seen' });
    }
  });

  const nbc = check('design-ca-nbc-seen');
  test(nbc.title, () => {
    for (const [name, elevation, cold] of nbc.expected.rows.value)
      expect(designPlaces.find(p => p.place === name)).toMatchObject({
        elevation,
        outdoor: cold,
        basis: 'January 2.5 %',
        status: 'seen',
      });
  });

  const remembered = check('design-ca-nbc-mem');
  test(remembered.title, () => {
    for (const [name, cold] of Object.entries(remembered.expected.t_jan_2_5.value))
      expect(designPlaces.find(p => p.place === name && p.basis === 'January 2.5 %')).toMatchObject({
        outdoor: cold,
        status: 'memory',
      });
  });
});
