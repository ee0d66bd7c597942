/** The session that ties the language together. */
export { inOrder, type Finding } from './finding.js';
export type { Host } from './host.js';
export type { LoadedFile } from './loader.js';
export { effectiveOf, placeOf } from './place.js';
export { namedResults, worksheet, type Named } from './results.js';
export { Session, type Analysis, type AnalyzedHouse, type Asked } from './session.js';
export { SETTINGS_FILE, type Settings } from './settings.js';
export { subjectsOf, type Outcome, type StageView } from './views.js';
