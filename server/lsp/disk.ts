import { readdir, readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** Larger files are not read: a house with a year of meter data is far below it. */
const LARGEST = 64_000_000;
const MOST_FILES = 2000;
/** Folders that hold no houses but many files. */
const SKIPPED = new Set(['node_modules', 'dist']);

/** The one spelling of a file's address, however the editor writes it; other addresses as they are. */
export function canonical(uri: string): string {
  if (!uri.startsWith('file:')) return uri;
  try {
    return pathToFileURL(fileURLToPath(uri)).href;
  } catch {
    return uri;
  }
}

/** Text of a file inside one of the folders, links followed; undefined for anything else. */
export async function readWithin(uri: string, roots: readonly string[]): Promise<string | undefined> {
  try {
    const file = await realpath(fileURLToPath(uri));
    if (!(await isWithin(file, roots))) return undefined;
    const { size } = await stat(file);
    if (size > LARGEST) return undefined;
    return await readFile(file, 'utf8');
  } catch {
    return undefined;
  }
}

export async function existsWithin(uri: string, roots: readonly string[]): Promise<boolean> {
  try {
    return await isWithin(await realpath(fileURLToPath(uri)), roots);
  } catch {
    return false;
  }
}

/** Only plain files count: a device or a pipe would never end. */
async function isWithin(file: string, roots: readonly string[]): Promise<boolean> {
  if (!(await stat(file)).isFile()) return false;
  for (const root of roots) {
    const folder = await realpath(fileURLToPath(root)).catch(() => undefined);
    if (folder !== undefined && !path.relative(folder, file).startsWith('..')) return true;
  }
  return false;
}

/** Addresses of all house files in the folders. */
export async function housesIn(roots: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  const queue = roots.flatMap(root => {
    try {
      return [fileURLToPath(root)];
    } catch {
      return [];
    }
  });
  for (let folder = queue.shift(); folder !== undefined && found.length < MOST_FILES; folder = queue.shift()) {
    for (const entry of await readdir(folder, { withFileTypes: true }).catch(() => [])) {
      const at = path.join(folder, entry.name);
      if (entry.isDirectory() && !entry.name.startsWith('.') && !SKIPPED.has(entry.name)) queue.push(at);
      else if (entry.isFile() && entry.name.endsWith('.house')) found.push(pathToFileURL(at).href);
    }
  }
  return found;
}
