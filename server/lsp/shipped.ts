import { existsSync } from 'node:fs';
import { LIBRARY_SCHEME } from '../../language/library/index.js';

/*
 * Texts that lie beside the program: the built-in library and the pages of findings. In the bundle they lie in dist, in the
 * sources where they are written.
 */

const folderOf = (shipped: string, source: string): string => {
  const beside = new URL(shipped, import.meta.url);
  return existsSync(beside) ? beside.href : new URL(source, import.meta.url).href;
};
const libraryFolder = folderOf('../library/', '../../language/library/');
const pagesFolder = folderOf('../pages/', '../../language/rules/');

/** The file in which a built-in block is written; any other address as it is. */
export const libraryFile = (uri: string): string =>
  uri.startsWith(`${LIBRARY_SCHEME}/`) ? new URL(uri.slice(LIBRARY_SCHEME.length + 1), libraryFolder).href : uri;

/** Whether a file is one of the built-in library: it is shown, not judged. */
export const isLibraryFile = (uri: string): boolean => uri.startsWith(libraryFolder);

const pages = new Map<string, string | undefined>();

/** The page of a finding, if it has one. */
export function pageOf(code: string): string | undefined {
  if (!/^[a-z-]+\/[a-z0-9-]+$/.test(code)) return undefined;
  if (!pages.has(code)) {
    const page = new URL(`${code}.md`, pagesFolder);
    pages.set(code, existsSync(page) ? page.href : undefined);
  }
  return pages.get(code);
}
