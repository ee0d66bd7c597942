import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { open, replace, screenshot, squiggles } from './page.js';
import { extension, missingForWorkbench, root, tellSkipped } from './readiness.js';
import { FAULT, SAMPLE } from './scenario.js';
import { launchBrowser, Workbench } from './workbench.js';

const missing = missingForWorkbench();
if (missing) tellSkipped('restricted mode in the workbench', missing);

describe.skipIf(missing)('in a folder that nobody has trusted', () => {
  let workbench: Workbench;
  let browser: Browser;

  beforeAll(async () => {
    workbench = await Workbench.start({ vsix: extension, trust: 'asks' });
    browser = await launchBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    workbench?.stop();
  });

  test('the house is checked all the same', async () => {
    const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
    const folder = workbench.copyOf(path.join(root, SAMPLE.folder));
    await open(page, workbench.url({ folder, file: SAMPLE.file }), SAMPLE.tab);
    await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor({ timeout: 30_000 });
    await replace(page, FAULT.from, FAULT.to);
    await squiggles(page, 'error').first().waitFor({ timeout: 30_000 });
    expect(await squiggles(page, 'error').count()).toBeGreaterThan(0);
    await screenshot(page, 'restricted');
  });
});
