import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Severity } from '../../language/rules/index.js';
import { Session, type Analysis, type Finding } from '../../language/index.js';
import { library } from '../../language/library/index.js';
import { Lines } from '../../server/report/position.js';

/** A page of a finding, taken apart. */
export interface Page {
  readonly code: string;
  readonly title: string;
  readonly headings: readonly string[];
  readonly fails: Example;
  readonly passes: Example;
}

/** The files of one example, by name; the first is the one that is checked. */
export interface Example {
  readonly files: ReadonlyMap<string, string>;
  readonly marks: readonly Mark[];
}

/** A squiggle, as a comment line below the text marks it: line and columns count from 1, the last column is left out. */
export interface Mark {
  readonly code: string;
  readonly file: string;
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

const RULES = path.resolve(import.meta.dirname, '../../language/rules');
const MAIN = 'example.house';
/** In files that have no comments the two strokes are left out. */
const MARKED = /^(?:\/\/)?\s*\^+ [a-z-]+\/[a-z0-9-]+/;

/** All pages by code. */
export function pages(): Map<string, Page> {
  const files = readdirSync(RULES, { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.md'));
  return new Map(
    files.sort().map(file => {
      const code = file.slice(0, -'.md'.length).split(path.sep).join('/');
      return [code, pageOf(code, readFileSync(path.join(RULES, file), 'utf8'))];
    }),
  );
}

function pageOf(code: string, text: string): Page {
  const [head, ...sections] = text.split(/^## /m);
  const named = new Map(sections.map(s => [s.slice(0, s.indexOf('\n')).trim(), s] as const));
  return {
    code,
    title: /^# (.*)$/m.exec(head)?.[1] ?? '',
    headings: [...named.keys()],
    fails: exampleOf(named.get('Fails') ?? ''),
    passes: exampleOf(named.get('Passes') ?? ''),
  };
}

/** Lines with marks are taken out, so that an example may break comments and strings; they count for the line above. */
function exampleOf(section: string): Example {
  const files = new Map<string, string>();
  const marks: Mark[] = [];
  for (const [, info, body] of section.matchAll(/^```(.*)\n([\s\S]*?)^```$/gm)) {
    const file = /file=(\S+)/.exec(info)?.[1] ?? MAIN;
    const kept: string[] = [];
    for (const line of body.replace(/\n$/, '').split('\n')) {
      if (!MARKED.test(line)) {
        kept.push(line);
        continue;
      }
      for (const m of line.matchAll(/(\^+) ([a-z-]+\/[a-z0-9-]+)/g))
        marks.push({ code: m[2], file, line: kept.length, from: m.index + 1, to: m.index + 1 + m[1].length });
    }
    files.set(file, `${kept.join('\n')}\n`);
  }
  return { files, marks };
}

const FOLDER = 'file:///pages/plans';
const TODAY = '2026-06-01';

/** The findings of an example: those of the checked file and of the files it imports. A fault of ours is thrown. */
export async function analyze(files: ReadonlyMap<string, string>): Promise<Analysis> {
  const at = new Map([...files].map(([name, text]) => [`${FOLDER}/${name}`, text]));
  const session = new Session({
    library,
    roots: () => [FOLDER],
    read: uri => Promise.resolve(at.get(uri)),
    exists: uri => Promise.resolve(at.has(uri)),
    fault: (error, what) => {
      throw new Error(`a fault in ${what}`, { cause: error });
    },
  });
  const main = `${FOLDER}/${[...files.keys()].find(f => f.endsWith('.house')) ?? MAIN}`;
  const analysis = await session.analyze(main, { upto: 'design', today: TODAY });
  if (!analysis) throw new Error('an example was not read');
  return analysis;
}

/** Where a finding stands, as a mark would say it. One that goes over several lines is marked on its first. */
export function markOf({ code, uri, from, to }: Finding, files: ReadonlyMap<string, string>): Mark {
  const file = uri.slice(FOLDER.length + 1);
  const lines = new Lines(files.get(file) ?? '');
  const start = lines.at(from);
  const end = Math.min(to, lines.span(start.line).to);
  return { code, file, line: start.line, from: start.column, to: start.column + Math.max(1, end - from) };
}

/** The files after a fix of a finding. */
export function mended(files: ReadonlyMap<string, string>, fix: ReturnType<Finding['fixes']>[number]) {
  const next = new Map(files);
  for (const { uri, from, to, text } of fix.changes.toSorted((a, b) => b.from - a.from)) {
    const file = uri.slice(FOLDER.length + 1);
    const old = next.get(file);
    if (old === undefined) throw new Error(`"${fix.title}" changes ${uri}, which is no file of the example`);
    next.set(file, old.slice(0, from) + text + old.slice(to));
  }
  return next;
}

export const troubling = (severity: Severity): boolean => severity !== 'info';
