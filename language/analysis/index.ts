/** The session that ties the language together. */
export { inOrder, INTERNAL_FAULT, type Finding } from './finding.js';
export type { Fault, Host } from './host.js';
export type { LoadedFile } from './loader.js';
export { effectiveOf, placeOf } from './place.js';
export { namedResults, worksheet, type Named } from './results.js';
export type { AnalyzedHouse } from './house.js';
export type { Asked } from './asked.js';
export { Session, type Analysis } from './session.js';
export { SETTINGS_FILE, type Settings } from './settings.js';
export { subjectsOf, type Outcome, type StageView } from './views.js';

/* What an editor asks of an analysis, whichever editor it is. */
export { moveOf, type Move } from './change.js';
export { headlines, modelOf, resultOfHouse, resultsOfBlock, viewOf } from './contribution.js';
export { defaultOf, describeBlock, describeProperty, inBothSystems } from './describe.js';
export { isReservedName } from '../build/index.js';
export { isSame, kindsOf, mentionAt, mentionsIn, type Mention } from './mentions.js';
export { pointedAt, type Part, type Pointed } from './pointed.js';
export { proposalsAt, type Proposals } from './propose.js';
export type { Proposal } from './proposal.js';
