import {
  headerRange,
  isAdd,
  isBlock,
  isChange,
  type Member,
  parse,
  rangeOf,
  rangeOfProperty,
  textOf,
} from '../../language/grammar/index.js';

/** One change of a text, as a keystroke makes it. */
export interface Edit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

/** A member as a reader would tell it from others: where it begins, in which block, and what it says. */
interface Fact {
  readonly from: number;
  readonly to: number;
  readonly owner: number;
  readonly says: string;
}

/** Stands for the place of a brace that was put in. */
const MENDED = -2;

export function facts(text: string): Fact[] {
  const found: Fact[] = [];
  const visit = (members: readonly Member[], owner: number): void => {
    for (const member of members) {
      const { from, to } = rangeOf(member);
      if (isBlock(member) || isAdd(member) || isChange(member)) {
        const open = rangeOfProperty(member, 'open')?.from ?? MENDED;
        found.push({ from, to: headerRange(member).to, owner, says: '' });
        visit(member.members, open);
      } else found.push({ from, to, owner, says: textOf(member).replace(/\s+/g, ' ') });
    }
  };
  visit(parse(text).file.members, -1);
  return found;
}

export function apply(text: string, { at, remove, insert }: Edit): string {
  return text.slice(0, at) + insert + text.slice(at + remove);
}

/**
 * The members that an edit took along although it did not touch them: lost, moved to another block, or changed in what they
 * say. Empty when the edit stayed where it was made.
 */
export function casualties(text: string, before: readonly Fact[], edit: Edit): string[] {
  const { at, remove, insert } = edit;
  const shift = insert.length - remove;
  const edited = apply(text, edit);
  const back = (offset: number) =>
    offset < at + insert.length ? Math.min(offset, at) : Math.max(at + remove, offset - shift);
  const isBrace = text.slice(at, at + remove).includes('{');
  const place = (offset: number) => (offset >= at && offset <= at + remove ? (isBrace ? MENDED : at) : offset);
  // Two braces side by side: whichever of them opens the block, it is the same block.
  const brace = (offset: number) =>
    offset >= 0 && Math.abs(offset - at) <= 2 ? (isBrace ? MENDED : at) : place(offset);
  const after = new Set(facts(edited).map(fact => `${place(back(fact.from))} ${brace(back(fact.owner))} ${fact.says}`));
  const blank = (from: number, to: number) => from >= to || /^[ \t]*$/.test(text.slice(from, to));
  const touched = (fact: Fact) => blank(at + remove, fact.from) && blank(fact.to, at);
  return before
    .filter(fact => !touched(fact) && !after.has(`${place(fact.from)} ${brace(fact.owner)} ${fact.says}`))
    .map(fact => fact.says);
}

export const deletions = (text: string): Edit[] => Array.from(text, (_, at) => ({ at, remove: 1, insert: '' }));

export const insertions = (text: string, insert: string): Edit[] =>
  Array.from({ length: text.length + 1 }, (_, at) => ({ at, remove: 0, insert }));

/** What people type between two lines, from its first letter to its last. */
const SNIPPETS = [
  'wall east like wall-1971 {',
  'wall east "East wall" from audit { area: 12 m2, faces: E }',
  'area: 2 * (1.2 m * 1.5 m) + 0.9 m2',
  'days: [sat, sun, mon]',
  'readings: table (pressure Pa, flow L/s) [ 50 612 ]',
  'flow: 612 L/s ± 3 % from audit',
  'expect { heating.worst-margin: at least 0 kW }',
  'weather: tmy3 "weather/other.csv"',
  'add circuit c-new in main { breaker: 15 A }',
  'remove flue',
  'accept circuit/voltage-drop because "old run" until 2027-01-01',
  '/** what it is */ storey loft { area: 20 m2 }',
];

/** Every `step`-th beginning of every snippet, on a line of its own before each line of the text. */
export function halfTypedLines(text: string, step: number): Edit[] {
  const lines = [...text.matchAll(/^[ ]*(?=\S)/gm)];
  const beginnings = SNIPPETS.flatMap(snippet => Array.from(snippet, (_, i) => snippet.slice(0, i + 1))).filter(
    (_, i) => i % step === 0,
  );
  return lines.flatMap(({ index, 0: indent }) =>
    beginnings.map(typed => ({ at: index, remove: 0, insert: `${indent}${typed}\n` })),
  );
}
