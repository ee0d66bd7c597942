import { readFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from '../cli/harness.js';

/** A fenced block of a page: the words behind the fence and the lines between. */
export interface Fence {
  readonly language: string;
  readonly about: string;
  readonly text: string;
}

export const pageText = (file: string): string => readFileSync(path.join(ROOT, file), 'utf8');

export function fences(page: string): readonly Fence[] {
  return [...page.matchAll(/^```(\S+) ?(.*)\n([\s\S]*?)^```$/gm)].map(([, language, about, text]) => ({
    language,
    about,
    text,
  }));
}

/** The only block of a language. */
export function fence(page: string, language: string): string {
  const found = fences(page).filter(f => f.language === language);
  if (found.length !== 1) throw new Error(`${found.length} blocks of ${language}`);
  return found[0].text;
}

/** Words in code marks within the running text. */
export const codeWords = (page: string): readonly string[] =>
  [...page.replace(/^```[\s\S]*?^```$/gm, '').matchAll(/`([^`\n]+)`/g)].map(([, word]) => word);

/** Targets of the links that stay within the project. */
export const links = (page: string): readonly string[] =>
  [...page.matchAll(/\]\(([^)#]+)(?:#[^)]*)?\)/g)].map(([, target]) => target).filter(t => !t.includes('://'));

const GAP = /^\s*(?:(?:\/\/|\/\*) )?…(?: \*\/)?$/;

/**
 * What of a quotation is not to be found in a text: a line `…` (or `// …`) stands for lines left out; what lies between is
 * to follow in this order, line by line as it stands. Undefined when all of it is found.
 */
export function missing(quotation: string, text: string): string | undefined {
  const lines = text.split('\n').map(line => line.trimEnd());
  let from = 0;
  for (const part of parts(quotation)) {
    const at = lines.findIndex((_, i) => i >= from && part.every((line, k) => lines[i + k] === line));
    if (at < 0) return part.join('\n');
    from = at + part.length;
  }
  return undefined;
}

function parts(quotation: string): readonly (readonly string[])[] {
  const all: string[][] = [[]];
  for (const line of quotation.trimEnd().split('\n'))
    if (GAP.test(line)) all.push([]);
    else all[all.length - 1].push(line.trimEnd());
  return all.filter(part => part.length > 0);
}
