import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Session, type Analysis } from '../../language/index.js';
import type { Tier } from '../../language/results/index.js';
import { shownFrom, type Input } from './inputs.js';
import { addressOf, hostOf, type Fault } from './project.js';
import type { Terminal } from './terminal.js';

export interface Analyzed {
  readonly input: Input;
  readonly analysis: Analysis;
}

/** Analyzes every input, one session for each project. A fault in one of them leaves the others as they are. */
export async function analyzed(
  inputs: readonly Input[],
  terminal: Terminal,
  { upto, today, fault }: { readonly upto: Tier; readonly today: string; readonly fault: Fault },
): Promise<readonly Analyzed[]> {
  const sessions = new Map<string, Session>();
  const done: Analyzed[] = [];
  for (const [i, input] of inputs.entries()) {
    if (terminal.watched && inputs.length > 1)
      terminal.complain(`\r\u001b[K${i + 1} of ${inputs.length} ${input.shown}`);
    let session = sessions.get(input.project);
    if (!session) sessions.set(input.project, (session = new Session(hostOf(input.project, fault))));
    const uri = addressOf(input.file);
    session.update(uri, input.text);
    try {
      const analysis = await session.analyze(uri, { upto, today });
      if (!analysis) throw new Error('the analysis gave nothing for a text that was read');
      done.push({ input, analysis });
    } catch (error) {
      fault(error, input.shown);
    }
  }
  if (terminal.watched && inputs.length > 1) terminal.complain('\r\u001b[K');
  return done;
}

/** How the files of these analyses are shown, by their address: standard input by its own name. */
export function shownPaths(all: readonly Analyzed[], terminal: Terminal): (uri: string) => string {
  const piped = new Map(all.filter(a => a.input.piped).map(a => [a.analysis.uri, a.input.shown]));
  return uri => {
    const known = piped.get(uri);
    if (known !== undefined) return known;
    // The built-in library is no file of the project.
    if (!uri.startsWith('file:')) return uri.slice(uri.indexOf(':') + 1);
    return shownFrom(terminal.folder, path.normalize(fileURLToPath(uri)));
  };
}

/** The text of any file that an analysis looked at. */
export function textsOf(all: readonly Analyzed[]): (uri: string) => string | undefined {
  const texts = new Map<string, string>();
  for (const { analysis } of all) for (const [uri, { syntax }] of analysis.files) texts.set(uri, syntax.text);
  return uri => texts.get(uri);
}
