import { execFile } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { onPath, root, tellSkipped } from '../workbench/readiness.js';
import { FAULT, SAMPLE, WORKSHEET } from '../workbench/scenario.js';

const run = promisify(execFile);
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'ww-'));
  cpSync(path.join(root, SAMPLE.folder), folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** What an editor said of the scenario in its script, as that prints it. */
async function scenario(editor: string, args: readonly string[]): Promise<Record<string, unknown>> {
  const env = {
    ...process.env,
    HOME: folder,
    HOUSE_NODE: process.execPath,
    HOUSE_SERVER: path.join(root, 'dist/server/lsp.js'),
    HOUSE_FILE: path.join(folder, SAMPLE.file),
    BREAK_FROM: FAULT.from,
    BREAK_TO: FAULT.to,
    FINDING: FAULT.message,
    FIX: FAULT.fix,
    HOVER_AT: WORKSHEET.at,
  };
  const { stdout } = await run(editor, args, { env, cwd: import.meta.dirname, timeout: 100_000 });
  const report = stdout.split('\n').find(line => line.startsWith('{'));
  if (!report) throw new Error(`${editor} reported nothing: ${stdout}`);
  return JSON.parse(report);
}

const noNeovim = onPath('nvim') ? undefined : 'it is not installed';
if (noNeovim) tellSkipped('Neovim', noNeovim);

describe.skipIf(noNeovim)('Neovim', () => {
  test('shows the finding and the worksheet, and applies the fix', async () => {
    const said = await scenario('nvim', ['--headless', '--clean', '-n', '-c', 'luafile neovim.lua']);
    expect(said['message']).toContain(FAULT.message);
    expect(said['line']).toContain(FAULT.to);
    expect(said['hover']).toContain(WORKSHEET.text);
    expect(said['fix']).toContain(FAULT.fix);
    expect(said['mended']).toContain(FAULT.from);
  });
});

const noEmacs = onPath('emacs') ? undefined : 'it is not installed';
if (noEmacs) tellSkipped('Emacs', noEmacs);

describe.skipIf(noEmacs)('Emacs', () => {
  test('shows the finding and the worksheet', async () => {
    const said = await scenario('emacs', ['--batch', '-l', 'emacs.el']);
    expect(said['message']).toContain(FAULT.message);
    expect(said['line']).toContain(FAULT.to);
    expect(said['hover']).toContain(WORKSHEET.text);
  });
});
