import {
  inBothSystems,
  resultOfHouse,
  resultsOfBlock,
  subjectsOf,
  worksheet,
  type AnalyzedHouse,
  type Fault,
  type Finding,
  type Named,
  type StageView,
} from '../../language/index.js';
import type { Step } from '../../language/engine/worksheet.js';
import { worksheetMarkdown } from '../report/worksheet.js';

/** A hover is for a look, not for a review: longer worksheets show what is summed up, and where to read on. */
const MOST_LINES = 24;

/** The worksheet of some results as Markdown; lines that several share stand once. */
export function worksheetOf(named: readonly Named[], view: StageView, house: AnalyzedHouse, fault: Fault): string {
  const steps: Step[] = [];
  const seen = new Set<string>();
  for (const one of named) {
    if (!('value' in one.outcome)) continue;
    for (const step of worksheet(one, view, fault).steps) {
      const key = JSON.stringify(step);
      if (!seen.has(key)) steps.push(step);
      seen.add(key);
    }
  }
  if (!steps.length) return '';
  const short = shortened(steps);
  const rest = steps.length - short.length;
  const more = rest ? `\n\n*${rest} more lines: wattwright calc --worksheet*` : '';
  return `**Worksheet**\n\n${worksheetMarkdown(short, { currency: house.currency })}${more}`;
}

function shortened(steps: readonly Step[]): readonly Step[] {
  if (steps.length <= MOST_LINES) return steps;
  const sums = steps.filter(s => s.role === 'total' || s.role === 'item');
  return sums.length ? sums.slice(-MOST_LINES) : steps.slice(-MOST_LINES);
}

/** Results of the house that findings of a domain rest on, when the block at hand has none of its own. */
const BEHIND: Record<string, readonly string[]> = {
  heat: ['heating.worst-margin', 'heating.design-load'],
  service: ['service.demand'],
  management: ['service.demand', 'service.demand-without-management'],
  plan: ['service.demand'],
  air: ['air.ach50'],
};

/** The results behind a finding of a rule. */
export function behind(finding: Finding, view: StageView, fault: Fault): Named[] {
  const subject = subjectsOf(view.house).byAddress.get(finding.address ?? '');
  const own = subject ? resultsOfBlock(subject, view, fault) : [];
  const domain = finding.code.slice(0, finding.code.indexOf('/'));
  const ofHouse = (BEHIND[domain] ?? []).flatMap(name => resultOfHouse(name, view, fault) ?? []);
  return own.length && subject?.is !== 'house' ? own : ofHouse;
}

/** How a result goes over the stages; a stage that changes nothing is left out. */
export function valuesByStage(house: AnalyzedHouse, at: (view: StageView) => Named | undefined): string {
  const lines: string[] = [];
  let last = '';
  for (const view of house.views) {
    const named = at(view);
    if (!named) continue;
    const { outcome, result } = named;
    const text =
      'value' in outcome
        ? inBothSystems(outcome.value, result.dimension, house.currency)
        : `withheld: ${outcome.withheld}`;
    if (text !== last) lines.push(`- ${view.stage ? view.name : 'today'}: ${text}`);
    last = text;
  }
  return lines.join('\n');
}
