/** The one door of this room: text to syntax tree and back to places in the text. */
export * from './generated/ast.js';
export { numberOf } from './number.js';
export { LARGEST_FILE, parse, type Syntax } from './parse.js';
export type { Span, SyntaxCode, SyntaxProblem, TextChange } from './problems.js';
export { docComment, headerRange, isBodyDamaged, isDamaged, rangeOf, rangeOfProperty, textOf } from './places.js';
export { applied, format } from './format/format.js';
export { type Context, contextAt, type Enclosing } from './context.js';
