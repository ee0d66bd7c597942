import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runInExtensionHost } from './extension-host.js';
import { missingForWorkbench, root, tellSkipped } from './readiness.js';
import { SAMPLE } from './scenario.js';
import { launchBrowser, Workbench } from './workbench.js';

const missing = missingForWorkbench();
if (missing) tellSkipped('the extension in its host', missing);

describe.skipIf(missing)('the extension in its host', () => {
  let workbench: Workbench;
  let browser: Browser;

  beforeAll(async () => {
    workbench = await Workbench.start({ trust: 'everything' });
    browser = await launchBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    workbench?.stop();
  });

  test('passes its own suite', async () => {
    const suite = path.join(import.meta.dirname, 'suite/editor-api.ts');
    const folder = workbench.copyOf(path.join(root, SAMPLE.folder));
    const { code, said } = await runInExtensionHost(workbench, await browser.newPage(), suite, folder);
    expect(said.filter(line => line.startsWith('failed: '))).toEqual([]);
    expect(said.filter(line => line.startsWith('passed: ')).length).toBe(6);
    expect(code).toBe(0);
  });
});
