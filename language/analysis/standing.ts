import type { Declared } from '../build/index.js';
import type { AnalyzedHouse } from './house.js';
import type { Analysis } from './session.js';
import type { StageView } from './views.js';

/** Which blocks may be named at a place, by what stands in its stage. */
export class Standing {
  private readonly view: StageView | undefined;

  constructor(
    private readonly analysis: Analysis,
    private readonly house: AnalyzedHouse | undefined,
    stage: string | undefined,
  ) {
    this.view =
      house?.views.find(v => (stage === undefined ? v.stage === undefined : v.name === stage)) ?? house?.views[0];
  }

  /** Own blocks of some kinds that stand here or come with a later stage, each name once. */
  own(kinds: readonly string[]): Declared[] {
    const { house, view } = this;
    if (!house || !view) return [];
    if (kinds.includes('stage')) return [...house.built.names.stages.values()];
    const alive = new Set([view, ...(view.later as StageView[])].flatMap(declaredIn));
    const all = house.built.names.all(kinds);
    return all.filter(b => alive.has(b) && all.filter(o => o.name === b.name).length === 1);
  }

  /** Blocks of the file, its imports and the built-in library. */
  seen(kinds: readonly string[]): Declared[] {
    const { scope } = this.analysis;
    const own = new Set(this.house?.built.names.all(kinds).map(b => b.name));
    return scope.names(kinds).flatMap(name => (own.has(name) ? [] : (scope.block(name) ?? [])));
  }

  names(kinds: readonly string[]): string[] {
    return kinds.length ? [...this.own(kinds), ...this.seen(kinds)].map(b => b.name) : [];
  }

  /** What `change` and `remove` may name: blocks that stand before the stage or were added by it, and are not gone above. */
  changeable(offset: number): Declared[] {
    const { house, view } = this;
    if (!house || !view?.stage) return [];
    const stage = view.built.declared;
    const gone = new Set(
      (stage?.instructions ?? [])
        .filter(i => i.does === 'remove' && i.span.to < offset)
        .flatMap(i => i.target?.name ?? []),
    );
    const added = (stage?.instructions ?? []).flatMap(i => (i.block && i.span.from > offset ? [i.block] : []));
    const before = view.before as StageView | undefined;
    const alive = new Set([...(before ? declaredIn(before) : []), ...declaredIn(view)]);
    const all = house.built.names.all().filter(b => alive.has(b) && !added.includes(b) && !gone.has(b.name));
    return all.filter(b => all.filter(o => o.name === b.name).length === 1 && b.kind !== 'house');
  }

  sources(): Declared[] {
    const inFiles = [...this.analysis.files.values()].flatMap(f => f.declared.blocks.filter(b => b.kind === 'source'));
    return [...(this.house?.built.names.sources.values() ?? []), ...inFiles];
  }
}

const declaredIn = (view: StageView): Declared[] => [...view.built.places.values()].map(e => e.declared);
