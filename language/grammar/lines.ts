import { kindOf, opensLine, type Token } from './tokens.js';

/** How many tokens of a line are looked at to see whether it can stand inside brackets. */
const LOOK_AHEAD = 40;

export const OPERATORS: ReadonlySet<string> = new Set(['+', '*', '/', 'MINUS', '..']);
/** What leaves a value unfinished where a line ends with it. */
export const JOINS: ReadonlySet<string> = new Set([...OPERATORS, '±', ':', 'table', 'BOUND']);
const OPERANDS: ReadonlySet<string> = new Set(['NUMBER', '(', 'DATE', 'TIME']);

/** True when the line from the token at `i` on has a key or a brace in it, and so cannot stand inside brackets. */
export function lineHasMember(tokens: readonly Token[], i: number): boolean {
  const line = tokens[i].startLine;
  for (let k = i; k < tokens.length && k < i + LOOK_AHEAD && tokens[k].startLine === line; k++) {
    if (['KEY', '{'].includes(kindOf(tokens[k]))) return true;
  }
  return false;
}

/** True when the innermost bracket is closed further on in this line, before anything that cannot stand in brackets. */
export function closesOnLine(tokens: readonly Token[], i: number): boolean {
  const line = tokens[i].startLine;
  for (let k = i + 1; k < tokens.length && k < i + LOOK_AHEAD && tokens[k].startLine === line; k++) {
    const kind = kindOf(tokens[k]);
    if (kind === ']' || kind === ')') return true;
    if (['KEY', '{', '}', '[', '('].includes(kind)) return false;
  }
  return false;
}

/** A value goes on in the next line where the line before ends, or the next begins, with what joins two values. */
export function continuesValue(tokens: readonly Token[], i: number): boolean {
  const before = kindOf(tokens[i - 1]);
  if (JOINS.has(before)) return true;
  const next = tokens.at(i + 1);
  const operand = next && !opensLine(next, tokens[i]) ? kindOf(next) : '';
  const kind = kindOf(tokens[i]);
  if (kind === '[') return before === ')';
  if (kind === 'from') return operand === 'ID';
  return (OPERATORS.has(kind) || kind === '±') && OPERANDS.has(operand);
}
