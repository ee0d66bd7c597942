import { Report, scopeOf, type Scope } from '../build/index.js';
import type { Host } from './host.js';
import type { LoadedFile } from './loader.js';

export type Files = ReadonlyMap<string, LoadedFile>;

/** The scope of each file at hand, made when it is asked for. Clashes are told in the report of the one file that is judged. */
export function scopesOf(files: Files, host: Host, report: Report): (uri: string) => Scope {
  const scopes = new Map<string, Scope>();
  return uri => {
    const known = scopes.get(uri);
    if (known) return known;
    const own = files.get(uri)?.declared ?? host.library.find(l => l.uri === uri);
    if (!own) return EMPTY;
    const imported = own.imports.flatMap(i => files.get(i.target ?? '')?.declared ?? []);
    const scope = scopeOf(own, imported, host.library, uri === report.uri ? report : new Report(uri));
    scopes.set(uri, scope);
    return scope;
  };
}

const EMPTY: Scope = { block: () => undefined, source: () => undefined, names: () => [] };

/** Imports that lead nowhere, outside, or back to the file itself. */
export function judgeImports(file: LoadedFile, files: Files, report: Report): void {
  for (const { name, span, target } of file.declared.imports) {
    if (target === undefined)
      report.add('input/file-outside', span, `"${name}" lies outside the workspace and is not read`);
    else if (!files.has(target)) report.add('input/file-missing', span, `there is no file "${name}" to import`);
    else if (leadsTo(target, file.uri, files, new Set()))
      report.add('input/import-cycle', span, `"${name}" imports this file in turn`);
  }
}

function leadsTo(from: string, to: string, files: Files, seen: Set<string>): boolean {
  if (from === to) return true;
  if (seen.has(from)) return false;
  seen.add(from);
  const imports = files.get(from)?.declared.imports ?? [];
  return imports.some(i => i.target !== undefined && leadsTo(i.target, to, files, seen));
}
