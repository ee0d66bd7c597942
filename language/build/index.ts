/** From syntax trees to typed models: what a file says, what its names mean, what each stage makes of the house. */
export { addressOf } from './assemble.js';
export { besideOf, filesNamed, resolvePath } from './beside.js';
export { declare, isReservedName } from './declare.js';
export type { Declared, DeclaredFile, DeclaredProperty, Instruction, Limit, Name } from './declared.js';
export { insertBefore, insertBlock, insertProperty, type FileChange } from './edit.js';
export type { Effective } from './effective.js';
export { buildHouse, judgeLibrary, type BuiltHouse, type BuiltStage, type Kept, type Models } from './house.js';
export { exampleOf } from './missing.js';
export { inputCodes, Report, type Mending, type Problem } from './problem.js';
export { fileName, scopeOf, type Scope } from './scope.js';
export { wanted } from './value.js';
export { pack, unpack } from './shipped.js';
export { article } from './words.js';
