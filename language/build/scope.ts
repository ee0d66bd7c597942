import type { Declared, DeclaredFile, Name } from './declared.js';
import type { Report } from './problem.js';
import { article } from './words.js';

/** The names that a file sees: its own, those of the files it imports (not what those import), the built-in library. */
export interface Scope {
  block(name: string): Declared | undefined;
  source(name: string): Declared | undefined;
  /** All names of one kind, for completion and for the nearest match. */
  names(kinds: readonly string[]): string[];
}

export function scopeOf(
  file: DeclaredFile,
  imported: readonly DeclaredFile[],
  library: readonly DeclaredFile[],
  report: Report,
): Scope {
  const seen = new Map<string, Declared>();
  const sources = new Map<string, Declared>();
  for (const one of library) for (const b of one.blocks) seen.set(b.name, b);
  const builtIn = new Set(seen.values());
  for (const one of [...imported, file])
    for (const b of one.blocks) {
      if (b.kind === 'house') continue;
      const names = b.kind === 'source' ? sources : seen;
      const other = names.get(b.name);
      if (other && builtIn.has(other)) {
        if (one === file)
          report.add(
            'input/hidden-name',
            b.head,
            `${b.name} hides the ${other.kind} of that name in the built-in library`,
            { related: [at(other, 'the built-in one')] },
          );
      } else if (other && other !== b) clash(b, other, file, report);
      names.set(b.name, b);
    }
  return {
    block: name => seen.get(name),
    source: name => sources.get(name),
    names: kinds => [...seen.values()].filter(b => kinds.includes(b.kind)).map(b => b.name),
  };
}

const at = (b: Declared, message: string) => ({ uri: b.uri, from: b.head.from, to: b.head.to, message });

/** Told where this file can mend it: at its own block, or at the import that brings the second one. */
function clash(b: Declared, other: Declared, file: DeclaredFile, report: Report): void {
  const span = b.uri === file.uri ? b.head : importOf(b, file)?.span;
  if (!span) return;
  report.add(
    'input/duplicate-name',
    span,
    `${b.name} stands for ${article(other.kind)} in ${fileName(other.uri)} and for ${article(b.kind)} in ${fileName(b.uri)}`,
    {
      related: [at(other, 'the other one')],
    },
  );
}

const importOf = (b: Declared, file: DeclaredFile): Name | undefined => file.imports.find(i => i.target === b.uri);
export const fileName = (uri: string): string => uri.slice(uri.lastIndexOf('/') + 1);
