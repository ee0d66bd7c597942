import type { Declared } from '../build/index.js';
import type { Block } from '../model/index.js';
import { fullName, results, resultsOf, type Result } from '../results/index.js';
import type { Fault } from './host.js';
import type { AnalyzedHouse } from './house.js';
import type { Named } from './results.js';
import { outcomeOf, subjectsOf, type StageView } from './views.js';

/** The model of a written block in a stage; undefined when it does not stand there. */
export function modelOf(block: Declared, view: StageView): Block | undefined {
  for (const root of view.stage ? [view.house, view.stage] : [view.house])
    for (const [address, model] of subjectsOf(root).byAddress)
      if (view.built.places.get(address)?.declared === block) return model;
  return undefined;
}

/** The stage to speak of a block in: the one at hand, else the first in which it stands. */
export function viewOf(block: Declared, house: AnalyzedHouse, wanted: StageView | undefined): StageView | undefined {
  if (wanted && modelOf(block, wanted)) return wanted;
  return house.views.find(view => modelOf(block, view));
}

/** The named results of one block in a stage. */
export function resultsOfBlock(block: Block, view: StageView, fault: Fault): Named[] {
  return resultsOf(block.is).map(result => named(result, block, view, fault));
}

/** One result of the house. */
export function resultOfHouse(name: string, view: StageView, fault: Fault): Named | undefined {
  const result = results.find(r => r.name === name && r.of === 'house');
  return result && named(result, view.house, view, fault);
}

/** The few results of the house that a first look shows. */
export function headlines(view: StageView, fault: Fault): Named[] {
  return results.filter(r => r.headline && r.of === 'house').map(result => named(result, view.house, view, fault));
}

function named(result: Result, subject: Block, view: StageView, fault: Fault): Named {
  const outcome = outcomeOf(result, subject, view.house, fault);
  return { name: fullName(result, subject), result, subject, outcome };
}
