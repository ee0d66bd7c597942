import { describe, expect, test } from 'vitest';
import { linearRegression, linearRegressionLine, sampleCorrelation } from 'simple-statistics';
import { fitLeakage, type Reading } from '../../../language/engine/air/blower-door.js';
import { leakFlowFactor, referenceFactor, type TestAir } from '../../../language/engine/air/fan-corrections.js';
import {
  airChanges,
  effectiveLeakageArea,
  equivalentLeakageArea,
  normalizedLeakage,
} from '../../../language/engine/air/leakage-area.js';
import { studentT } from '../../../language/engine/air/student-t.js';
import { dryAirDensity } from '../../../language/engine/climate/atmosphere.js';
import { check, off } from './checks.js';

const hour = 3600;
const readings = (c: ReturnType<typeof check>): Reading[] =>
  c.inputs.dp.value.map((pressure: number, i: number) => ({ pressure, flow: c.inputs.Q.value[i] / hour }));
const fitted = (list: readonly Reading[]) => {
  const fit = fitLeakage(list);
  if ('error' in fit) throw new Error(fit.error);
  return fit.ok;
};

describe('blower-door tests against published values', () => {
  const exact = check('bd-exact');
  test(exact.title, () => {
    const fit = fitted(readings(exact));
    expect(off(fit.exponent, exact.expected.n.value)).toBeLessThan(1e-4);
    expect(off(fit.coefficient * hour, exact.expected.C.value)).toBeLessThan(1e-4);
    expect(fit.correlation ** 2).toBeCloseTo(exact.expected.r2, 6);
  });

  const noisy = check('bd-noisy');
  test(noisy.title, () => {
    const e = noisy.expected;
    const fit = fitted(readings(noisy));
    const near = (value: number, expected: number) => expect(off(value, expected)).toBeLessThan(2e-4);
    near(fit.exponent, e.n.value);
    near(fit.coefficient * hour, e.C.value);
    near(fit.exponentError, e.s_n.value);
    near(studentT(0.95, fit.points - 2), e.t_95.value);
    near((fit.exponentLimits.high - fit.exponentLimits.low) / 2, e.n_halfwidth95.value);
    near(fit.coefficientLimits.low * hour, e.C_95.value[0]);
    near(fit.coefficientLimits.high * hour, e.C_95.value[1]);
    near(fit.correlation ** 2, e.r2.value);
    near(fit.flowAt(50) * hour, e.Q50.value);
    near(fit.flowLimitsAt(50).high / fit.flowAt(50), e.Q50_factor95.value);
    near(airChanges(fit.flowAt(50), noisy.inputs.V.value) * hour, e.n50.value);
    near(fit.flowAt(10) * hour, e.Q10.value);
    near(fit.flowAt(4) * hour, e.Q4.value);
    near(effectiveLeakageArea(fit) * 1e4, e.ELA4_Cd1.value);
    near(equivalentLeakageArea(fit) * 1e4, e.EqLA10_Cd0611.value);
  });

  test('regression agrees with simple-statistics 7 on the logarithms', () => {
    const list = readings(noisy);
    const logs = list.map(r => [Math.log(r.pressure), Math.log(r.flow)]);
    const { m, b } = linearRegression(logs);
    const fit = fitted(list);
    expect(fit.exponent).toBeCloseTo(m, 12);
    expect(Math.log(fit.coefficient)).toBeCloseTo(b, 12);
    expect(Math.log(fit.flowAt(37))).toBeCloseTo(linearRegressionLine({ m, b })(Math.log(37)), 12);
    const r = sampleCorrelation(
      logs.map(l => l[0]),
      logs.map(l => l[1]),
    );
    expect(fit.correlation).toBeCloseTo(r, 12);
  });

  test("Student's t against printed tables (two-sided 95 %, from memory of any statistics text)", () => {
    const printed = { 1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 5: 2.571, 6: 2.447, 8: 2.306, 10: 2.228, 30: 2.042 };
    for (const [freedom, t] of Object.entries(printed)) expect(studentT(0.95, Number(freedom))).toBeCloseTo(t, 3);
    expect(studentT(0.99, 4)).toBeCloseTo(4.604, 3);
  });

  for (const id of ['bd-ela-ex5', 'bd-ela-ex7']) {
    const example = check(id);
    test(example.title, () => {
      const area = effectiveLeakageArea({ coefficient: example.inputs.c.value, exponent: example.inputs.n });
      expect(off(area * 1e4, example.expected.A_L.value)).toBeLessThan(0.01);
    });
  }

  const density = check('bd-density');
  test(density.title, () => {
    const { t_int, t_ext, p, n, q_m } = density.inputs;
    const air: TestAir = { direction: 'depressurize', indoor: t_int.value, outdoor: t_ext.value, barometer: p.value };
    expect(off(dryAirDensity(air.indoor, air.barometer), density.expected.rho_int.value)).toBeLessThan(5e-4);
    expect(off(dryAirDensity(air.outdoor, air.barometer), density.expected.rho_e.value)).toBeLessThan(5e-4);
    expect(off(q_m.value * leakFlowFactor(air), density.expected.q_env.value)).toBeLessThan(5e-4);
    expect(off(referenceFactor(air, n), density.expected.C_factor.value)).toBeLessThan(5e-4);
  });

  const nl = check('bd-nl');
  test(nl.title, () => {
    const house = { area: nl.inputs.ELA.value, floor: nl.inputs.A_floor.value, height: nl.inputs.H.value };
    expect(off(normalizedLeakage(house), nl.expected.NL_z04.value)).toBeLessThan(0.001);
    expect(off(normalizedLeakage(house, '119'), nl.expected.NL_z03.value)).toBeLessThan(0.001);
  });
});
