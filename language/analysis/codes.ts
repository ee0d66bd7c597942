import { inputCodes } from '../build/index.js';
import { rules } from '../rules/index.js';

/**
 * Codes whose severity a project may set: those of rules and of the meaning of a text. What cannot be read at all, and a
 * fault of the program, are always errors, so that nothing passes for clean.
 */
export const settableCodes: ReadonlySet<string> = new Set([...rules.map(r => r.code), ...Object.keys(inputCodes)]);

/** Codes that a file may accept with a reason. */
export const acceptableCodes: ReadonlySet<string> = new Set([...settableCodes].filter(c => !c.startsWith('accept/')));
