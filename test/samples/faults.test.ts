import { expect, test } from 'vitest';
import { addressOf, analyze, textOf } from './read-sample.js';

/** What the faulty sample has to show, whatever its baseline is updated to. */
const SHOWN = [
  ...['auxiliary-undersized', 'table-too-short', 'lockout-gap', 'no-heat', 'design-milder-than-code'].map(
    n => `heat/${n}`,
  ),
  ...[
    'equipment-undersized',
    'backup-too-small',
    'fossil-left',
    'load-differs-from-audit',
    'auxiliary-beyond-need',
  ].map(n => `heat/${n}`),
  ...['orphaned-flue', 'open-duct-left', 'test-does-not-fit', 'ventilation-below-standard'].map(n => `air/${n}`),
  ...['overloaded', 'held-by-management', 'credit-not-in-edition'].map(n => `service/${n}`),
  ...['load-before-capacity', 'circuit-after-load', 'not-measured-first', 'shell-after-heat', 'gas-still-used'].map(
    n => `plan/${n}`,
  ),
  ...['overloaded', 'breaker-not-standard', 'conductor-too-small', 'continuous-load', 'above-maximum-breaker'].map(
    n => `circuit/${n}`,
  ),
  ...['heater-shares-air-handler', 'charger-setting', 'voltage-drop'].map(n => `circuit/${n}`),
  ...['shares-circuit', 'sheds-heat-first', 'limit-too-high'].map(n => `management/${n}`),
  'panel/spaces',
  ...['unknown-block', 'unknown-property', 'unknown-name', 'unknown-unit', 'unknown-choice', 'missing-property'].map(
    n => `input/${n}`,
  ),
  ...['wrong-dimension', 'implausible', 'unit-slip', 'ragged-row', 'currency', 'impossible'].map(n => `input/${n}`),
  ...['expect/broken', 'accept/unused', 'accept/expired', 'accept/no-reason', 'accept/unknown-code', 'syntax/number'],
];

const found = async () => (await analyze(addressOf('faults'))).findings;

test.each(SHOWN)('%s is shown', async code => {
  expect((await found()).map(f => f.code)).toContain(code);
});

test('every comment that tells of a fault has a finding beside it', async () => {
  const lines = textOf('faults').split('\n');
  const lineOf = (offset: number) => textOf('faults').slice(0, offset).split('\n').length - 1;
  const told = (await found()).flatMap(f => [f, ...f.related]).map(place => lineOf(place.from));
  const comments = lines.flatMap((line, i) => (/^ +\/\/ /.test(line) ? [i] : []));
  expect(comments.length).toBeGreaterThan(40);
  const silent = comments.filter(i => !told.some(at => at >= i - 5 && at <= i + 8));
  expect(silent.map(i => lines[i])).toEqual([]);
});

test('damage in one house keeps nothing of another from being told', async () => {
  const houses = (await analyze(addressOf('faults'))).houses.map(h => h.built.declared);
  const findings = await found();
  for (const house of houses) {
    const within = findings.filter(f => f.from >= house.span.from && f.to <= house.span.to);
    expect(within.length, house.name).toBeGreaterThan(0);
  }
});
