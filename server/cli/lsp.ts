import { createRequire } from 'node:module';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { WrongUse } from './exit.js';

/** Starts the language server, which is a program of its own beside this one; it ends when its editor does. */
export function lsp(): Promise<never> {
  const server = path.join(path.dirname(fileURLToPath(import.meta.url)), 'lsp.js');
  if (!existsSync(server)) throw new WrongUse(`the language server is missing from this installation: ${server}`);
  // Node's own streams are the default of the server: the word only makes it certain.
  if (!process.argv.includes('--stdio')) process.argv.push('--stdio');
  // From here on it is the server that judges its faults.
  process.removeAllListeners('uncaughtException');
  createRequire(import.meta.url)(server);
  return new Promise(() => undefined);
}
