import { existsSync, realpathSync } from 'node:fs';
import { open } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { SETTINGS_FILE, type Host } from '../../language/index.js';
import { LARGEST_FILE } from '../../language/grammar/index.js';
import { library } from '../../language/library/index.js';

/**
 * The folder of a project, which is all that its houses may read: the repository around a file, else the outermost folder
 * with a settings file, else the folder that was named or in which the file lies.
 */
export function projectOf(file: string, named: string): string {
  let settings: string | undefined;
  for (let folder = path.dirname(file); ; folder = path.dirname(folder)) {
    if (existsSync(path.join(folder, '.git'))) return folder;
    if (existsSync(path.join(folder, SETTINGS_FILE))) settings = folder;
    if (folder === path.dirname(folder)) return settings ?? named;
  }
}

/** What is told of a fault of ours. */
export type Fault = (error: unknown, what: string) => void;

/** Reads the files of one project and nothing outside, whatever way links or names lead there. */
export function hostOf(root: string, fault: Fault): Host {
  const real = realpathSync(root);
  const within = (uri: string): string | undefined => {
    try {
      const file = realpathSync(fileURLToPath(uri));
      return file.startsWith(real.endsWith(path.sep) ? real : real + path.sep) ? file : undefined;
    } catch {
      return undefined; // It is not there, which the finding at the place that names it says.
    }
  };
  return {
    library,
    fault,
    roots: () => [addressOf(root)],
    exists: uri => Promise.resolve(within(uri) !== undefined),
    read: async uri => {
      const file = within(uri);
      return file === undefined ? undefined : textOf(file).catch(() => undefined);
    },
  };
}

export const addressOf = (file: string): string => pathToFileURL(file).href;

/** Bytes that no text within the limit of the language exceeds: more of a house file is not needed to refuse it. */
const MOST_OF_HOUSE = 4 * LARGEST_FILE;
/** Tables beside a house are read whole or not at all. */
const LARGEST_TABLE = 200_000_000;

/** The text of a file; a byte order mark is no part of it. Throws as Node does. */
export async function textOf(file: string): Promise<string> {
  const handle = await open(file);
  try {
    const about = await handle.stat();
    if (about.isDirectory()) throw Object.assign(new Error('it is a folder'), { code: 'EISDIR' });
    if (!about.isFile()) throw new Error('it is no ordinary file');
    const isHouse = file.endsWith('.house');
    if (!isHouse && about.size > LARGEST_TABLE) throw new Error(`it is larger than ${LARGEST_TABLE / 1e6} MB`);
    if (!isHouse || about.size <= MOST_OF_HOUSE) return decode(await handle.readFile());
    const { buffer } = await handle.read(Buffer.alloc(MOST_OF_HOUSE + 1), 0, MOST_OF_HOUSE + 1, 0);
    return decode(buffer);
  } finally {
    await handle.close();
  }
}

export const decode = (bytes: Buffer): string => new TextDecoder().decode(bytes);
