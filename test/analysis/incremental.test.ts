import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { namedResults, type Analysis, type Session } from '../../language/index.js';
import { ASKED, faults, FOLDER, sessionOver } from '../analyze.js';

/*
 * What a session keeps from one state of a text to the next is never seen: after any edits its analysis is the one that a
 * session makes which sees the last text alone.
 */

const SAMPLES = path.resolve(import.meta.dirname, '../../samples');
const load = (name: string): string => readFileSync(path.join(SAMPLES, name), 'utf8');
const LIBRARY = 'library/assemblies.house';
const beside = { [LIBRARY]: load(LIBRARY), 'library/equipment.house': load('library/equipment.house') };

/** All that is told and computed, as plain data. */
function seen(analysis: Analysis): unknown {
  const fault = (error: unknown): never => {
    throw error;
  };
  return {
    findings: analysis.findings.map(f => ({ ...f, fixes: f.fixes() })),
    results: analysis.houses.map(house =>
      house.views.map(view => [
        view.name,
        namedResults(view, 'year', fault).map(({ name, outcome }) => ({ name, outcome })),
      ]),
    ),
  };
}

/** An edit by where it falls, as a share of the text, so that it fits whatever text it meets. */
interface Edit {
  readonly where: number;
  readonly what: 'digit' | 'type' | 'delete' | 'line' | 'copy line' | 'drop line' | 'swap lines' | 'undo' | 'library';
  readonly text: string;
}
const edits = fc.array(
  fc.record({
    where: fc.nat({ max: 999 }).map(n => n / 1000),
    // Most leave the text sound: where it is damaged, little is computed that could be stale.
    what: fc.oneof(
      { weight: 6, arbitrary: fc.constantFrom<Edit['what'][]>('digit') },
      { weight: 4, arbitrary: fc.constantFrom<Edit['what'][]>('line', 'undo', 'library', 'swap lines') },
      { weight: 2, arbitrary: fc.constantFrom<Edit['what'][]>('type', 'delete', 'copy line', 'drop line') },
    ),
    text: fc.constantFrom('7', '0', 'x', '}', '{', '"', ' ', '// ', '-', ': '),
  }),
  { minLength: 2, maxLength: 6 },
);

function edited(text: string, { where, what, text: piece }: Edit, before: string): string {
  const at = Math.floor(where * text.length);
  const lines = text.split('\n');
  const line = Math.min(lines.length - 1, Math.floor(where * lines.length));
  switch (what) {
    case 'digit': {
      const digit = text.slice(at).search(/\d/);
      return digit < 0 ? text : text.slice(0, at + digit) + (piece === '0' ? '3' : '8') + text.slice(at + digit + 1);
    }
    case 'type':
      return text.slice(0, at) + piece + text.slice(at);
    case 'delete':
      return text.slice(0, at) + text.slice(at + 1);
    case 'line':
      return lines.toSpliced(line, 0, '').join('\n');
    case 'copy line':
      return lines.toSpliced(line, 0, lines[line]).join('\n');
    case 'drop line':
      return lines.toSpliced(line, 1).join('\n');
    case 'swap lines':
      return lines.toSpliced(line, 2, ...lines.slice(line, line + 2).reverse()).join('\n');
    case 'undo':
      return before;
    case 'library':
      return text;
  }
}

/** A change in a file that the house imports. */
const otherLibrary = ({ where }: Edit): string => edited(beside[LIBRARY], { where, what: 'digit', text: '0' }, '');

async function analyzed(session: Session, uri: string): Promise<Analysis> {
  const analysis = await session.analyze(uri, ASKED);
  if (!analysis) throw new Error('nothing was analyzed');
  return analysis;
}

describe.each(['tamarack/tamarack.house', 'juniper/juniper.house', 'faults/faults.house'])('%s', name => {
  const uri = `${FOLDER}/${name}`;
  const original = load(name);

  it('is analyzed after any edits as by a session that sees the last text alone', { timeout: 240_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(edits, async list => {
        const session = sessionOver({ ...beside, [name]: original });
        await analyzed(session, uri);
        let text = original;
        let before = original;
        let library = beside[LIBRARY];
        for (const edit of list) {
          const next = edited(text, edit, before);
          [before, text] = [text, next];
          session.update(uri, text);
          if (edit.what === 'library') session.update(`${FOLDER}/${LIBRARY}`, (library = otherLibrary(edit)));
          // What is kept comes from the states between, so each of them is analyzed and looked at.
          seen(await analyzed(session, uri));
        }
        const fresh = sessionOver({ ...beside, [LIBRARY]: library, [name]: text });
        expect(seen(await analyzed(session, uri))).toEqual(seen(await analyzed(fresh, uri)));
      }),
      { numRuns: 20 },
    );
  });
});

describe('what did not change', () => {
  const uri = `${FOLDER}/tamarack/tamarack.house`;
  const original = load('tamarack/tamarack.house');
  const houses = ({ houses: [house] }: Analysis) => house.views.map(v => v.house);

  it('is the same model when lines move', async () => {
    const session = sessionOver({ ...beside, 'tamarack/tamarack.house': original });
    const before = houses(await analyzed(session, uri));
    session.update(uri, `// one more line\n${original}`);
    const after = houses(await analyzed(session, uri));
    expect(after).toHaveLength(8);
    after.forEach((house, i) => expect(house).toBe(before[i]));
  });

  it('is the same model in the stages before the one that is edited, and another one from there on', async () => {
    const session = sessionOver({ ...beside, 'tamarack/tamarack.house': original });
    const before = houses(await analyzed(session, uri));
    session.update(uri, original.replace('set-point: 60 °C', 'set-point: 55 °C'));
    const after = houses(await analyzed(session, uri));
    // Today, measure, shell and capacity come before heat-and-water.
    expect(after.map((house, i) => house === before[i])).toEqual([true, true, true, true, false, false, false, false]);
  });
});

afterAll(() => expect(faults).toEqual([]));
