import { nearest } from '../units/index.js';
import { blocks, parentsOf, propertyOf } from '../vocabulary/index.js';
import type { Declared, DeclaredProperty, Instruction, Name } from './declared.js';
import type { Namespace } from './namespace.js';
import type { Report } from './problem.js';
import { article } from './words.js';

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
  const kinds = parentsOf.get(block.kind);
  if (!kinds) return undefined; // An unknown kind is told as such.
  if (block.inside) {
    const { name, span } = block.inside;
    const parent = names.one(name, kinds) ?? names.one(name);
    if (!parent) unknown(block.inside, names, `${article(kinds.join(' or '))}`, report, kinds);
    else if (!alive.has(parent)) report.add('input/not-alive', span, `${name} does not stand in this stage`);
    else if (!kinds.includes(parent.kind))
      report.add(
        'input/wrong-block',
        span,
        `${article(block.kind)} stands in ${article(kinds.join(' or '))}, and ${name} is ${article(parent.kind)}`,
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
      `${article(block.kind)} stands in ${article(kinds.join(' or '))}, and this stage has none`,
    );
    return undefined;
  }
  const choices = parents.map(p => p.name);
  report.add(
    'input/needs-parent',
    block.head,
    `more than one block may hold ${article(block.kind)}: add ${block.kind} ${block.name} in ${choices.join(' or in ')}`,
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

/** The block that `change` or `remove` means: where several have the name, the one that stands and has what is changed. */
function targetOf(
  instruction: Instruction,
  alive: ReadonlySet<Declared>,
  names: Namespace,
  report: Report,
): Declared | undefined {
  const { target, properties } = instruction;
  if (!target) return undefined;
  const { name, span } = target;
  const all = names.named(name);
  if (!all.length) {
    unknown(target, names, 'a block', report);
    return undefined;
  }
  const standing = all.filter(b => alive.has(b));
  const fitting = standing.filter(b => [...(properties?.keys() ?? [])].every(k => propertyOf(blocks.get(b.kind), k)));
  if (fitting.length === 1) return fitting[0];
  const related = all.map(b => ({ uri: b.uri, ...b.head, message: `this ${b.kind} is called ${name}` }));
  if (standing.length > 1)
    report.add('input/ambiguous-name', span, `${name} is the name of several blocks; give them names of their own`, {
      related,
    });
  else if (standing.length === 1) return standing[0];
  else report.add('input/not-alive', span, `${name} does not stand in this stage`, { related });
  return undefined;
}

function unknown(
  { name, span }: Name,
  names: Namespace,
  what: string,
  report: Report,
  kinds?: readonly string[],
): void {
  const candidates = names.all(kinds).map(b => b.name);
  const near = nearest(name, candidates);
  report.add(
    'input/unknown-name',
    span,
    near ? `there is no ${name}; the nearest is ${near}` : `${name} is not the name of ${what} of this house`,
    near ? { replace: [[`Write ${near}`, near]] } : {},
  );
}
