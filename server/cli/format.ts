import { writeFile } from 'node:fs/promises';
import { applied, format as changesOf } from '../../language/grammar/index.js';
import { amount } from '../report/findings-text.js';
import { EXIT, reasonOf } from './exit.js';
import { Faults } from './faults.js';
import { readInputs, type Input, type Unread } from './inputs.js';
import { complainOfUnread } from './output.js';
import type { Terminal } from './terminal.js';

export interface FormatOptions {
  readonly check?: true;
  readonly stdinFilename?: string;
}

/** Stands in a text for bytes that are no UTF-8. */
const LOST = '\ufffd';

/** Sets files in order: indentation, single blanks, aligned tables. With `--check` it lists those that are not. */
export async function format(paths: readonly string[], options: FormatOptions, terminal: Terminal): Promise<number> {
  const faults = new Faults(terminal);
  const { inputs, unread } = await readInputs(paths, terminal, options);
  const unwritten: Unread[] = [];
  let [untidy, written] = [0, 0];
  for (const input of inputs) {
    if (input.text.includes(LOST)) {
      unwritten.push({ shown: input.shown, reason: 'it is not all UTF-8, and what is not would be lost' });
      if (input.piped && !options.check) terminal.print(input.text);
      continue;
    }
    const text = inOrder(input, faults);
    if (text === undefined) continue;
    const differs = text !== input.text;
    if (differs) untidy++;
    if (input.piped && !options.check) terminal.print(text);
    else if (differs && options.check) terminal.print(`${input.shown}\n`);
    else if (differs)
      await writeFile(input.file, text).then(
        () => {
          written++;
          terminal.print(`${input.shown}\n`);
        },
        (error: unknown) => unwritten.push({ shown: input.shown, reason: reasonOf(error) }),
      );
  }
  if (!inputs.some(i => i.piped))
    terminal.complain(
      options.check
        ? `${amount(untidy, 'file')} of ${inputs.length} to be set in order\n`
        : `${amount(written, 'file')} of ${inputs.length} set in order\n`,
    );
  complainOfUnread(unread, terminal);
  for (const { shown, reason } of unwritten) terminal.complain(`wattwright: ${shown} is left as it is: ${reason}\n`);
  if (unread.length || unwritten.length) return faults.close(EXIT.wrongUse);
  return faults.close(options.check && untidy ? EXIT.findings : EXIT.clean);
}

/** A fault in one file leaves it as it is, and the others are done. */
function inOrder({ text, shown }: Input, faults: Faults): string | undefined {
  try {
    return applied(text, changesOf(text));
  } catch (error) {
    faults.add(error, shown);
    return undefined;
  }
}
