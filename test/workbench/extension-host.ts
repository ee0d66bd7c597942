import { build } from 'esbuild';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { root } from './readiness.js';
import type { Workbench } from './workbench.js';

/** What the suite said from inside, line by line, and how it ended: 0 is passed. */
export interface HostRun {
  readonly code: number;
  readonly said: readonly string[];
}

/** Runs a suite inside the extension host, against the extension in the project's own folder and with the real API. */
export async function runInExtensionHost(
  workbench: Workbench,
  page: Page,
  suite: string,
  folder: string,
): Promise<HostRun> {
  const tests = path.join(root, 'dist/test', `${path.basename(suite, '.ts')}.cjs`);
  await build({
    entryPoints: [suite],
    outfile: tests,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    external: ['vscode'],
  });
  const said: string[] = [];
  await page.exposeFunction('codeAutomationLog', (_kind: string, words: unknown[]) =>
    said.push(words.map(String).join(' ')),
  );
  let end: (code: number) => void = () => undefined;
  const ended = new Promise<number>(resolve => (end = resolve));
  await page.exposeFunction('codeAutomationExit', end);
  await page.goto(
    workbench.url({
      folder,
      payload: [
        ['extensionDevelopmentPath', workbench.remote(root)],
        ['extensionTestsPath', workbench.remote(tests)],
      ],
    }),
  );
  return { code: await ended, said };
}
