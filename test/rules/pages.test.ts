import { describe, expect, it } from 'vitest';
import { inputCodes } from '../../language/build/index.js';
import type { SyntaxCode } from '../../language/grammar/index.js';
import { rules } from '../../language/rules/index.js';
import { analyze, markOf, mended, pages, troubling, type Mark } from './page.js';

/** Every code of the reader; one that is missing or too many does not compile. */
const syntaxCodes = Object.keys({
  'syntax/unexpected': 0,
  'syntax/missing': 0,
  'syntax/separator': 0,
  'syntax/not-closed': 0,
  'syntax/closes-nothing': 0,
  'syntax/number': 0,
  'syntax/name': 0,
  'syntax/unit-place': 0,
  'syntax/string': 0,
  'syntax/comment': 0,
  'syntax/character': 0,
  'syntax/import-place': 0,
  'syntax/too-deep': 0,
  'syntax/too-long': 0,
  'syntax/too-large': 0,
  'syntax/too-many': 0,
  'syntax/internal': 0,
} satisfies Record<SyntaxCode, 0>);

/** Their examples would be of thousands of lines, or would need a fault of ours; other tests make them. */
const withoutExample = new Set([
  'syntax/too-large',
  'syntax/too-long',
  'syntax/too-deep',
  'syntax/too-many',
  'syntax/internal',
  'internal/fault',
]);

const HEADINGS = ['Why it matters', 'What it rests on', 'How to mend it', 'Fails', 'Passes'];

const codes: string[] = [
  ...new Set([
    ...rules.map(r => r.code),
    ...Object.keys(inputCodes),
    ...syntaxCodes,
    'settings/unreadable',
    'internal/fault',
  ]),
];
const all = pages();

it('every finding has a page, and every page a finding', () => {
  expect([...all.keys()].sort()).toEqual([...codes].sort());
});

describe.each([...all.values()])('$code', ({ code, title, headings, fails, passes }) => {
  const short = withoutExample.has(code);

  it('has the title and the headings of a page', () => {
    expect(title).toBe(code);
    const wanted = short ? HEADINGS.slice(0, 3) : HEADINGS;
    expect(headings.filter(h => h !== 'Caution')).toEqual(wanted);
  });

  if (short) return;

  it('finds in the failing example what is marked there', async () => {
    expect(fails.marks.map(m => m.code)).toContain(code);
    const { findings } = await analyze(fails.files);
    const told = findings.filter(f => troubling(f.severity) || fails.marks.some(m => m.code === f.code));
    expect(sorted(told.map(f => markOf(f, fails.files)))).toEqual(sorted(fails.marks));
  });

  it('mends the failing example by each fix that it offers', async () => {
    const { findings } = await analyze(fails.files);
    const before = new Set(findings.filter(f => troubling(f.severity)).map(f => f.code));
    const count = findings.filter(f => f.code === code).length;
    for (const fix of findings.filter(f => f.code === code).flatMap(f => f.fixes())) {
      const after = (await analyze(mended(fails.files, fix))).findings;
      expect(after.filter(f => f.code === code).length, fix.title).toBeLessThan(count);
      const fresh = after.filter(f => troubling(f.severity) && !before.has(f.code));
      expect(
        fresh.map(f => `${f.code}: ${f.message}`),
        fix.title,
      ).toEqual([]);
    }
  });

  it('finds nothing of it, and no error, in the passing example', async () => {
    expect(passes.files.size).toBeGreaterThan(0);
    const { findings } = await analyze(passes.files);
    const left = findings.filter(f => f.severity === 'error' || f.code === code);
    expect(left.map(f => `${f.code}: ${f.message}`)).toEqual([]);
  });
});

const sorted = (marks: readonly Mark[]): string[] =>
  marks.map(m => `${m.file}:${m.line}:${m.from}-${m.to} ${m.code}`).sort();
