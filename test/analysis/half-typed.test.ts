import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../language/index.js';
import { ASKED, faults, FOLDER, sessionOver } from '../analyze.js';

/*
 * A slip of the pen costs the member in which it stands and nothing elsewhere: all other values are read as before, and a
 * house in another place of the file is judged as before. Every position is tried with WATTWRIGHT_DEEP=1; in the
 * sample of positions of the usual run one more may fail than the share allows.
 */

const SAMPLES = path.resolve(import.meta.dirname, '../../samples');
const DEEP = process.env.WATTWRIGHT_DEEP === '1';
/** Positions that are tried in each sample. */
const TRIALS = DEEP ? Infinity : 60;

const load = (name: string) => readFileSync(path.join(SAMPLES, name), 'utf8');
const beside = {
  'library/assemblies.house': load('library/assemblies.house'),
  'library/equipment.house': load('library/equipment.house'),
};
const HOUSES = ['tamarack/tamarack.house', 'juniper/juniper.house', 'faults/faults.house'];

interface Edit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

/** Every property of the file by where it stands, with its value. */
function values(analysis: Analysis): Map<string, string> {
  const found = new Map<string, string>();
  const place = ({ span }: { span: { from: number; to: number } }) => `${span.from} ${span.to}`;
  type Block = (typeof analysis.file.declared.blocks)[number];
  const walk = (b: Block): void => {
    for (const p of b.properties.values())
      found.set(
        `${place(p)} ${p.key}`,
        JSON.stringify(p.value, (k, v: unknown) => (k === 'span' ? undefined : v)),
      );
    b.children.filter(c => !c.implicit).forEach(walk);
    for (const i of b.instructions) {
      for (const p of i.properties?.values() ?? [])
        found.set(
          `${place(p)} ${p.key}`,
          JSON.stringify(p.value, (k, v: unknown) => (k === 'span' ? undefined : v)),
        );
      if (i.block) walk(i.block);
    }
  };
  analysis.file.declared.blocks.forEach(walk);
  return found;
}

/** Parts of what was known elsewhere that an edit has lost: values, and findings of other houses. */
function lost(before: Analysis, after: Analysis, { at, remove, insert }: Edit): string[] {
  const { text } = before.file.syntax;
  const line = {
    from: text.lastIndexOf('\n', at - 1) + 1,
    to: (text.indexOf('\n', at + remove) + text.length) % text.length,
  };
  const shift = (offset: number) => (offset >= at + remove ? offset + insert.length - remove : offset);
  const gone: string[] = [];
  const now = values(after);
  for (const [key, value] of values(before)) {
    const [first, last, name] = key.split(' ');
    const [from, to] = [Number(first), Number(last)];
    // The member in which it stands, and those that share its line, may be lost.
    if (to >= line.from && from <= line.to) continue;
    if (now.get(`${shift(from)} ${shift(to)} ${name}`) !== value) gone.push(key);
  }
  const house = before.file.declared.blocks.find(b => b.span.from <= at && b.span.to >= at);
  const told = new Set(after.findings.map(f => `${f.code}|${f.from}|${f.message}`));
  for (const f of before.findings) {
    if (f.uri !== before.uri || !house || (f.from >= house.span.from && f.to <= house.span.to)) continue;
    if (!told.has(`${f.code}|${shift(f.from)}|${f.message}`)) gone.push(f.code);
  }
  return gone;
}

async function trial(
  name: string,
  edits: (text: string) => Iterable<Edit>,
): Promise<{ tried: number; whole: number; worst: string[] }> {
  const uri = `${FOLDER}/${name}`;
  const text = load(name);
  const session = sessionOver({ ...beside, [name]: text });
  const before = (await session.analyze(uri, ASKED))!;
  let tried = 0;
  let whole = 0;
  const worst: string[] = [];
  for (const edit of edits(text)) {
    const edited = text.slice(0, edit.at) + edit.insert + text.slice(edit.at + edit.remove);
    session.update(uri, edited);
    const after = (await session.analyze(uri, ASKED))!;
    const gone = lost(before, after, edit);
    tried++;
    if (!gone.length) whole++;
    else
      worst.push(
        `${JSON.stringify(text.slice(edit.at - 20, edit.at))} ← ${JSON.stringify(edit.insert)}${edit.remove ? ' deleted' : ''}: ${gone.length} lost`,
      );
    // A damaged text is never clean.
    if (after.file.syntax.problems.length) expect(after.findings.length).toBeGreaterThan(0);
  }
  return { tried, whole, worst };
}

/** Positions spread over the text, never the same column twice in a row. */
function* positions(text: string, trials = TRIALS): Generator<number> {
  const step = Math.max(1, Math.floor(text.length / trials));
  for (let at = 7; at < text.length; at += step) yield at;
}

const INSERTED = ['x', '"', '{', ':', '(', ',', '3', ']', '/', '-', '.', ' '];
const MEMBERS = [
  'wall east { area: 3 m2',
  'circuit c-new { breaker: 20 A, poles',
  'add heat-pump new like ',
  'outdoor: -3',
  'readings: table (pressure Pa, flow L/s) [',
  'expect { heating.worst',
  'accept circuit/vol',
  '"half a title',
];
const share = (r: { tried: number; whole: number }) => r.whole / r.tried;

describe.each(HOUSES)(
  '%s',
  name => {
    it('keeps everything elsewhere while one character is deleted or inserted', async () => {
      const r = await trial(name, function* (text) {
        let n = 0;
        for (const at of positions(text)) {
          if (DEEP || n % 3 === 0) yield { at, remove: 1, insert: '' };
          for (const insert of DEEP ? INSERTED : [INSERTED[n % INSERTED.length]]) yield { at, remove: 0, insert };
          n++;
        }
      });
      expect(share(r), r.worst.slice(0, 10).join('\n')).toBeGreaterThanOrEqual(0.99 - 1 / r.tried);
    });

    it('keeps most while a closing brace is inserted', async () => {
      const r = await trial(name, function* (text) {
        for (const at of positions(text, TRIALS / 3)) yield { at, remove: 0, insert: '}' };
      });
      expect(share(r), r.worst.slice(0, 10).join('\n')).toBeGreaterThanOrEqual(0.85);
    });

    it('keeps everything elsewhere while a member is typed', async () => {
      const r = await trial(name, function* (text) {
        const lines = [...text.matchAll(/\n( *)[^\n]*[^\s,[(]\n/g)];
        const step = DEEP ? 1 : Math.ceil(lines.length / 12);
        for (let i = 0; i < lines.length; i += step) {
          const at = lines[i].index + lines[i][0].length - 1;
          const member = MEMBERS[i % MEMBERS.length];
          // An editor indents by two behind an opening brace.
          const indent = lines[i][1] + (lines[i][0].trimEnd().endsWith('{') ? '  ' : '');
          for (let n = 1; n <= member.length; n += DEEP ? 1 : 9)
            yield { at, remove: 0, insert: `\n${indent}${member.slice(0, n)}` };
        }
      });
      expect(share(r), r.worst.slice(0, 10).join('\n')).toBeGreaterThanOrEqual(0.99 - 1 / r.tried);
    });
  },
  DEEP ? 7_200_000 : 240_000,
);

it('met no fault of the program on the way', () => expect(faults).toEqual([]));
