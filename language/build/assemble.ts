import { Withheld, type Block, type House } from '../model/index.js';
import { nearest } from '../units/index.js';
import type { Property } from '../vocabulary/index.js';
import type { Declared, Name } from './declared.js';
import { effectiveLibrary, tell, type Effective, type Surroundings } from './effective.js';
import { missingProperty } from './missing.js';
import { planOf, type Plan, type PropertyPlan } from './plan.js';
import { article } from './words.js';

type Model = Record<string, unknown>;

/** Where in a stage's text each block of its model comes from. */
export type Places = ReadonlyMap<string, Effective>;

const addresses = new WeakMap<object, string>();

/** The address of a block of a model: its key in the places of its stage. */
export const addressOf = (block: object): string | undefined => addresses.get(block);

export interface Assembly {
  readonly house: House;
  readonly stage: Block<'stage'> | undefined;
  readonly places: Places;
}

/** What a reference finds: a block that stands now, one that a later stage brings, or nothing. */
export type Alive = 'now' | 'later' | 'never';

/** Makes the typed model of one stage from its tree of blocks. */
export function assemble(
  root: Effective,
  stage: Effective | undefined,
  aliveness: (b: Declared) => Alive,
  around: Surroundings,
): Assembly {
  const maker = new Maker(aliveness, around);
  maker.findDormant(root);
  const house = maker.make(root);
  const own = stage && maker.make(stage);
  maker.follow();
  return {
    house: house as unknown as House,
    stage: own as unknown as Block<'stage'> | undefined,
    places: maker.places,
  };
}

/** A block outside any house, for the faults that come out while its names are followed. */
export function assembleLibrary(b: Declared, around: Surroundings): void {
  const maker = new Maker(() => 'now', around);
  maker.make(effectiveLibrary(b, around), true);
  maker.follow();
}

class Maker {
  readonly places = new Map<string, Effective>();
  private readonly models = new Map<Declared, Model>();
  private readonly dormant = new Set<Declared>();
  private readonly pending: (() => void)[] = [];

  constructor(
    private readonly aliveness: (b: Declared) => Alive,
    private readonly around: Surroundings,
  ) {}

  /** A block is asleep while a block that it cannot do without comes with a later stage, and so is what needs it. */
  findDormant(root: Effective): void {
    for (let found = true; found;) {
      found = false;
      const walk = (e: Effective): void => {
        if (this.dormant.has(e.declared)) return;
        if (this.needsLater(e)) {
          this.dormant.add(e.declared);
          found = true;
          return;
        }
        e.children.forEach(walk);
      };
      walk(root);
    }
  }

  private needsLater(e: Effective): boolean {
    for (const { key, kinds } of planOf(e.declared.kind)?.needs ?? []) {
      const value = e.properties.get(key)?.property.value;
      if (value?.is !== 'reference') continue;
      const target = this.around.names.one(value.reference.ref[0]?.name ?? '', kinds);
      if (target && (this.aliveness(target) === 'later' || this.dormant.has(target))) return true;
    }
    return false;
  }

  make(e: Effective, template = false): Model {
    const { declared } = e;
    const plan = planOf(declared.kind);
    const model: Model = { is: declared.kind, name: declared.name, title: declared.title };
    this.models.set(declared, model);
    addresses.set(model, e.address);
    this.places.set(e.address, e);
    if (!plan) return model;
    for (const property of plan.properties) this.give(model, e, property, template);
    if (plan.holds.length) this.children(model, e, plan, template);
    return model;
  }

  private children(model: Model, e: Effective, plan: Plan, template: boolean): void {
    const byKind = new Map<string, Model[]>();
    for (const child of e.children) {
      if (this.dormant.has(child.declared)) continue;
      const { kind } = child.declared;
      const same = byKind.get(kind);
      const made = this.make(child, template);
      if (same) same.push(made);
      else byKind.set(kind, [made]);
    }
    for (const { kind, name, single } of plan.holds) {
      const all = byKind.get(kind) ?? [];
      if (e.lostKinds.includes(kind)) withhold(model, name, `${article(kind)} in ${label(e.declared)} is misspelt`);
      else if (e.lost === 'all' && e.declared.kind !== 'house')
        withhold(model, name, `the text of ${label(e.declared)} is damaged`);
      else model[name] = single ? all[0] : all;
    }
  }

  /** Sets one property: its value, its default, nothing, or a trap where there is no telling. */
  private give(model: Model, e: Effective, plan: PropertyPlan, template: boolean): void {
    const { key, name, type } = plan;
    const value = e.properties.get(key)?.property.value;
    if (!value) return this.giveNone(model, e, plan, template);
    if (value.is === 'damaged') withhold(model, name, `${label(e.declared)}: ${value.reason}`);
    else if (value.is === 'value') model[name] = value.value;
    else if (value.is === 'reference') {
      model[name] = type.is === 'references' ? [] : undefined;
      this.pending.push(() => this.link(model, name, value.reference.ref, type, e));
    }
  }

  private giveNone(
    model: Model,
    e: Effective,
    { key, name, type, byDefault, defaultName }: PropertyPlan,
    template: boolean,
  ): void {
    const { declared, lost } = e;
    if (lost === 'all' || lost.includes(key))
      withhold(model, name, `the text of ${label(declared)} is damaged where ${key} may stand`);
    else if (type.presence === 'required') {
      withhold(model, name, `${label(declared)} has no ${key}`);
      if (!template)
        tell(this.around, requiredKey(declared, key), () =>
          missingProperty(declared, key, type, this.around.reportFor(declared.uri)),
        );
    } else if (defaultName !== undefined)
      this.pending.push(() => this.link(model, name, [{ name: defaultName, span: declared.head }], type, e));
    else model[name] = type.is === 'references' ? [] : byDefault;
  }

  /** Follows all names once every block stands. */
  follow(): void {
    // Following a name into the library makes further blocks, whose names wait at the end.
    for (let i = 0; i < this.pending.length; i++) this.pending[i]();
    this.pending.length = 0;
  }

  private link(model: Model, name: string, names: readonly Name[], type: Property, e: Effective): void {
    const kinds = 'to' in type ? type.to : type.is === 'file' ? type.or : [];
    const found: unknown[] = [];
    for (const n of names) {
      const target = this.target(n, kinds, e);
      if (target === 'lost') return withhold(model, name, `${label(e.declared)}: ${n.name} could not be followed`);
      if (target) found.push(target);
    }
    model[name] = type.is === 'references' ? found : found[0];
    if (type.is !== 'references' && found[0] === undefined && type.presence === 'required')
      withhold(model, name, `${names[0]?.name} does not stand in this stage`);
  }

  /** The model of the block that a name stands for; undefined while it comes later, `lost` when there is none. */
  private target(n: Name, kinds: readonly string[], e: Effective): Model | undefined | 'lost' {
    const { around } = this;
    if (kinds.includes('stage')) return around.names.stages.has(n.name) ? undefined : 'lost';
    const several = around.names.named(n.name, kinds);
    if (several.length > 1) return this.ambiguous(n, several, e);
    const own = several[0] ?? this.unnamed(n.name, kinds) ?? around.names.one(n.name);
    const target = own ?? around.scopeFor(e.declared.uri).block(n.name);
    if (!target) return this.unknown(n, kinds, e);
    if (!kinds.includes(target.kind)) {
      tell(around, n, () =>
        around
          .reportFor(e.declared.uri)
          .add(
            'input/wrong-block',
            n.span,
            `${n.name} is ${article(target.kind)}; here stands the name of ${article(kinds.join(' or '))}`,
            {
              related: [{ uri: target.uri, from: target.head.from, to: target.head.to, message: 'it is written here' }],
            },
          ),
      );
      return 'lost';
    }
    if (!own) return this.models.get(target) ?? this.make(effectiveLibrary(target, around), true);
    const aliveness = this.dormant.has(target) ? 'later' : this.aliveness(target);
    if (aliveness === 'now') return this.models.get(target) ?? 'lost';
    if (aliveness === 'later') return undefined;
    tell(around, n, () =>
      around
        .reportFor(e.declared.uri)
        .add('input/not-alive', n.span, `${n.name} no longer stands in a stage that ${label(e.declared)} is part of`, {
          related: [{ uri: target.uri, from: target.head.from, to: target.head.to, message: 'it is written here' }],
        }),
    );
    return 'lost';
  }

  /** A block of which there is one may be called by its kind. */
  private unnamed(name: string, kinds: readonly string[]): Declared | undefined {
    if (!kinds.includes(name)) return undefined;
    const all = [...this.models.keys()].filter(d => d.kind === name);
    return all.length === 1 ? all[0] : undefined;
  }

  private ambiguous(n: Name, several: readonly Declared[], e: Effective): 'lost' {
    tell(this.around, n, () =>
      this.around
        .reportFor(e.declared.uri)
        .add(
          'input/ambiguous-name',
          n.span,
          `${n.name} is the name of several blocks that may stand here; give them names of their own`,
          {
            related: several.map(b => ({ uri: b.uri, ...b.head, message: `this ${b.kind} is called ${n.name}` })),
          },
        ),
    );
    return 'lost';
  }

  private unknown(n: Name, kinds: readonly string[], e: Effective): 'lost' {
    const { around } = this;
    tell(around, n, () => {
      const own = around.names.all(kinds).map(b => b.name);
      const near = nearest(n.name, [...own, ...around.scopeFor(e.declared.uri).names(kinds)]);
      const what = `there is no ${kinds.slice(0, 3).join(' or ')} ${n.name}`;
      around
        .reportFor(e.declared.uri)
        .add(
          'input/unknown-name',
          n.span,
          near ? `${what}; the nearest is ${near}` : what,
          near ? { replace: [[`Write ${near}`, near]] } : {},
        );
    });
    return 'lost';
  }
}

const requiredKeys = new WeakMap<Declared, Map<string, object>>();
/** One object for each required property of a block, to tell of it once. */
function requiredKey(b: Declared, key: string): object {
  const keys = requiredKeys.get(b) ?? new Map<string, object>();
  requiredKeys.set(b, keys);
  if (!keys.has(key)) keys.set(key, {});
  return keys.get(key)!;
}

/** A property that stops every calculation which reads it, and says why. */
function withhold(model: Model, name: string, reason: string): void {
  Object.defineProperty(model, name, {
    enumerable: true,
    configurable: true,
    get(): never {
      throw new Withheld(reason);
    },
  });
}

const label = (b: Declared): string => (b.named ? `${b.kind} ${b.name}` : `the ${b.kind}`);
