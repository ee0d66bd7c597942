import { Editor, type OpenText } from './editor.js';
import type { Figure } from './figure.js';
import { largeHouse } from './large-house.js';
import { timed } from './timed.js';

const RUNS = { 300: 300, 3000: 40 } as const;

/** From a key to the findings and the lens of what it wrote. It changes the outdoor design temperature, and so every stage. */
export const keystroke = ({ lines, goal }: { lines: keyof typeof RUNS; goal: string }): Figure => ({
  name: `keystroke.${lines}`,
  unit: 'ms',
  goal,
  async measure() {
    const editor = await Editor.start('samples');
    const text = await editor.open('samples/tamarack/large.house', largeHouse(lines));
    const temperatures = coldNights();
    let before = (await text.shown()).lenses;
    const took = await timed(this.name, RUNS[lines], async () => {
      const began = performance.now();
      await typeOutdoor(text, temperatures.next().value);
      const { lenses } = await text.shown();
      const ms = performance.now() - began;
      requireChange(before, lenses);
      before = lenses;
      return ms;
    });
    await editor.stop();
    return took;
  },
});

/** Outdoor temperatures without end, no two alike next to each other. */
export function* coldNights(): Generator<number, never> {
  for (let i = 0; ; i++) yield -32 - (i % 7);
}

export const typeOutdoor = (text: OpenText, celsius: number): Promise<void> =>
  text.type('design code from published {\n    outdoor: ', String(celsius));

/** The load changes in every stage, so every lens must. */
export function requireChange(before: readonly string[], now: readonly string[]): void {
  if (now.length < 6 || now.length !== before.length)
    throw new Error(`there are ${now.length} lenses, not one for each stage`);
  const stale = now.find((lens, i) => lens === before[i]);
  if (stale !== undefined) throw new Error(`the lens did not change: ${stale}`);
}
