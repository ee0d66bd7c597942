import { nearest } from '../units/index.js';
import type { Declared, DeclaredProperty, Name } from './declared.js';
import type { Report } from './problem.js';
import type { Scope } from './scope.js';
import type { Namespace } from './namespace.js';
import type { State } from './stages.js';
import { article } from './words.js';

/** A block as it stands in one stage, with the properties that hold there and where each was written. */
export interface Effective {
  readonly declared: Declared;
  /** Names from the house down; stable over edits that do not rename. */
  readonly address: string;
  readonly properties: ReadonlyMap<string, Given>;
  readonly lost: Declared['lost'];
  readonly lostKinds: readonly string[];
  readonly children: readonly Effective[];
}
export interface Given {
  readonly property: DeclaredProperty;
  /** Written for this block, or copied by `like`. */
  readonly how: 'written' | 'copied';
  /** Source that the value is from: its own, or that of the block around it. */
  readonly source: string | undefined;
}

interface Own {
  readonly properties: ReadonlyMap<string, Given>;
  readonly lost: Declared['lost'];
}

export interface Surroundings {
  readonly names: Namespace;
  readonly scopeFor: (uri: string) => Scope;
  /** Where problems of a file are told; those of a file that is not at hand go nowhere, it tells them itself. */
  readonly reportFor: (uri: string) => Report;
  /** Names told as faulty already: a name is told once, not once per stage. */
  readonly told: Set<object>;
  /** What blocks say by themselves, worked out once. */
  readonly own: Map<Declared, Own>;
}

/** The tree of blocks that stand in a state. */
export function effectiveHouse(house: Declared, state: State, around: Surroundings): Effective {
  return effective(house, house.name, state, undefined, around);
}

function effective(
  b: Declared,
  address: string,
  state: State,
  source: string | undefined,
  around: Surroundings,
): Effective {
  const origin = b.origin?.name ?? source;
  const own = ownOf(b, origin, around);
  const changes = state.set.get(b);
  const properties = changes ? changed(own.properties, changes) : own.properties;
  const lost = state.lost.get(b) ?? own.lost;
  const standing = [...b.children, ...(state.added.get(b) ?? [])].filter(c => state.alive.has(c) && c.kind !== 'stage');
  const counts = new Map<string, number>();
  const children = standing.map(c => {
    const n = (counts.get(c.name) ?? 0) + 1;
    counts.set(c.name, n);
    const inside = b.children.includes(c) ? origin : undefined;
    return effective(c, `${address}/${c.name}${n > 1 ? `#${n}` : ''}`, state, inside, around);
  });
  return { declared: b, address, properties, lost, lostKinds: b.lostKinds, children };
}

/** What a block says by itself and by what it is like, before any stage changes it. Worked out once for all stages. */
function ownOf(b: Declared, origin: string | undefined, around: Surroundings): Own {
  const known = around.own.get(b);
  if (known) return known;
  const properties = new Map<string, Given>();
  let { lost } = b;
  for (const [from, depth] of ancestors(b, around).reverse()) {
    for (const [key, property] of from.properties) {
      if (property.value.is === 'none') continue; // There is nothing to unset.
      properties.set(key, {
        property,
        how: depth ? 'copied' : 'written',
        source: depth ? undefined : (property.origin?.name ?? origin),
      });
    }
    if (from.lost === 'all' || brokenLike(from, around)) lost = 'all';
  }
  const own = { properties, lost };
  around.own.set(b, own);
  return own;
}

/** What a block says with its changes; what a stage changed stays so in those that build on it. */
const afterChanges = new WeakMap<ReadonlyMap<string, DeclaredProperty>, Own['properties']>();

/** Origins do not cross into stages: a value that a stage sets has its own source or none. */
function changed(own: Own['properties'], changes: ReadonlyMap<string, DeclaredProperty>): Own['properties'] {
  const known = afterChanges.get(changes);
  if (known) return known;
  const properties = new Map(own);
  afterChanges.set(changes, properties);
  for (const [key, property] of changes) {
    if (property.value.is === 'none') properties.delete(key);
    else properties.set(key, { property, how: 'written', source: property.origin?.name });
  }
  return properties;
}

/** A library block is the same in every house and stage. */
export function effectiveLibrary(b: Declared, around: Surroundings): Effective {
  const state: State = {
    stage: undefined,
    before: undefined,
    alive: aliveIn(b),
    set: new Map(),
    lost: new Map(),
    added: new Map(),
  };
  return effective(b, `${b.uri}#${b.name}`, state, undefined, around);
}

function aliveIn(b: Declared, alive = new Set<Declared>()): Set<Declared> {
  alive.add(b);
  for (const c of b.children) aliveIn(c, alive);
  return alive;
}

/** Likeness that goes through more blocks than this helps nobody to read a house. */
const LONGEST_CHAIN = 32;

/** The block and those it is like, nearest first, each with its distance. */
function ancestors(b: Declared, around: Surroundings): (readonly [Declared, number])[] {
  const chain: (readonly [Declared, number])[] = [[b, 0]];
  for (let at: Declared = b; at.like;) {
    const next = likeOf(at, around);
    if (!next) break;
    if (chain.some(([seen]) => seen === next)) {
      tell(around, at.like, () =>
        around
          .reportFor(at.uri)
          .add(
            'input/like-cycle',
            at.like!.span,
            `${at.name} is like ${next.name}, which is like ${at.name} in the end`,
          ),
      );
      break;
    }
    if (chain.length > LONGEST_CHAIN) {
      const { like } = b;
      tell(around, like!, () =>
        around
          .reportFor(b.uri)
          .add('input/like-cycle', like!.span, `${b.name} is like a chain of more than ${LONGEST_CHAIN} blocks`),
      );
      break;
    }
    chain.push([next, chain.length]);
    at = next;
  }
  return chain;
}

function brokenLike(b: Declared, around: Surroundings): boolean {
  return b.like !== undefined && likeOf(b, around) === undefined;
}

function likeOf(b: Declared, around: Surroundings): Declared | undefined {
  const name = b.like!;
  const target = around.names.one(name.name, [b.kind]) ?? around.scopeFor(b.uri).block(name.name);
  if (!target) {
    tell(around, name, () => {
      const known = around.scopeFor(b.uri).names([b.kind]);
      const near = nearest(name.name, [...known, ...around.names.all([b.kind]).map(o => o.name)]);
      around
        .reportFor(b.uri)
        .add(
          'input/unknown-name',
          name.span,
          near ? `there is no ${b.kind} ${name.name}; the nearest is ${near}` : `there is no ${b.kind} ${name.name}`,
          near ? { replace: [[`Write ${near}`, near]] } : {},
        );
    });
    return undefined;
  }
  if (target.kind !== b.kind) {
    tell(around, name, () =>
      around
        .reportFor(b.uri)
        .add(
          'input/wrong-block',
          name.span,
          `${article(b.kind)} is like another ${b.kind}, and ${name.name} is ${article(target.kind)}`,
        ),
    );
    return undefined;
  }
  return target;
}

export function tell(around: Surroundings, name: object, report: () => void): void {
  if (around.told.has(name)) return;
  around.told.add(name);
  report();
}

/** Sources named by values and blocks must exist. */
export function judgeOrigins(b: Declared, around: Surroundings): void {
  const judge = (name: Name | undefined): void => {
    if (!name || around.names.sources.has(name.name) || around.scopeFor(b.uri).source(name.name)) return;
    tell(around, name, () =>
      around
        .reportFor(b.uri)
        .add(
          'input/unknown-name',
          name.span,
          `there is no source ${name.name}: source ${name.name} { kind: measured }`,
        ),
    );
  };
  judge(b.origin);
  for (const p of b.properties.values()) judge(p.origin);
  b.children.forEach(c => judgeOrigins(c, around));
  for (const i of b.instructions) {
    for (const p of i.properties?.values() ?? []) judge(p.origin);
    if (i.block) judgeOrigins(i.block, around);
  }
}
