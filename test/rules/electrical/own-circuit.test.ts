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

const CODE = 'circuit/heater-shares-air-handler';

const house = ({
  spaces = 12,
  handler = '',
  breaker = 60,
}: { readonly spaces?: number; readonly handler?: string; readonly breaker?: number } = {}) => `house example {
  electrical-code: nec-2023
  storey main { area: 120 m2, height: 2.4 m, level: above-grade }
  heating {
    air-handler ahu { blower: 450 W, on: c-ahu${handler} }
    auxiliary strip { output: 10 kW, steps: 2, role: full-backup, air-handler: ahu, on: c-ahu }
  }
  electrical {
    service { rating: 200 A }
    panel main {
      bus: 200 A, main-breaker: 200 A, spaces: ${spaces}
      circuit c-ahu { breaker: ${breaker} A, poles: 2, conductor: awg-4, length: 9 m }
    }
  }
}
`;

describe('own circuit for the strip', () => {
  test('breaker, conductor and reference come together, with the length of the way', async () => {
    const text = await mended(house(), CODE);
    expect(text).toContain('circuit c-strip { breaker: 60 A, poles: 2, conductor: awg-6, metal: copper, length: 9 m }');
    expect(text).toMatch(/auxiliary strip \{[^}]*on: c-strip/);
    expect(codesOf(await analyze(text))).toEqual([]);
  });

  test('is offered only where the panel has the spaces', async () => {
    expect(findingOf(await analyze(house({ spaces: 3 })), CODE).fixes()).toEqual([]);
    expect(findingOf(await analyze(house({ spaces: 4 })), CODE).fixes()).toHaveLength(1);
  });

  test('moves the air handler where the breaker that stays is too large for it', async () => {
    const text = await mended(house({ handler: ', mca: 5 A, mocp: 15 A' }), CODE);
    expect(text).toContain('circuit c-ahu-2 { breaker: 15 A, poles: 2, conductor: awg-14');
    expect(text).toMatch(/air-handler ahu \{[^}]*on: c-ahu-2/);
    expect(codesOf(await analyze(text))).toEqual([]);
  });

  test('stands in the stage that brings the strip', async () => {
    const staged = `house example {
  electrical-code: nec-2023
  storey main { area: 120 m2, height: 2.4 m, level: above-grade }
  heating {
    air-handler ahu { blower: 450 W, on: c-ahu }
  }
  electrical {
    service { rating: 200 A }
    panel main {
      bus: 200 A, main-breaker: 200 A, spaces: 12
      circuit c-ahu { breaker: 60 A, poles: 2, conductor: awg-4 }
    }
  }
  stage heat {
    add auxiliary strip { output: 10 kW, steps: 2, role: full-backup, air-handler: ahu, on: c-ahu }
  }
}
`;
    expect(findingOf(await analyze(staged), CODE).stages).toEqual(['heat']);
    const text = await mended(staged, CODE);
    expect(text.indexOf('add circuit c-strip in main')).toBeGreaterThan(text.indexOf('stage heat'));
    expect(codesOf(await analyze(text))).toEqual([]);
  });
});

describe('a manager that opens the shared circuit', () => {
  const managed = (channel: string) =>
    house().replace(
      '    panel main',
      `    load-manager manager { limit: 160 A
      channel heat { ${channel}, shed-order: 1 }
    }
    panel main`,
    );

  test('is told instead of the sharing', async () => {
    const codes = codesOf(await analyze(managed('sheds: strip')));
    expect(codes).toContain('management/shares-circuit');
    expect(codes).not.toContain(CODE);
  });

  test('may not shed a circuit that feeds the blower', async () => {
    const { message } = findingOf(await analyze(managed('sheds: c-ahu')), 'management/shares-circuit');
    expect(message).toContain('cuts off ahu');
  });

  test('may shed the heat stage at the thermostat', async () => {
    const codes = codesOf(await analyze(managed('sheds: strip, acts-on: thermostat-stage')));
    expect(codes).not.toContain('management/shares-circuit');
    expect(codes).toContain(CODE);
  });
});
