import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  contains,
  hover,
  open,
  problem,
  quickFix,
  replace,
  screenshot,
  showProblems,
  squiggles,
  webview,
  word,
  command,
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

  beforeAll(async () => {
    workbench = await Workbench.start({ vsix: extension, trust: 'everything' });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  });

  afterAll(async () => {
    await browser?.close();
    workbench?.stop();
  });

  async function sample(): Promise<Page> {
    const page = await context.newPage();
    await open(page, workbench.url({ folder: workbench.copyOf(place), file: SAMPLE.file }), SAMPLE.file);
    return page;
  }

  test('break it, see the squiggle and the problem, apply the fix', async () => {
    const page = await sample();
    await replace(page, FAULT.from, FAULT.to);
    await squiggles(page, 'error').first().waitFor({ timeout: 30_000 });
    await showProblems(page);
    await problem(page, FAULT.message).first().waitFor();
    await screenshot(page, 'editing-broken');
    await quickFix(page, problem(page, FAULT.message).first(), FAULT.fix);
    await squiggles(page, 'error').first().waitFor({ state: 'detached', timeout: 30_000 });
    expect(await contains(page, FAULT.from)).toBe(true);
    expect(await problem(page, FAULT.message).count()).toBe(0);
    await screenshot(page, 'editing-mended');
    await page.close();
  });

  test('hover shows the worksheet', async () => {
    const page = await sample();
    expect(await hover(page, word(page, WORKSHEET.word), WORKSHEET.text)).toContain(WORKSHEET.text);
    await screenshot(page, 'hover');
    await page.close();
  });

  test('the preview shows headline results and asks for nothing from outside', async () => {
    const page = await sample();
    const refused: string[] = [];
    page.on('console', message => {
      if (/Content Security Policy/.test(message.text()) && /preview/.test(message.text()))
        refused.push(message.text());
    });
    await command(page, 'Open Preview to the Side');
    const row = webview(page).getByRole('row', { name: HEADLINE.name });
    await row.first().waitFor({ timeout: 30_000 });
    expect(await row.first().innerText()).toMatch(HEADLINE.text);
    expect(refused).toEqual([]);
    await screenshot(page, 'preview');
    await page.close();
  });
});
