import type { Sheet } from './worksheet.js';

/**
 * A calculation on one object (a house, a circuit) that is done once for it: a model never changes, and one with the same
 * values is the same object. Reading the worksheet runs the same function again. What it throws is kept as well.
 */
export function once<A extends object, R>(compute: (subject: A, sheet?: Sheet) => R): (subject: A, sheet?: Sheet) => R {
  const kept = new WeakMap<A, { readonly value: R } | { readonly fault: unknown }>();
  return (subject, sheet) => {
    if (sheet) return compute(subject, sheet);
    let outcome = kept.get(subject);
    if (!outcome) kept.set(subject, (outcome = attempt(compute, subject)));
    if ('fault' in outcome) throw outcome.fault;
    return outcome.value;
  };
}

function attempt<A, R>(compute: (subject: A) => R, subject: A): { readonly value: R } | { readonly fault: unknown } {
  try {
    return { value: compute(subject) };
  } catch (fault) {
    return { fault };
  }
}
