import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Figure } from './figure.js';

const PROGRAM = 'dist/server/cli.js';
const PAIRS = 25;

/** `check` of one house from a cold process, as a ratio to Node with an empty script; each check is of another text. */
export const coldCheck: Figure = {
  name: 'cold-check',
  unit: 'ratio',
  goal: 'median 4',
  measure() {
    if (!existsSync(PROGRAM)) throw new Error(`There is no ${PROGRAM}; run npm run build before.`);
    const folder = mkdtempSync(path.join(tmpdir(), 'bench-'));
    try {
      cpSync('samples', folder, { recursive: true });
      const empty = path.join(folder, 'empty.js');
      writeFileSync(empty, '');
      const house = path.join(folder, 'tamarack/tamarack.house');
      const text = readFileSync(house, 'utf8');
      const ratios: number[] = [];
      for (let pair = 0; pair <= PAIRS; pair++) {
        // The milder of the two design temperatures is told, so that what is checked is known to be read.
        const celsius = 25 + (pair % 7);
        writeFileSync(house, changed(text, celsius));
        const check = run(PROGRAM, 'check', house);
        if (!check.told.includes(`at −${celsius} °C the load is`))
          throw new Error(`the check told nothing of −${celsius} °C: ${check.told}`);
        // The first pair fills the caches of the disk.
        if (pair > 0) ratios.push(check.ms / run(empty).ms);
      }
      return Promise.resolve(ratios);
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

function changed(text: string, celsius: number): string {
  const next = text.replace(
    'outdoor: -31 °C, indoor: 21 °C, cooling',
    `outdoor: -${celsius} °C, indoor: 21 °C, cooling`,
  );
  if (next === text && celsius !== 31) throw new Error('the sample no longer has its milder design temperature');
  return next;
}

function run(...args: readonly string[]): { readonly ms: number; readonly told: string } {
  const began = performance.now();
  const { stdout, error } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  const ms = performance.now() - began;
  if (error) throw error;
  return { ms, told: stdout.replace(/\s+/g, ' ') };
}
