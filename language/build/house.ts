import type { Block, House } from '../model/index.js';
import { assemble, assembleLibrary, type Alive, type Places } from './assemble.js';
import type { Declared, DeclaredFile } from './declared.js';
import { effectiveHouse, judgeOrigins, type Surroundings } from './effective.js';
import { fingerprint } from './fingerprint.js';
import { judgeMoney } from './money.js';
import { Report } from './problem.js';
import type { Scope } from './scope.js';
import { namespaceOf, noNames, type Namespace } from './namespace.js';
import { statesOf, type State } from './stages.js';

/** A house as it stands after one stage, or today. */
export interface BuiltStage {
  readonly declared: Declared | undefined;
  /** Index of the stage that it builds upon, in the list of the house; undefined for today. */
  readonly before: number | undefined;
  readonly house: House;
  /** The stage itself with its own blocks (changeover, quotes, commissioning …), which change nothing. */
  readonly stage: Block<'stage'> | undefined;
  readonly places: Places;
}
export interface BuiltHouse {
  readonly declared: Declared;
  readonly names: Namespace;
  /** Today first, then the stages in the order written. */
  readonly stages: readonly BuiltStage[];
}

/**
 * Models by the fingerprint of all that went into them: those of the last analysis of a file, and those of the present one. A
 * house that did not change is the same object, and what was computed from it is still known.
 */
export interface Kept {
  readonly before: Models;
  readonly now: Map<string, Made>;
}
export type Models = ReadonlyMap<string, Made>;
export interface Made {
  readonly house: House;
  readonly stage: Block<'stage'> | undefined;
}

/** Follows names, folds the stages and makes a typed model of the house after each. */
export function buildHouse(
  house: Declared,
  scopeFor: (uri: string) => Scope,
  scopeId: string,
  report: Report,
  kept: Kept,
): BuiltHouse {
  const names = namespaceOf(house, report);
  const around: Surroundings = {
    names,
    scopeFor,
    reportFor: uri => (uri === report.uri ? report : new Report(uri)),
    told: new Set(),
    own: new Map(),
  };
  judgeOrigins(house, around);
  const states = statesOf(house, names, report);
  const stages = states.map((state): BuiltStage => {
    const root = effectiveHouse(house, state, around);
    const own = state.stage && effectiveHouse(state.stage, { ...state, alive: aliveBelow(state.stage) }, around);
    judgeMoney(own ? [root, own] : [root], around);
    const aliveness = (b: Declared): Alive => {
      if (state.alive.has(b)) return 'now';
      return states.some(s => s.alive.has(b) && buildsOn(s, state)) ? 'later' : 'never';
    };
    const assembly = assemble(root, own, aliveness, around);
    const key = `${scopeId}\n${fingerprint(own ? [root, own] : [root], aliveness, around)}`;
    const { house: model, stage } = firstMade(key, assembly, kept);
    return {
      declared: state.stage,
      before: state.before && states.indexOf(state.before),
      house: model,
      stage,
      places: assembly.places,
    };
  });
  return { declared: house, names, stages };
}

function buildsOn(state: State, base: State): boolean {
  for (let s = state.before; s; s = s.before) if (s === base) return true;
  return false;
}

/** With the same values the model made first is used on. */
function firstMade(key: string, made: Made, { before, now }: Kept): Made {
  const first = now.get(key) ?? before.get(key) ?? made;
  now.set(key, first);
  return first;
}

function aliveBelow(b: Declared, alive = new Set<Declared>()): Set<Declared> {
  alive.add(b);
  for (const c of b.children) aliveBelow(c, alive);
  return alive;
}

/** Follows the names of a file's own blocks outside any house, so that its faults are told where they stand. */
export function judgeLibrary(file: DeclaredFile, scopeFor: (uri: string) => Scope, report: Report): void {
  const names = noNames;
  const around: Surroundings = {
    names,
    scopeFor,
    reportFor: uri => (uri === report.uri ? report : new Report(uri)),
    told: new Set(),
    own: new Map(),
  };
  for (const block of file.blocks) {
    if (block.kind === 'house') continue;
    judgeOrigins(block, around);
    assembleLibrary(block, around);
  }
}
