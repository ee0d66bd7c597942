import type { Sheet } from '../worksheet.js';

/** A breaker in a panel: a tandem is two circuits in one space on one leg. */
export interface Breaker {
  readonly poles: number;
  readonly form: 'full' | 'half-of-tandem';
}

/** Spaces that breakers take: one for each pole, one for each pair of tandem halves. */
export function spacesUsed(breakers: readonly Breaker[], sheet?: Sheet): number {
  const full = breakers.filter(breaker => breaker.form === 'full');
  const poles = full.reduce((sum, breaker) => sum + breaker.poles, 0);
  const halves = breakers.length - full.length;
  const used = poles + Math.ceil(halves / 2);
  sheet?.(() => ({
    label: 'Spaces used',
    formula: 'poles + ceil(halves / 2)',
    inputs: { poles: [poles, 'number'], halves: [halves, 'number'] },
    value: used,
    dimension: 'number',
    source: 'one space for each pole, one for two tandem halves',
  }));
  return used;
}

/** Spaces left; below zero when breakers outnumber spaces. */
export function spacesLeft(spaces: number, breakers: readonly Breaker[], sheet?: Sheet): number {
  const used = spacesUsed(breakers, sheet);
  sheet?.(() => ({
    label: 'Spaces left',
    formula: 'spaces - used',
    inputs: { spaces: [spaces, 'number'], used: [used, 'number'] },
    value: spaces - used,
    dimension: 'number',
    source: 'panel as stated',
    role: 'total',
  }));
  return spaces - used;
}

/**
 * Pairs of neighbouring free spaces on one side, where a two-pole breaker fits without moving another. Odd numbers are on
 * one side and even ones on the other, as usual. Positions are the upper space of each breaker.
 */
export function freePairs(
  spaces: number,
  placed: readonly { readonly position: number; readonly poles: number }[],
): number {
  const taken = new Set(
    placed.flatMap(({ position, poles }) => Array.from({ length: poles }, (_, i) => position + 2 * i)),
  );
  let pairs = 0;
  for (const first of [1, 2])
    for (let space = first; space + 2 <= spaces; space += 2)
      if (!taken.has(space) && !taken.has(space + 2)) {
        pairs++;
        space += 2;
      }
  return pairs;
}
