import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { reasonOf, WrongUse } from './exit.js';
import type { Unread } from './inputs.js';
import type { Terminal } from './terminal.js';

export interface Delivery {
  /** A file that takes what would have been printed. */
  readonly output?: string;
}

/** Prints what a command made, or writes it to the file that was asked for and prints the short form. */
export async function deliver(text: string, short: string, { output }: Delivery, terminal: Terminal): Promise<void> {
  if (output === undefined) {
    terminal.print(text);
    return;
  }
  try {
    await writeFile(path.resolve(terminal.folder, output), text);
  } catch (error) {
    throw new WrongUse(`${output} cannot be written: ${reasonOf(error)}`);
  }
  terminal.print(short);
}

export function complainOfUnread(unread: readonly Unread[], terminal: Terminal): void {
  for (const { shown, reason } of unread) terminal.complain(`wattwright: ${shown} is not read: ${reason}\n`);
}
