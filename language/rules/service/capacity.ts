import type { View } from '../define.js';

/**
 * Whether the service of this stage is overloaded only because a stage brings its loads before a later one brings the
 * capacity: today it holds, and later it holds again.
 */
export function awaitsCapacity(view: View): boolean {
  if (!isOverloaded(view) || !view.later.some(holds)) return false;
  for (let earlier = view.before; earlier; earlier = earlier.before) if (!isOverloaded(earlier)) return true;
  return false;
}

export const isOverloaded = (view: View): boolean => (view.result('service.headroom') ?? 0) < 0;
export const holds = (view: View): boolean => (view.result('service.headroom') ?? -1) >= 0;
