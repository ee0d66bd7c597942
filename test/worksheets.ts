import { all, create } from 'mathjs';
import { expect } from 'vitest';
import type { Sheet, Step } from '../language/engine/worksheet.js';

const math = create(all, {});
math.import({ ln: (x: number) => Math.log(x) }, {});

/** The worksheet that a calculation writes. */
export function stepsOf(calculate: (sheet: Sheet) => unknown): readonly Step[] {
  const steps: Step[] = [];
  calculate(make => steps.push(make()));
  return steps;
}

/** Every line that has a formula gives its value from its inputs, and no line is not a number. */
export function checkSheet(steps: readonly Step[]): void {
  expect(steps.length).toBeGreaterThan(0);
  for (const step of steps) {
    expect(Number.isFinite(step.value), step.label).toBe(true);
    if (!step.formula) continue;
    const scope = Object.fromEntries(Object.entries(step.inputs ?? {}).map(([name, [value]]) => [name, value]));
    const value = math.evaluate(step.formula, scope) as number;
    const tolerance = 1e-9 * Math.max(1, Math.abs(step.value));
    expect(
      Math.abs(value - step.value),
      `${step.label}: ${step.formula} gives ${value}, printed ${step.value}`,
    ).toBeLessThan(tolerance);
  }
}
