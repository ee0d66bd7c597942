import { nearest } from '../units/index.js';
import { blocks, parentsOf } from '../vocabulary/index.js';
import type { Declared, DeclaredProperty, Instruction, Name } from './declared.js';
import type { Report } from './problem.js';

/** Which blocks stand after a stage, and what its changes and those before it have set. */
export interface State {
  readonly stage: Declared | undefined;
  readonly before: State | undefined;
  readonly alive: ReadonlySet<Declared>;
  /** Latest value of what was changed. */
  readonly set: ReadonlyMap<Declared, ReadonlyMap<string, DeclaredProperty>>;
  /** Properties that a damaged change may have set. */
  readonly lost: ReadonlyMap<Declared, Declared['lost']>;
  /** Blocks that stages have added to a parent, in order. */
  readonly added: ReadonlyMap<Declared, readonly Declared[]>;
}

/** The names of a house's own blocks, over all its stages. */
export interface Namespace {
  readonly blocks: ReadonlyMap<string, Declared>;
  readonly stages: ReadonlyMap<string, Declared>;
  readonly sources: ReadonlyMap<string, Declared>;
}

export function namespaceOf(house: Declared, report: Report): Namespace {
  const own = new Map<string, Declared>();
  const stages = new Map<string, Declared>();
  const sources = new Map<string, Declared>();
  const enter = (b: Declared): void => {
    const type = blocks.get(b.kind);
    if (type?.names || type?.ofStage || type?.bounds || b.kind === 'layer' || b.kind === 'framing') return;
    const names = b.kind === 'stage' ? stages : b.kind === 'source' ? sources : own;
    const first = names.get(b.name);
    if (!first) names.set(b.name, b);
    else if (type?.once || type?.section || b.named || first.named)
      duplicate(b, first, Boolean(type?.section ?? type?.once) && !b.named, report);
  };
  const walk = (b: Declared): void => {
    for (const child of b.children) {
      enter(child);
      walk(child);
    }
    for (const { block } of b.instructions) {
      if (!block) continue;
      enter(block);
      walk(block);
    }
  };
  walk(house);
  return { blocks: own, stages, sources };
}

function duplicate(b: Declared, first: Declared, once: boolean, report: Report): void {
  const related = [{ uri: first.uri, from: first.head.from, to: first.head.to, message: 'the first one' }];
  if (once) report.add('input/duplicate-block', b.head, `there is one ${b.kind}, and it stands already`, { related });
  else
    report.add(
      'input/duplicate-name',
      b.head,
      `${b.name} is the name of a ${first.kind} already; names are shared over all stages`,
      { related },
    );
}

/** The house as it is, then each stage in the order written. */
export function statesOf(house: Declared, names: Namespace, report: Report): State[] {
  const alive = new Set<Declared>();
  const enliven = (b: Declared): void => {
    alive.add(b);
    b.children.forEach(enliven);
  };
  enliven(house);
  const today: State = {
    stage: undefined,
    before: undefined,
    alive,
    set: new Map(),
    lost: new Map(),
    added: new Map(),
  };
  const states = new Map<Declared, State>();
  const stages = house.children.filter(c => c.kind === 'stage');
  const visiting = new Set<Declared>();
  const stateOf = (stage: Declared): State => {
    const known = states.get(stage);
    if (known) return known;
    visiting.add(stage);
    const state = apply(stage, base(stage), names, report);
    visiting.delete(stage);
    states.set(stage, state);
    return state;
  };
  const base = (stage: Declared): State => {
    const after = stage.properties.get('after');
    const name = after?.value.is === 'reference' ? after.value.reference.ref[0] : undefined;
    if (!name) {
      const previous = stages[stages.indexOf(stage) - 1];
      return previous && !visiting.has(previous) ? stateOf(previous) : today;
    }
    const target = names.stages.get(name.name);
    if (!target) {
      const near = nearest(name.name, names.stages.keys());
      report.add(
        'input/unknown-name',
        name.span,
        near ? `there is no stage ${name.name}; the nearest is ${near}` : `there is no stage ${name.name}`,
        near ? { replace: [[`Write ${near}`, near]] } : {},
      );
      return today;
    }
    if (visiting.has(target)) {
      report.add(
        'input/stage-cycle',
        name.span,
        `${stage.name} comes after ${target.name}, which comes after ${stage.name} itself`,
      );
      return today;
    }
    return stateOf(target);
  };
  return [today, ...stages.map(stateOf)];
}

function apply(stage: Declared, before: State, names: Namespace, report: Report): State {
  const alive = new Set(before.alive);
  const set = new Map(before.set);
  const lost = new Map(before.lost);
  const added = new Map(before.added);
  for (const instruction of stage.instructions) {
    const { does, block } = instruction;
    if (does === 'add' && block) {
      const parent = parentOf(block, alive, names, report);
      if (!parent) continue;
      added.set(parent, [...(added.get(parent) ?? []), block]);
      const enliven = (b: Declared): void => {
        alive.add(b);
        b.children.forEach(enliven);
      };
      enliven(block);
    } else if (does === 'change') {
      const target = targetOf(instruction, alive, names, report);
      if (!target) continue;
      set.set(target, new Map([...(set.get(target) ?? []), ...(instruction.properties ?? [])]));
      if (instruction.lost?.length) lost.set(target, instruction.lost);
    } else if (does === 'remove') {
      const target = targetOf(instruction, alive, names, report);
      if (!target) continue;
      const bury = (b: Declared): void => {
        alive.delete(b);
        b.children.forEach(bury);
        added.get(b)?.forEach(bury);
      };
      bury(target);
    }
  }
  return { stage, before, alive, set, lost, added };
}

/** The parent that an added block joins: the one named by `in`, or the only one that may hold it. */
function parentOf(
  block: Declared,
  alive: ReadonlySet<Declared>,
  names: Namespace,
  report: Report,
): Declared | undefined {
  const kinds = parentsOf.get(block.kind) ?? [];
  if (block.inside) {
    const { name, span } = block.inside;
    const parent = names.blocks.get(name);
    if (!parent) unknown(block.inside, names, `a ${kinds.join(' or ')}`, report, kinds);
    else if (!alive.has(parent)) report.add('input/not-alive', span, `${name} does not stand in this stage`);
    else if (!kinds.includes(parent.kind))
      report.add(
        'input/wrong-block',
        span,
        `a ${block.kind} stands in a ${kinds.join(' or ')}, and ${name} is a ${parent.kind}`,
      );
    else return parent;
    return undefined;
  }
  const parents = [...alive].filter(b => kinds.includes(b.kind));
  if (parents.length === 1) return parents[0];
  if (parents.length === 0) {
    report.add(
      'input/needs-parent',
      block.head,
      `a ${block.kind} stands in a ${kinds.join(' or ')}, and this stage has none`,
    );
    return undefined;
  }
  const choices = parents.map(p => p.name);
  report.add(
    'input/needs-parent',
    block.head,
    `more than one block may hold a ${block.kind}: add ${block.kind} ${block.name} in ${choices.join(' or in ')}`,
    {
      mend: () =>
        choices.map(c => ({
          title: `Add it in ${c}`,
          changes: [{ uri: block.uri, from: block.head.to, to: block.head.to, text: ` in ${c}` }],
        })),
    },
  );
  return undefined;
}

function targetOf(
  { target }: Instruction,
  alive: ReadonlySet<Declared>,
  names: Namespace,
  report: Report,
): Declared | undefined {
  if (!target) return undefined;
  const block = names.blocks.get(target.name);
  if (!block) {
    unknown(target, names, 'a block', report);
    return undefined;
  }
  if (alive.has(block)) return block;
  report.add('input/not-alive', target.span, `${target.name} does not stand in this stage`, {
    related: [{ uri: block.uri, from: block.head.from, to: block.head.to, message: 'it is written here' }],
  });
  return undefined;
}

function unknown(
  { name, span }: Name,
  names: Namespace,
  what: string,
  report: Report,
  kinds?: readonly string[],
): void {
  const candidates = [...names.blocks].filter(([, b]) => !kinds || kinds.includes(b.kind)).map(([n]) => n);
  const near = nearest(name, candidates);
  report.add(
    'input/unknown-name',
    span,
    near ? `there is no ${name}; the nearest is ${near}` : `${name} is not the name of ${what} of this house`,
    near ? { replace: [[`Write ${near}`, near]] } : {},
  );
}
