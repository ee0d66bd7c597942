import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { run } from '../../server/cli/program.js';
import type { Terminal } from '../../server/cli/terminal.js';
import { plain } from '../../server/report/paint.js';

export const ROOT = path.resolve(import.meta.dirname, '../..');
const TODAY = '2026-06-01';

export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line within this process, at 80 columns, on a fixed day. */
export async function wattwright(
  args: readonly string[],
  given: Partial<Terminal> & { readonly piped?: string | Buffer } = {},
): Promise<Ran> {
  let [out, err] = ['', ''];
  const terminal: Terminal = {
    folder: ROOT,
    today: TODAY,
    columns: 80,
    paint: plain,
    watched: false,
    debug: false,
    input: () => Promise.resolve(Buffer.from(given.piped ?? '')),
    print: text => void (out += text),
    complain: text => void (err += text),
    ...given,
  };
  const exit = await run(args, terminal);
  return { exit, out, err };
}

/** A folder with these files, gone when the test is over. */
export function folderOf(files: Readonly<Record<string, string | Buffer>>): string {
  const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'wattwright-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  return folder;
}

/** A house in which nothing is found. */
export const CLEAN = `house clean {
  storey main { area: 92 m2, height: 2.4 m, level: above-grade }
}
`;

/** A house with one error, one warning. */
export const FAULTY = `house faulty {
  storey main { level: above-grad, area: 92 m2, height: 2.4 m }
  envelope { wall west { area: 12000 m2, r-value: 2.1 RSI } }
}
`;
