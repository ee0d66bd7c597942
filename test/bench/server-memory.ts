import { readFileSync } from 'node:fs';
import { globSync } from 'tinyglobby';
import { Editor } from './editor.js';
import type { Figure } from './figure.js';
import { coldNights, requireChange, typeOutdoor } from './keystroke.js';

const RUNS = 3;
const KEYS = 100;

/** Memory of the server with every sample open, after some typing in one of them. */
export const memory: Figure = {
  name: 'server.memory',
  unit: 'MB',
  goal: 'p95 150',
  async measure() {
    const taken: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const editor = await Editor.start('samples');
      const open = new Map<string, Awaited<ReturnType<Editor['open']>>>();
      for (const file of globSync('samples/**/*.house')) {
        const text = await editor.open(file, readFileSync(file, 'utf8'));
        open.set(file, text);
        await text.shown();
      }
      const typed = open.get('samples/tamarack/tamarack.house');
      if (!typed) throw new Error('the sample to type in is missing');
      const temperatures = coldNights();
      let before = (await typed.shown()).lenses;
      for (let key = 0; key < KEYS; key++) {
        await typeOutdoor(typed, temperatures.next().value - 3);
        const { lenses } = await typed.shown();
        requireChange(before, lenses);
        before = lenses;
      }
      taken.push(editor.memory());
      await editor.stop();
    }
    return taken;
  },
};
