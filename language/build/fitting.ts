import { isAdd, isBlock, isChange, isProperty, isRemove, type Member } from '../grammar/index.js';
import { blocks, propertyOf } from '../vocabulary/index.js';

/** The kind, among some, that has the most of the members of a block whose own kind cannot be read. */
export function fittingKind(members: readonly Member[], among: Iterable<string>): string | undefined {
  let best: string | undefined;
  let bestScore = 0;
  for (const kind of among) {
    if (blocks.get(kind)?.bounds) continue; // Expectations take any key and would fit everything.
    const score = fit(members, kind);
    if (score > bestScore) {
      best = kind;
      bestScore = score;
    }
  }
  return best;
}

/** How many members a kind can hold, less those that it cannot. */
function fit(members: readonly Member[], kind: string): number {
  const type = blocks.get(kind)!;
  let score = 0;
  for (const m of members) {
    const holds = isProperty(m)
      ? propertyOf(type, m.key) !== undefined
      : isBlock(m)
        ? type.holds?.includes(m.kind)
        : (isAdd(m) || isChange(m) || isRemove(m)) && kind === 'stage';
    score += holds ? 1 : -1;
  }
  return score;
}
