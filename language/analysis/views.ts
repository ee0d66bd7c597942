import { addressOf, type BuiltHouse, type BuiltStage } from '../build/index.js';
import { Withheld, type Block, type House } from '../model/index.js';
import { resultOf, type Result } from '../results/index.js';
import type { View } from '../rules/index.js';
import { blocks, camel } from '../vocabulary/index.js';
import type { Fault } from './host.js';

/** A stage as rules see it, with the build behind it. */
export interface StageView extends View {
  readonly built: BuiltStage;
  readonly name: string;
}

/** One view for each stage of a house, today first. */
export function viewsOf(house: BuiltHouse, today: string, fault: Fault): StageView[] {
  const views: StageView[] = house.stages.map((built, i) => {
    const view: StageView = {
      built,
      name: built.declared?.name ?? 'today',
      house: built.house,
      stage: built.stage,
      today,
      get before() {
        return built.before === undefined ? undefined : views[built.before];
      },
      get later() {
        return views.filter(v => buildsOn(v, view));
      },
      get last() {
        return !house.stages.some(s => s.before === i);
      },
      result(name, subject) {
        return known(name, subject ?? built.house, built.house, fault);
      },
      same<B extends Block>(block: B, there: View) {
        const address = addressOf(block);
        return subjectsOf(there.house).byAddress.get(address ?? '') as B | undefined;
      },
      says(block, property) {
        const address = addressOf(block);
        return built.places.get(address ?? '')?.properties.has(property) ?? false;
      },
      freshName(wish) {
        const taken = (n: string) => house.names.named(n).length > 0 || blocks.has(n);
        if (!taken(wish)) return wish;
        let n = 2;
        while (taken(`${wish}-${n}`)) n++;
        return `${wish}-${n}`;
      },
    };
    return view;
  });
  return views;
}

function buildsOn(view: StageView, base: StageView): boolean {
  for (let v = view.before; v; v = v.before) if (v === base) return true;
  return false;
}

/** A named result in SI; undefined when it is withheld or there is none of that name. */
function known(name: string, subject: Block, house: House, fault: Fault): number | undefined {
  const result = resultOf(name, subject.is);
  if (!result) throw new Error(`there is no result ${name} of a ${subject.is}`);
  const outcome = outcomeOf(result, subject, house, fault);
  return 'value' in outcome ? outcome.value : undefined;
}

const outcomes = new WeakMap<Block, Map<Result, Outcome>>();

/** A result of a block of a house. A model never changes, so it is computed once; a fault of ours is met again each time. */
export function outcomeOf(result: Result, subject: Block, house: House, fault: Fault): Outcome {
  const ofSubject = outcomes.get(subject) ?? new Map<Result, Outcome>();
  const known = ofSubject.get(result);
  if (known) return known;
  let sound = true;
  const failed: Fault = (error, what) => {
    sound = false;
    fault(error, what);
  };
  const outcome = compute(() => result.compute(subject, house), failed, result.name);
  if (sound) outcomes.set(subject, ofSubject.set(result, outcome));
  return outcome;
}

export type Outcome = { readonly value: number } | { readonly withheld: string };

/** Runs a calculation: its number, or why there is none. A number that is none counts as a fault of ours. */
export function compute(run: () => number, fault: Fault, what: string): Outcome {
  try {
    const value = run();
    if (Number.isFinite(value)) return { value };
    fault(new Error(`${what} came out as ${value}`), what);
    return { withheld: 'the calculation gave no number; this is a fault of the program' };
  } catch (error) {
    if (error instanceof Withheld) return { withheld: error.reason };
    fault(error, what);
    return { withheld: 'the calculation failed; this is a fault of the program' };
  }
}

/** All blocks of a model by kind and by address, the library left out. */
export interface Subjects {
  readonly byKind: ReadonlyMap<string, readonly Block[]>;
  readonly byAddress: ReadonlyMap<string, Block>;
}

const subjects = new WeakMap<object, Subjects>();

export function subjectsOf(root: House | Block<'stage'>): Subjects {
  const known = subjects.get(root);
  if (known) return known;
  const byKind = new Map<string, Block[]>();
  const byAddress = new Map<string, Block>();
  const walk = (block: Block): void => {
    const alike = byKind.get(block.is);
    if (alike) alike.push(block);
    else byKind.set(block.is, [block]);
    byAddress.set(addressOf(block) ?? '', block);
    for (const kind of blocks.get(block.is)?.holds ?? []) for (const child of childrenOf(block, kind)) walk(child);
  };
  walk(root);
  const made = { byKind, byAddress };
  subjects.set(root, made);
  return made;
}

function childrenOf(block: Block, kind: string): readonly Block[] {
  try {
    const held = (block as unknown as Record<string, Block | readonly Block[] | undefined>)[camel(kind)];
    return held === undefined ? [] : Array.isArray(held) ? (held as readonly Block[]) : [held as Block];
  } catch {
    return []; // Damaged: there is no telling which children stand.
  }
}
