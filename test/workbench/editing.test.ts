import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  command,
  contains,
  hover,
  isOurFault,
  open,
  problem,
  quickFix,
  replace,
  screenshot,
  showProblems,
  squiggles,
  webview,
  word,
} from './page.js';
import { extension, missingForWorkbench, root, tellSkipped } from './readiness.js';
import { FAULT, HEADLINE, SAMPLE, WORKSHEET } from './scenario.js';
import { launchBrowser, Workbench } from './workbench.js';

const place = path.join(root, SAMPLE.folder);

const missing = missingForWorkbench();
if (missing) tellSkipped('editing a sample in the workbench', missing);

describe.skipIf(missing)('a sample in the workbench', () => {
  let workbench: Workbench;
  let browser: Browser;
  let context: BrowserContext;
  let faults: string[] = [];

  beforeAll(async () => {
    workbench = await Workbench.start({ vsix: extension, trust: 'everything' });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  });

  afterAll(async () => {
    await browser?.close();
    workbench?.stop();
  });

  beforeEach(() => {
    faults = [];
  });
  afterEach(() => expect(faults).toEqual([]));

  async function sample(): Promise<Page> {
    const page = await context.newPage();
    page.on('console', message => {
      if (isOurFault(message)) faults.push(message.text());
    });
    await open(page, workbench.url({ folder: workbench.copyOf(place), file: SAMPLE.file }), SAMPLE.tab);
    return page;
  }

  test('break it, see the squiggle and the problem, read the worksheet, apply the fix', async () => {
    const page = await sample();
    await replace(page, FAULT.from, FAULT.to);
    await squiggles(page, 'error').first().waitFor({ timeout: 30_000 });
    await showProblems(page);
    await problem(page, FAULT.message).first().waitFor();
    await screenshot(page, 'editing-broken');
    expect(await hover(page, word(page, WORKSHEET.word), WORKSHEET.text)).toContain(WORKSHEET.text);
    await screenshot(page, 'hover');
    await quickFix(page, problem(page, FAULT.message).first(), FAULT.fix);
    await squiggles(page, 'error').first().waitFor({ state: 'detached', timeout: 30_000 });
    await problem(page, FAULT.message).first().waitFor({ state: 'detached', timeout: 30_000 });
    expect(await contains(page, FAULT.from)).toBe(true);
    await screenshot(page, 'editing-mended');
    await page.close();
  });

  test('the preview shows headline results', async () => {
    const page = await sample();
    await command(page, 'Open Preview to the Side');
    const row = webview(page).getByRole('row', { name: HEADLINE.name });
    await row.first().waitFor({ timeout: 30_000 });
    expect(await row.first().innerText()).toMatch(HEADLINE.text);
    await screenshot(page, 'preview');
    await page.close();
  });
});
