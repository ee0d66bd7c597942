import { evaluate } from 'mathjs';
import { expect } from 'vitest';
import type { Sheet, Step } from '../../../language/engine/worksheet.js';

/** Records the worksheet of a calculation. */
export function recorded(run: (sheet: Sheet) => unknown): readonly Step[] {
  const steps: Step[] = [];
  run(make => steps.push(make()));
  return steps;
}

/** Every line has its source, and every printed formula gives the printed value with the printed inputs. */
export function expectToEvaluate(steps: readonly Step[]): void {
  expect(steps.length).toBeGreaterThan(0);
  for (const step of steps) {
    expect(step.source, step.label).toBeTruthy();
    expect(Number.isFinite(step.value), step.label).toBe(true);
    if (!step.formula) continue;
    const scope = Object.fromEntries(Object.entries(step.inputs ?? {}).map(([name, [value]]) => [name, value]));
    expect(evaluate(step.formula, scope), `${step.label}: ${step.formula}`).toBeCloseTo(step.value, 6);
  }
}
