import { existsSync } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { reasonOf, WrongUse } from './exit.js';
import { decode, projectOf, textOf } from './project.js';
import type { Terminal } from './terminal.js';

/** A text to work on. */
export interface Input {
  /** Absolute; for standard input the name that it was given. */
  readonly file: string;
  /** As people see it: from the current folder, with `/`. */
  readonly shown: string;
  readonly text: string;
  /** The folder beyond which nothing is read. */
  readonly project: string;
  readonly piped?: true;
}

/** A path that was named or found and cannot be read: the rest is done, and the program ends as with wrong use. */
export interface Unread {
  readonly shown: string;
  readonly reason: string;
}

export interface Inputs {
  readonly inputs: readonly Input[];
  readonly unread: readonly Unread[];
}

const HOUSE = '.house';
const STANDARD_INPUT = '-';
const GLOB = /[*?[\]{}]|!\(/;

/** Reads what a command line names: files, folders with all houses below them, patterns, `-`. No path is the current folder. */
export async function readInputs(
  paths: readonly string[],
  terminal: Terminal,
  { stdinFilename }: { readonly stdinFilename?: string | undefined },
): Promise<Inputs> {
  const { folder } = terminal;
  const inputs = new Map<string, Input>();
  const unread: Unread[] = [];
  const show = (file: string) => shownFrom(folder, file);
  const take = async (file: string, named: string): Promise<void> => {
    if (inputs.has(file)) return;
    try {
      inputs.set(file, { file, shown: show(file), text: await textOf(file), project: projectOf(file, named) });
    } catch (error) {
      unread.push({ shown: show(file), reason: reasonOf(error) });
    }
  };
  if (stdinFilename !== undefined && !paths.includes(STANDARD_INPUT))
    throw new WrongUse('--stdin-filename names what comes by standard input: add - as a path');

  for (const given of paths.length ? paths : ['.']) {
    if (given === STANDARD_INPUT) {
      const file = path.resolve(folder, stdinFilename ?? `standard-input${HOUSE}`);
      const shown = stdinFilename === undefined ? '<stdin>' : show(file);
      const text = decode(await terminal.input());
      inputs.set(file, { file, shown, text, project: projectOf(file, path.dirname(file)), piped: true });
      continue;
    }
    const at = path.resolve(folder, given);
    if (GLOB.test(given) && !existsSync(at)) {
      const found = await matching(given, folder);
      if (!found.length) unread.push({ shown: given, reason: 'no file matches this pattern' });
      for (const file of found) await take(file, path.dirname(file));
      continue;
    }
    const isFolder = await stat(at).then(
      s => s.isDirectory(),
      () => false,
    );
    if (!isFolder) {
      await take(at, path.dirname(at));
      continue;
    }
    const before = inputs.size + unread.length;
    for await (const found of housesBelow(at, show, unread)) await take(found, at);
    if (inputs.size + unread.length === before && !alreadyTaken(at, inputs))
      unread.push({ shown: given, reason: `there is no ${HOUSE} file in it` });
  }
  return { inputs: [...inputs.values()], unread };
}

/** Every house file below a folder, in the order of names; packages and hidden folders left out, links not followed. */
async function* housesBelow(
  folder: string,
  show: (file: string) => string,
  unread: Unread[],
): AsyncGenerator<string, void, undefined> {
  const entries = await readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
    unread.push({ shown: show(folder), reason: reasonOf(error) });
    return [];
  });
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const at = path.join(folder, entry.name);
    if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
    if (entry.isDirectory()) yield* housesBelow(at, show, unread);
    else if (entry.isFile() && entry.name.endsWith(HOUSE)) yield at;
  }
}

async function matching(pattern: string, folder: string): Promise<string[]> {
  const { glob } = await import('tinyglobby');
  const found = await glob(pattern.replaceAll('\\', '/'), {
    cwd: folder,
    absolute: true,
    followSymbolicLinks: false,
    ignore: ['**/node_modules/**'],
    expandDirectories: false,
  });
  return found.map(file => path.resolve(file)).sort();
}

const alreadyTaken = (folder: string, inputs: ReadonlyMap<string, Input>): boolean =>
  [...inputs.keys()].some(file => file.startsWith(folder + path.sep));

/** A path as it is written in messages: from the current folder, with `/` on every system. */
export const shownFrom = (folder: string, file: string): string =>
  (path.relative(folder, file) || '.').split(path.sep).join('/');
