import { afterEach, describe, expect, test } from 'vitest';
import type { Analysis } from '../../../language/index.js';
import { analyze, faults, mended as mendedIn } from '../../analyze.js';

const codesOf = ({ findings }: Analysis) => findings.map(({ code }) => code);

/** The one finding of a code. */
function findingOf({ findings }: Analysis, code: string) {
  const found = findings.filter(finding => finding.code === code);
  expect(
    found.map(({ message }) => message),
    code,
  ).toHaveLength(1);
  return found[0];
}

const mended = async (text: string, code: string) => mendedIn(await analyze(text), code);

afterEach(() => expect(faults).toEqual([]));

const house = (code: string, electrical: string, rest = '') => `house example {
  electrical-code: ${code}
  storey main { area: 120 m2, height: 2.4 m, level: above-grade }
${rest}  electrical {
${electrical}
  }
}
`;

describe('an overloaded service', () => {
  test('below the smallest of the code says so, whatever the load', async () => {
    const text = house('cec-2021', '    service { rating: 60 A }');
    const { message } = findingOf(await analyze(text), 'service/overloaded');
    expect(message).toBe(
      'the service is 40 A short: CEC 2021 8-200 1)b) asks for 100 A at the least, whatever the load',
    );
    expect(await mended(text, 'service/overloaded')).toContain('rating: 100 A');
  });

  test('names the quarter more that a charger needs by the American code', async () => {
    const text = house(
      'nec-2023',
      `    service { rating: 100 A }
    panel main { bus: 100 A, main-breaker: 100 A, spaces: 20 }
    load range { kind: range, rating: 12 kW }
    evse charger { setting: 48 A }`,
    );
    const { message } = findingOf(await analyze(text), 'service/overloaded');
    expect(message).toMatch(/NEC 2023 220\.82\(A\), \d+ A with a quarter more for what lasts/);
    // Service, main breaker and bus move together.
    const upgraded = await mended(text, 'service/overloaded');
    expect(upgraded).toContain('service { rating: 125 A }');
    expect(upgraded).toContain('bus: 125 A, main-breaker: 125 A');
    expect(codesOf(await analyze(upgraded))).toEqual([]);
  });

  test('is withheld with the load that cannot be known, and says nothing false', async () => {
    const text = house(
      'cec-2021',
      `    service { rating: 100 A }
    evse charger { setting: 32 A }
    load range { kind: range, rating: 12 kilo }`,
    );
    expect(codesOf(await analyze(text)).filter(code => code.startsWith('service/'))).toEqual([]);
  });
});

describe('load before capacity', () => {
  const staged = (first: string, second: string) =>
    house(
      'cec-2024',
      `    service { rating: 100 A }
    panel main { bus: 100 A, main-breaker: 100 A, spaces: 30 }
    load range { kind: range, rating: 12 kW }
    evse charger { setting: 40 A }`,
    ).replace(/\}\n$/, `${first}${second}}\n`);
  const HEAT = '  stage heat {\n    add baseboard rooms { output: 15 kW, units: 6 }\n  }\n';
  const MORE = '  stage tub {\n    add hot-tub tub { heater: 4 kW }\n  }\n';
  const UPGRADE = '  stage upgrade {\n    change service { rating: 200 A }\n  }\n';

  test('is told once, in the stage that brings the load', async () => {
    const analysis = await analyze(staged(HEAT + MORE, UPGRADE));
    expect(findingOf(analysis, 'plan/load-before-capacity').message).toMatch(/^from this stage until upgrade/);
    expect(codesOf(analysis)).not.toContain('service/overloaded');
  });

  test('without a later capacity the service is overloaded', async () => {
    const codes = codesOf(await analyze(staged(HEAT, MORE)));
    expect(codes).toContain('service/overloaded');
    expect(codes).not.toContain('plan/load-before-capacity');
  });

  test('capacity first has neither', async () => {
    const codes = codesOf(await analyze(staged(UPGRADE, HEAT)));
    expect(codes.filter(code => /^(service|plan)\//.test(code))).toEqual([]);
  });
});

describe('credit of load management', () => {
  const managed = (code: string, credit = '') =>
    house(
      code,
      `    service { rating: 100 A }
    load range { kind: range, rating: 12 kW }
    load dryer { kind: dryer, rating: 5 kW }
    evse charger { setting: 32 A }
    load-manager manager {
      limit: 80 A${credit}
      channel first { sheds: charger, shed-order: 1 }
      channel second { sheds: strip, shed-order: 2 }
    }`,
      `  heating {
    air-handler ahu { blower: 450 W }
    auxiliary strip { output: 15 kW, role: full-backup, air-handler: ahu }
  }
`,
    );

  test.each([
    ['cec-2021', ['service/credit-not-in-edition']],
    ['cec-2024', ['service/held-by-management']],
    ['nec-2020', ['service/credit-not-in-edition']],
    ['nec-2023', ['service/held-by-management']],
    ['nec-2026', ['service/held-by-management']],
  ])('%s', async (code, expected) => {
    expect(codesOf(await analyze(managed(code))).filter(each => each.startsWith('service/'))).toEqual(expected);
  });

  test('says when the verdict hangs on a credit that needs the authority', async () => {
    const told = (text: string) =>
      analyze(text).then(analysis => findingOf(analysis, 'service/held-by-management').message);
    const asks = '; the credit for auxiliary strip needs the word of the authority';
    expect(await told(managed('cec-2024'))).toContain(asks);
    expect(await told(managed('cec-2024').replace('15 kW', '9 kW'))).not.toContain('authority');
    expect(await told(managed('cec-2024', ', credit: authority-accepts "letter of 3 March"'))).not.toContain(asks);
    expect(await told(managed('nec-2023'))).not.toContain(asks);
  });

  test('none at all leaves an overloaded service', async () => {
    const codes = codesOf(await analyze(managed('cec-2024', ', credit: none')));
    expect(codes.filter(each => each.startsWith('service/'))).toEqual(['service/overloaded']);
  });
});
