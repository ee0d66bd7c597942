import type { Step } from '../engine/worksheet.js';
import type { Block } from '../model/index.js';
import { fullName, results, type Result, type Tier } from '../results/index.js';
import { reaches } from './judge.js';
import { compute, outcomeOf, subjectsOf, type Outcome, type StageView } from './views.js';
import type { Fault } from './host.js';

/** A named result of one stage: its value in SI, or why it is withheld. */
export interface Named {
  readonly name: string;
  readonly result: Result;
  readonly subject: Block;
  readonly outcome: Outcome;
}

/** All named results of a stage up to a tier, the house's first, then block by block. */
export function namedResults(view: StageView, upto: Tier, fault: Fault): Named[] {
  const named: Named[] = [];
  for (const result of results) {
    if (!reaches(upto, result.tier)) continue;
    for (const subject of subjectsOf(view.house).byKind.get(result.of) ?? [])
      named.push({
        name: fullName(result, subject),
        result,
        subject,
        outcome: outcomeOf(result, subject, view.house, fault),
      });
  }
  return named;
}

/** The worksheet of a result: the steps of its own calculation, recorded while it runs once more. */
export function worksheet(named: Named, view: StageView, fault: Fault): { steps: readonly Step[]; outcome: Outcome } {
  const steps: Step[] = [];
  const outcome = compute(
    () => named.result.compute(named.subject, view.house, make => steps.push(make())),
    fault,
    named.name,
  );
  return { steps, outcome };
}
