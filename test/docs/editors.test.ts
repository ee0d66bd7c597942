import { execFile } from 'node:child_process';
import path from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { folderOf, ROOT } from '../cli/harness.js';
import { onPath, tellSkipped } from '../workbench/readiness.js';
import { fence, pageText } from './page.js';

const run = promisify(execFile);
const PLACE = '/path/to/wattwright';
const FAULTY = 'house small {\n  nonsense: 3 m\n}\n';
const PATIENCE = 60_000;

/** A folder with a house in which something is found, the set-up of the README and a script that waits for the finding. */
function folderWith(language: 'lua' | 'elisp', wait: string): string {
  const setUp = fence(pageText('README.md'), language);
  expect(setUp).toContain(PLACE);
  return folderOf({ 'small.house': FAULTY, 'set-up': setUp.replace(PLACE, ROOT), wait });
}

async function printed(editor: string, args: readonly string[], folder: string): Promise<string> {
  // An editor started by a test must not find the set-up of whoever runs it.
  const env = { ...process.env, HOME: folder, PATH: `${path.dirname(process.execPath)}:${process.env['PATH']}` };
  const { stdout, stderr } = await run(editor, args, { cwd: folder, env, timeout: PATIENCE });
  return stdout + stderr;
}

const noNeovim = onPath('nvim') ? undefined : 'it is not installed';
if (noNeovim) tellSkipped('the set-up for Neovim', noNeovim);

describe.skipIf(noNeovim)('the set-up for Neovim', () => {
  const wait = `
vim.cmd('edit small.house')
vim.wait(30000, function() return #vim.diagnostic.get(0) > 0 end, 20)
for _, finding in ipairs(vim.diagnostic.get(0)) do io.stdout:write(finding.code .. '\\n') end
vim.cmd('qall!')
`;
  test('shows findings', { timeout: PATIENCE }, async () => {
    const folder = folderWith('lua', wait);
    const args = ['--headless', '--clean', '-n', '-c', 'luafile set-up', '-c', 'luafile wait'];
    expect(await printed('nvim', args, folder)).toContain('input/unknown-property');
  });
});

const noEmacs = onPath('emacs') ? undefined : 'it is not installed';
if (noEmacs) tellSkipped('the set-up for Emacs', noEmacs);

describe.skipIf(noEmacs)('the set-up for Emacs', () => {
  // In batch nobody gives commands, so that what waits for the first one is run by hand.
  const wait = `
(setq eglot-sync-connect 30)
(with-current-buffer (find-file-noselect "small.house")
  (run-hooks 'post-command-hook)
  (flymake-mode 1)
  (let ((end (+ (float-time) 30)))
    (while (and (not (flymake-diagnostics)) (< (float-time) end))
      (accept-process-output nil 0.05)
      (flymake-start)))
  (princ (format "%s %s %s\\n" major-mode comment-start (mapcar #'flymake-diagnostic-text (flymake-diagnostics)))))
`;
  test('shows findings', { timeout: PATIENCE }, async () => {
    const folder = folderWith('elisp', wait);
    const args = ['--batch', '--eval', "(progn (require 'package) (package-initialize))", '-l', 'set-up', '-l', 'wait'];
    const said = await printed('emacs', args, folder);
    expect(said).toContain('house-mode //');
    expect(said).toContain('nonsense');
  });
});
