import { Session, type Analysis, type Asked, type Host, type StageView } from '../language/index.js';
import { library } from '../language/library/index.js';
import { namedResults, type Outcome } from '../language/index.js';

export const FOLDER = 'file:///project';
export const HOUSE = `${FOLDER}/house.house`;

/** Faults that the program told of; tests assert that there are none. */
export const faults: string[] = [];

/** A session over files that stand in memory; nothing outside of the folder is ever asked for. */
export function sessionOver(files: Readonly<Record<string, string>>): Session {
  const at = (uri: string): string | undefined => files[decodeURIComponent(uri.slice(FOLDER.length + 1))];
  const inside = (uri: string): void => {
    if (!uri.startsWith(`${FOLDER}/`)) throw new Error(`${uri} was asked for, and lies outside`);
  };
  const host: Host = {
    read(uri) {
      inside(uri);
      return Promise.resolve(at(uri));
    },
    exists(uri) {
      inside(uri);
      return Promise.resolve(at(uri) !== undefined);
    },
    roots: () => [FOLDER],
    library,
    fault: (error, what) => faults.push(`${what}: ${error instanceof Error ? error.stack : String(error)}`),
  };
  return new Session(host);
}

export const ASKED: Asked = { upto: 'design', today: '2026-06-01' };

/** Analyzes one text, with files beside it. */
export async function analyze(
  text: string,
  beside: Readonly<Record<string, string>> = {},
  asked = ASKED,
): Promise<Analysis> {
  const analysis = await sessionOver({ ...beside, 'house.house': text }).analyze(HOUSE, asked);
  if (!analysis) throw new Error('nothing was analyzed');
  return analysis;
}

/** `code "marked text" message` of each finding of the given codes, or of all. */
export function told(analysis: Analysis, ...codes: string[]): string[] {
  const { text } = analysis.file.syntax;
  return analysis.findings
    .filter(f => !codes.length || codes.some(c => f.code.startsWith(c)))
    .map(f => `${f.code} ${JSON.stringify(f.uri === analysis.uri ? text.slice(f.from, f.to) : f.uri)} ${f.message}`);
}

export function stage(analysis: Analysis, name = 'today'): StageView {
  const view = analysis.houses[0]?.views.find(v => v.name === name);
  if (!view) throw new Error(`there is no stage ${name}`);
  return view;
}

export function resultIn(view: StageView, name: string): Outcome {
  const found = namedResults(view, 'year', e => {
    throw e;
  }).find(r => r.name === name);
  if (!found) throw new Error(`there is no result ${name}`);
  return found.outcome;
}

/** The text after taking a fix of the first finding of a code. */
export function mended(analysis: Analysis, code: string, title?: string): string {
  const finding = analysis.findings.find(f => f.code === code);
  const fix = finding?.fixes().find(x => title === undefined || x.title.includes(title));
  if (!fix) throw new Error(`${code} offers no such fix`);
  let { text } = analysis.file.syntax;
  for (const c of [...fix.changes].sort((a, b) => b.from - a.from))
    text = text.slice(0, c.from) + c.text + text.slice(c.to);
  return text;
}
