import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** Pages stand beside the programs where these are installed, and beside the rules in the sources. */
const FOLDERS = ['../rules', '../../language/rules'];

/** The folder of the findings' pages; undefined when the installation is damaged. */
export function pagesFolder(): string | undefined {
  const here = path.dirname(fileURLToPath(import.meta.url));
  return FOLDERS.map(f => path.join(here, f)).find(existsSync);
}

/** The codes of all findings that have a page, in the order of their names. */
export function pageCodes(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.md'))
    .map(name => name.slice(0, -'.md'.length).split(path.sep).join('/'))
    .filter(name => name.includes('/'))
    .sort();
}

export const pageOf = (folder: string, code: string): string => readFileSync(path.join(folder, `${code}.md`), 'utf8');

/** The paragraph below the title: what a finding says. */
export const summaryOf = (page: string): string =>
  page
    .split(/\n\s*\n/)[1]
    ?.replaceAll('\n', ' ')
    .trim() ?? '';
