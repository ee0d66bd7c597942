import {
  addressOf,
  insertBefore,
  insertBlock,
  insertProperty,
  type Effective,
  type FileChange,
  type Mending,
} from '../build/index.js';
import type { Block } from '../model/index.js';
import type { Change, Fix, Spot } from '../rules/index.js';
import type { StageView } from './views.js';

export interface Placed {
  readonly uri: string;
  readonly from: number;
  readonly to: number;
}

/** The place in the text that a spot of the model means: the value where it is written, else the head of the block. */
export function placeOf(spot: Spot, view: StageView): Placed | undefined {
  const e = effectiveOf(spot.block, view);
  if (!e) return undefined;
  const given = spot.property === undefined ? undefined : e.properties.get(spot.property);
  if (given?.how === 'copied' && e.declared.like) return { uri: e.declared.uri, ...e.declared.like.span };
  if (given) return { uri: given.property.uri, ...given.property.valueSpan };
  return { uri: e.declared.uri, ...e.declared.head };
}

export const effectiveOf = (block: Block, view: StageView): Effective | undefined =>
  view.built.places.get(addressOf(block) ?? '');

/** Changes of the model as changes of the text; undefined when the text cannot be changed so. */
export function mendingOf(fix: Fix, view: StageView): Mending | undefined {
  const changes: FileChange[] = [];
  for (const change of fix.changes) {
    const written = textChange(change, view);
    if (!written) return undefined;
    changes.push(written);
  }
  return { title: fix.title, changes, ...(fix.preferred ? { preferred: true as const } : {}) };
}

function textChange(change: Change, view: StageView): FileChange | undefined {
  if ('set' in change) {
    const e = effectiveOf(change.set.block, view);
    if (!e || change.set.property === undefined) return undefined;
    const given = e.properties.get(change.set.property);
    if (given?.how === 'written')
      return {
        uri: given.property.uri,
        from: given.property.valueSpan.from,
        to: given.property.valueSpan.to,
        text: change.to,
      };
    return e.declared.implicit ? undefined : insertProperty(e.declared, `${change.set.property}: ${change.to}`);
  }
  const { kind, name, in: parent, body } = change.add;
  const into = effectiveOf(parent, view);
  const near = effectiveOf(change.near, view);
  if (!into || !near) return undefined;
  const stage = stageThatAdds(near, view);
  if (stage) return insertBefore(stage, `add ${kind} ${name} in ${into.declared.name} { ${body} }`);
  if (into.declared.implicit) return undefined;
  // A block that a stage adds is written as an `add`, and its children stand in its own body.
  return insertBlock(into.declared, `${kind} ${name} { ${body} }`);
}

/** The block, itself or around it, that a stage adds: what belongs to it is added in the same stage. */
function stageThatAdds(near: Effective, view: StageView) {
  for (let v: StageView | undefined = view; v; v = v.before as StageView | undefined)
    for (const { block } of v.built.declared?.instructions ?? [])
      if (
        block &&
        block.span.from <= near.declared.span.from &&
        block.span.to >= near.declared.span.to &&
        block.uri === near.declared.uri
      )
        return block;
  return undefined;
}
