import type { Report } from '../build/index.js';
import type { House } from '../model/index.js';
import { resultOf } from '../results/index.js';
import type { Fault } from './host.js';
import { compute, type StageView } from './views.js';

/** Results that a house plainly asks for by what it says. */
const ASKED: readonly { readonly name: string; readonly by: (house: House) => boolean }[] = [
  {
    name: 'heating.design-load',
    by: house => house.design.some(d => d.name === 'code') && (house.statedLoad !== undefined || hasSkin(house)),
  },
  { name: 'service.demand', by: house => house.electrical.service !== undefined && house.electricalCode !== undefined },
];

const hasSkin = ({ envelope }: House): boolean =>
  [envelope.ceiling, envelope.wall, envelope.floor, envelope.basementWall].some(parts => parts.length > 0);

/** Tells of a result that is asked for and withheld, so that a file in which nothing could be judged is not taken for clean. */
export function tellUnanswered(
  views: readonly StageView[],
  head: { readonly from: number; readonly to: number },
  report: Report,
  fault: Fault,
): void {
  for (const { name, by } of ASKED)
    for (const view of views) {
      const reason = withheld(name, by, view.house, fault);
      if (reason === undefined) continue;
      report.add(
        'input/withheld',
        head,
        `${name} is not known${view.stage ? ` in stage ${view.name}` : ''}: ${reason}`,
      );
      break;
    }
}

function withheld(name: string, by: (house: House) => boolean, house: House, fault: Fault): string | undefined {
  const result = resultOf(name, 'house');
  if (!result) throw new Error(`there is no result ${name}`);
  // What asks for it may itself be damaged; then the text is told of.
  const outcome = compute(() => (by(house) ? result.compute(house, house) : 0), fault, name);
  return 'withheld' in outcome ? outcome.withheld : undefined;
}
