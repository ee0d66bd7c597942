import type { Figure } from './figure.js';
import { timed } from './timed.js';

/** Additions in one run. */
const TURNS = 10_000_000;

/** A loop that needs the processor alone: where it varies, the machine is busy and the other figures vary as well. */
export const reference: Figure = {
  name: 'reference.loop',
  unit: 'ms',
  goal: 'steady: p95 near the median',
  measure: () =>
    timed('reference.loop', 100, () => {
      const began = performance.now();
      let sum = 0;
      for (let i = 0; i < TURNS; i++) sum = (sum + i) | 0;
      const took = performance.now() - began;
      // The sum of 0 … n − 1 is n (n − 1) / 2; asked for, so that the loop is not left out.
      if (sum !== Number(BigInt.asIntN(32, (BigInt(TURNS) * BigInt(TURNS - 1)) / 2n)))
        throw new Error('the loop is wrong');
      return Promise.resolve(took);
    }),
};
