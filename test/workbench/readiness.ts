import { accessSync, constants, existsSync } from 'node:fs';
import path from 'node:path';

/** Where things lie, from the project's root. */
export const root = path.resolve(import.meta.dirname, '../..');
export const editorFolder = path.join(root, 'test/workbench/node_modules/code-server/lib/vscode');
export const extension = path.join(root, 'dist/wattwright.vsix');
export const screenshots = path.join(root, 'dist/screenshots');
export const chromium = onPath('chromium') ?? onPath('chromium-browser');

/** Why the tests in the workbench cannot run here; undefined when they can. */
export function missingForWorkbench(): string | undefined {
  if (!chromium) return 'Chromium is not installed';
  if (!existsSync(path.join(editorFolder, 'node_modules'))) return 'the workbench is not installed in test/workbench';
  return undefined;
}

/** Tells plainly that tests are left out and how to get what they need; where CI runs nothing may be left out. */
export function tellSkipped(what: string, why: string): void {
  const help = `${what}, because ${why}. To get what is missing: npm run workbench`;
  if (process.env['CI']) throw new Error(`Cannot test ${help}`);
  process.stderr.write(`\nSkipped: ${help}\n`);
}

export function onPath(command: string): string | undefined {
  const places = (process.env.PATH ?? '').split(path.delimiter).map(folder => path.join(folder, command));
  return places.find(isExecutable);
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
