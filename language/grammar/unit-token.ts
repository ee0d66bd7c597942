/** One unit with its power: `m2`, `°C`, `ft^2`, `%`, `¢`. */
const ATOM = '(?:[°Δ%¢$€£¥µμΩ′″]|[A-Za-z])[A-Za-z0-9²³°]*(?:\\^-?[0-9])?';
const PRODUCT = `${ATOM}(?:[·⋅]${ATOM})*`;
/** A unit with at most two quotients. The slash is glued to both sides; with spaces around it, it divides. */
const UNIT = new RegExp(`${PRODUCT}(?:/(?:\\(${PRODUCT}\\)|${PRODUCT})){0,2}`, 'y');
/** What makes a longer word of it: the unit is then that whole word, and unknown, never a part of it. */
const REST = /(?:(?:[.-](?=[A-Za-z])|_)\w*)+/y;

/** Words that may stand behind a number without being its unit. `in` is missing on purpose: behind a number it is the inch. */
const NOT_A_UNIT: ReadonlySet<string> = new Set([
  ...['from', 'until', 'because', 'like', 'at'],
  ...['add', 'change', 'remove', 'accept', 'import'],
]);

/** The unit that begins at `offset`, or nothing. Whether the unit is known is judged elsewhere. */
export function unitAt(text: string, offset: number): string | undefined {
  UNIT.lastIndex = offset;
  const found = UNIT.exec(text)?.[0];
  if (!found) return undefined;
  const unit = found + restOfWord(text, offset + found.length);
  if (NOT_A_UNIT.has(unit) || colonFollows(text, offset + unit.length)) return undefined;
  return unit;
}

function restOfWord(text: string, offset: number): string {
  REST.lastIndex = offset;
  return REST.exec(text)?.[0] ?? '';
}

function colonFollows(text: string, offset: number): boolean {
  let i = offset;
  while (text[i] === ' ' || text[i] === '\t') i++;
  return text[i] === ':';
}
