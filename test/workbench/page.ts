import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { ConsoleMessage, FrameLocator, Locator, Page } from 'playwright-core';
import { screenshots } from './readiness.js';

/** Patience for whatever starts a process or a view, in ms: shared machines are slow at times. */
const PATIENCE = 60_000;

/** Opens the workbench and waits until the tab of the file is there. */
export async function open(page: Page, url: string, tab: string): Promise<void> {
  await page.goto(url);
  await page.locator('.tab', { hasText: tab }).waitFor({ timeout: PATIENCE });
  await page.locator('.view-line').first().waitFor({ timeout: PATIENCE });
}

/** Runs a command as a user does: by its title in the palette. */
export async function command(page: Page, title: string): Promise<void> {
  await page.keyboard.press('F1');
  const input = page.locator('.quick-input-widget:visible input').first();
  await input.waitFor();
  await input.fill(`>${title}`);
  await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first().waitFor({ timeout: PATIENCE });
  await page.keyboard.press('Enter');
}

export function squiggles(page: Page, kind: 'error' | 'warning' | 'info'): Locator {
  return page.locator(`.monaco-editor .squiggly-${kind}`);
}

/** Row of the Problems view with this text. */
export function problem(page: Page, text: string | RegExp): Locator {
  return page.locator('.markers-panel .monaco-list-row', { hasText: text });
}

export async function showProblems(page: Page): Promise<void> {
  await command(page, 'Problems: Focus on Problems View');
  await page.locator('.markers-panel').waitFor({ timeout: PATIENCE });
}

/**
 * Coloured piece of a line with exactly this text.
 * The editor writes its spaces as no-break spaces, so a piece is best named by one word.
 */
export function word(page: Page, text: string): Locator {
  return page.locator('.monaco-editor .view-line span span', { hasText: new RegExp(`^\\s*${text}\\s*$`) }).first();
}

/** Replaces the first occurrence of `from` in the open editor, by its find-and-replace. */
export async function replace(page: Page, from: string, to: string): Promise<void> {
  await page
    .locator('.monaco-editor .view-lines')
    .first()
    .click({ position: { x: 5, y: 5 } });
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Control+h');
  const widget = page.locator('.find-widget.visible');
  await widget.locator('.find-part textarea').fill(from);
  await widget.locator('.replace-part textarea').fill(to);
  await widget.locator('.find-part .matchesCount', { hasText: /of/ }).waitFor();
  await widget.locator('.replace-part textarea').press('Enter');
  // The first Enter goes to the match, the second replaces it.
  if (!(await contains(page, to))) await widget.locator('.replace-part textarea').press('Enter');
  await page.keyboard.press('Escape');
}

/** Text of the hover over a place; asks again, since a hover needs a real movement of the mouse. */
export async function hover(page: Page, place: Locator, expected: string | RegExp): Promise<string> {
  const shown = page.locator('.monaco-hover:not(.hidden)', { hasText: expected }).first();
  for (let tries = 1; ; tries++) {
    await page.mouse.move(1, 1);
    await place.hover();
    try {
      await shown.waitFor({ timeout: 5_000 });
      return (await shown.innerText()).trim();
    } catch (fault) {
      if (tries === 6) throw fault;
    }
  }
}

/** Applies the quick fix with this title to a row of the Problems view, which leads to its place in the text. */
export async function quickFix(page: Page, found: Locator, title: string | RegExp): Promise<void> {
  await found.dblclick();
  const row = page.locator('.action-widget .monaco-list-row', { hasText: title }).first();
  for (let tries = 1; ; tries++) {
    await page.keyboard.press('Control+.');
    try {
      await row.waitFor({ timeout: 5_000 });
      break;
    } catch (fault) {
      if (tries === 6) throw fault;
      await page.keyboard.press('Escape');
    }
  }
  // By keyboard, as the menu takes no pointer while it is being laid out.
  while (!/focused/.test((await row.getAttribute('class')) ?? '')) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
}

/** An error in the window's console that names our extension or a policy its page ran into; the workbench has others of its own. */
export function isOurFault(message: ConsoleMessage): boolean {
  if (message.type() !== 'error') return false;
  return /wattwright|dist\/client\/preview/i.test(message.text());
}

/** Content of the one web view that is open. */
export function webview(page: Page): FrameLocator {
  return page.frameLocator('iframe.webview.ready').frameLocator('#active-frame');
}

export async function contains(page: Page, text: string): Promise<boolean> {
  const shown = await page.locator('.monaco-editor .view-lines').first().innerText();
  return shown.replaceAll('\u00a0', ' ').includes(text);
}

export async function screenshot(page: Page, name: string): Promise<void> {
  mkdirSync(screenshots, { recursive: true });
  await page.screenshot({ path: path.join(screenshots, `${name}.png`) });
}
