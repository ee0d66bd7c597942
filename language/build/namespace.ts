import { blocks } from '../vocabulary/index.js';
import type { Declared } from './declared.js';
import type { Report } from './problem.js';

/**
 * The names of a house's own blocks, over all its stages. A name is unique within its kind; a storey and a panel may both
 * be called main, since what refers to them says which kind it wants.
 */
export interface Namespace {
  /** All blocks of a name, of the given kinds. */
  named(name: string, kinds?: readonly string[]): readonly Declared[];
  /** The only block of a name, of the given kinds. */
  one(name: string, kinds?: readonly string[]): Declared | undefined;
  all(kinds?: readonly string[]): readonly Declared[];
  readonly stages: ReadonlyMap<string, Declared>;
  readonly sources: ReadonlyMap<string, Declared>;
}

export const noNames: Namespace = {
  named: () => [],
  one: () => undefined,
  all: () => [],
  stages: new Map(),
  sources: new Map(),
};

export function namespaceOf(house: Declared, report: Report): Namespace {
  const byName = new Map<string, Declared[]>();
  const stages = new Map<string, Declared>();
  const sources = new Map<string, Declared>();
  const enter = (b: Declared): void => {
    if (b.kind === 'stage' || b.kind === 'source') {
      const names = b.kind === 'stage' ? stages : sources;
      const first = names.get(b.name);
      if (first) duplicate(b, first, report);
      else names.set(b.name, b);
      return;
    }
    if (unnameable(b)) return;
    const same = byName.get(b.name) ?? [];
    const first = same.find(other => other.kind === b.kind);
    if (first && !blocks.get(b.kind)?.names) duplicate(b, first, report);
    else byName.set(b.name, [...same, b]);
  };
  const walk = (b: Declared): void => {
    for (const child of [...b.children, ...b.instructions.flatMap(i => i.block ?? [])]) {
      enter(child);
      walk(child);
    }
  };
  walk(house);
  const named = (name: string, kinds?: readonly string[]) =>
    (byName.get(name) ?? []).filter(b => !kinds || kinds.includes(b.kind));
  return {
    named,
    one: (name, kinds) => {
      const found = named(name, kinds);
      return found.length === 1 ? found[0] : undefined;
    },
    all: kinds => [...byName.values()].flat().filter(b => !kinds || kinds.includes(b.kind)),
    stages,
    sources,
  };
}

/** Blocks that nothing refers to by name: those of a stage itself, and the parts of an assembly. */
function unnameable(b: Declared): boolean {
  const type = blocks.get(b.kind);
  return Boolean(type?.ofStage || type?.bounds) || b.kind === 'layer' || b.kind === 'framing';
}

function duplicate(b: Declared, first: Declared, report: Report): void {
  const type = blocks.get(b.kind);
  const related = [{ uri: first.uri, from: first.head.from, to: first.head.to, message: 'the first one' }];
  if ((type?.section || type?.once) && !b.named)
    report.add('input/duplicate-block', b.head, `there is one ${b.kind}, and it stands already`, { related });
  else if (b.named || first.named)
    report.add(
      'input/duplicate-name',
      b.head,
      `another ${b.kind} is called ${b.name}; names are shared over all stages`,
      { related },
    );
}
