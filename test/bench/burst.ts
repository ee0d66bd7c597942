import { setTimeout } from 'node:timers/promises';
import { Editor } from './editor.js';
import type { Figure } from './figure.js';
import { coldNights, requireChange, typeOutdoor } from './keystroke.js';
import { largeHouse } from './large-house.js';

const RUNS = 8;
const KEYS = 20;
const BETWEEN = 30;

/** Twenty keys, each after 30 ms, findings and lens asked for after each: from the last key to what it shows. */
export const burst = ({ lines, goal }: { lines: number; goal: string }): Figure => ({
  name: `burst.${lines}`,
  unit: 'ms',
  goal,
  async measure() {
    const editor = await Editor.start('samples');
    const text = await editor.open('samples/tamarack/large.house', largeHouse(lines));
    const temperatures = coldNights();
    let before = (await text.shown()).lenses;
    const took: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const asked = [];
      for (let key = 0; key < KEYS; key++) {
        await setTimeout(BETWEEN);
        await typeOutdoor(text, temperatures.next().value);
        asked.push(text.shown());
      }
      const began = performance.now();
      const last = (await Promise.all(asked)).at(-1)!;
      took.push(performance.now() - began);
      requireChange(before, last.lenses);
      before = last.lenses;
    }
    await editor.stop();
    return took;
  },
});
