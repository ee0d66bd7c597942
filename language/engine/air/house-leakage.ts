import { Withheld, type Block, type House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import { sitePressure } from '../climate/site.js';
import { groundItems } from '../envelope/ground.js';
import { named } from '../envelope/named.js';
import { skin } from '../envelope/skin.js';
import { once } from '../once.js';
import type { Sheet } from '../worksheet.js';
import { fitLeakage, type LeakageFit } from './blower-door.js';
import { atReference, leakFlowFactor, withoutZeroFlow, type TestAir } from './fan-corrections.js';
import { assumedLeakage, openDuct, UNIT_LEAKAGE, type Leakage } from './leakage-area.js';

export interface TestedLeakage {
  readonly test: Block<'blower-door-test'>;
  /** At reference density. */
  readonly fit: LeakageFit;
}

/** The test that stands for the house: the one of the latest date where all have one, else the last that was added. */
export function latestTest(house: House): Block<'blower-door-test'> | undefined {
  const tests = house.envelope.blowerDoorTest;
  const dated = tests.flatMap(t => (t.date === undefined ? [] : [{ test: t, date: t.date }]));
  if (tests.length === 0 || dated.length < tests.length) return tests[tests.length - 1];
  return dated.reduce((latest, t) => (t.date >= latest.date ? t : latest)).test;
}

/** What the latest test says, corrected to reference density; undefined without a test. */
export const testedLeakage = once((house: House, sheet?: Sheet): TestedLeakage | undefined => {
  const test = latestTest(house);
  return test && { test, fit: fitOfTest(test, house, sheet) };
});

/** The fit of one test, corrected to reference density. */
export function fitOfTest(test: Block<'blower-door-test'>, house: House, sheet?: Sheet): LeakageFit {
  const air: TestAir = {
    direction: test.direction,
    indoor: test.indoor,
    outdoor: test.outdoor,
    barometer: test.barometer ?? sitePressure(house),
  };
  const factor = leakFlowFactor(air);
  const readings = withoutZeroFlow(signed(test), test.zeroFlowBefore, test.zeroFlowAfter).map(r => ({
    ...r,
    flow: r.flow * factor,
  }));
  sheet?.(() => ({
    label: `Leak flow to fan flow in ${named(test)}`,
    formula: '(t_a + 273.15) / (t_b + 273.15)',
    inputs: {
      t_a: [air.direction === 'depressurize' ? air.outdoor : air.indoor, 'temperature'],
      t_b: [air.direction === 'depressurize' ? air.indoor : air.outdoor, 'temperature'],
    },
    value: factor,
    dimension: 'number',
    source: 'ISO 9972:2015 § 6.2',
    note: `Air moved by the fan against air moved by the leaks, by their densities (${test.direction}).`,
  }));
  const fit = fitLeakage(readings, sheet);
  if ('error' in fit) throw new Withheld(`${named(test)}: ${fit.error}`);
  const corrected = atReference(fit.ok, air);
  sheet?.(() => ({
    label: 'Flow coefficient at reference density, in m³/s at 1 Pa',
    formula: 'C * (p / (287.055 * (t + 273.15)) / 1.204)^(1 - n)',
    inputs: {
      C: [fit.ok.coefficient, 'air-flow'],
      p: [air.barometer, 'pressure'],
      t: [air.direction === 'depressurize' ? air.outdoor : air.indoor, 'temperature'],
      n: [fit.ok.exponent, 'number'],
    },
    value: corrected.coefficient,
    dimension: 'air-flow',
    source: 'ISO 9972:2015 § 6.2',
    note: `95 % of the exponent between ${fit.ok.exponentLimits.low.toFixed(3)} and ${fit.ok.exponentLimits.high.toFixed(3)}.`,
  }));
  return corrected;
}

/**
 * Readings with the sign of the direction: people write pressures without it, and a zero-flow pressure is then taken off
 * the wrong way round for a depressurization.
 */
function signed(test: Block<'blower-door-test'>) {
  const sign = test.direction === 'depressurize' ? -1 : 1;
  return test.readings.map(r => ({ pressure: sign * Math.abs(r.pressure), flow: r.flow }));
}

export interface HouseLeakage extends Leakage {
  readonly rests: 'measured' | 'assumed';
  /** Whether a chimney is open, which has a column of its own in the infiltration tables. */
  readonly flue: 'flue' | 'no-flue';
}

/**
 * The leaks of the house as it is lived in: the test, and what was sealed in it and is open otherwise; without a test, the
 * leakage class of the envelope over its exposed surface, as an assumption.
 */
export function houseLeakage(house: House, sheet?: Sheet): HouseLeakage {
  const tested = testedLeakage(house, sheet);
  const flue = house.envelope.opening.some(o => o.kind === 'chimney') ? 'flue' : 'no-flue';
  if (!tested) return { ...byClass(house, sheet), rests: 'assumed', flue };
  const { fit } = tested;
  let coefficient = fit.coefficient;
  for (const opening of house.envelope.opening) {
    if (!opening.sealedInTest) continue;
    const duct = openDuct(opening.diameter);
    // Matched at 4 Pa, the pressure that weather makes: the exponents of house and duct differ.
    const added = duct.coefficient * 4 ** (duct.exponent - fit.exponent);
    coefficient += added;
    sheet?.(() => ({
      label: `${named(opening)}, sealed in the test and open otherwise`,
      formula: '0.6 * pi/4 * D^2 * sqrt(2/1.2) * 4^(0.5 - n)',
      inputs: { D: [opening.diameter, 'length'], n: [fit.exponent, 'number'] },
      value: added,
      dimension: 'air-flow',
      source: 'common practice: an open duct as an orifice of coefficient 0.6, matched at 4 Pa',
      note: 'An addition to the flow coefficient.',
    }));
  }
  return { coefficient, exponent: fit.exponent, rests: 'measured', flue };
}

function byClass(house: House, sheet?: Sheet): Leakage {
  const { unitLeakage } = house.envelope;
  if (unitLeakage === undefined)
    throw new Withheld('there is no blower-door-test, and the envelope says no unit-leakage');
  const exposed = exposedSurface(house);
  const leakage = assumedLeakage(unitLeakage, exposed);
  const unit = UNIT_LEAKAGE[unitLeakage];
  sheet?.(() => ({
    label: `Leakage area at 4 Pa of a house taken as ${unitLeakage}`,
    formula: 'A_ul * A_es',
    inputs: { A_ul: [unit, 'number'], A_es: [exposed, 'area'] },
    value: unit * exposed,
    dimension: 'area',
    source: 'ASHRAE Fundamentals 2021 ch. 17 eq. (8), Table 3: assumed, not measured',
  }));
  return leakage;
}

/** Surface through which a house leaks: all of it above ground, openings included, without the ground. */
function exposedSurface(house: House): Si<'area'> {
  const above = skin(house).reduce((sum, i) => sum + i.area, 0);
  if (above === 0 && groundItems(house).length === 0)
    throw new Withheld('the envelope has no surfaces that a leakage class could be applied to');
  return above;
}
