import { inputCodes, judgeLibrary, Report, type Kept, type Models, type Scope } from '../build/index.js';
import type { Asked } from './asked.js';
import { inOrder, inputFinding, INTERNAL_FAULT, syntaxFinding, textFinding, type Finding } from './finding.js';
import type { Host } from './host.js';
import { analyzeHouse, within, type AnalyzedHouse, type Around } from './house.js';
import { judgeImports, scopesOf, type Files } from './imports.js';
import { Loader, type LoadedFile } from './loader.js';
import { defaults, readSettings, SETTINGS_FILE, type Settings } from './settings.js';

/** All that is known of one file at one moment. */
export interface Analysis {
  readonly uri: string;
  readonly file: LoadedFile;
  /** The file and all that it imports. */
  readonly files: Files;
  readonly scope: Scope;
  readonly houses: readonly AnalyzedHouse[];
  /** In the order of the text; those of imported files carry their own address. */
  readonly findings: readonly Finding[];
  readonly settings: Settings;
}

/** The one door: texts go in, analyses come out. */
export class Session {
  private readonly loader: Loader;
  /** Models of the last analysis of each file. */
  private readonly models = new Map<string, Models>();
  private readonly last = new Map<string, { readonly key: string; readonly analysis: Analysis }>();

  constructor(private readonly host: Host) {
    this.loader = new Loader(host);
  }

  /** The text of a file that an editor holds; it counts instead of the one on disk. */
  update(uri: string, text: string): void {
    this.loader.update(uri, text);
  }

  /** The editor let go of a file. */
  close(uri: string): void {
    this.loader.close(uri);
    this.last.delete(uri);
    this.models.delete(uri);
  }

  /** A file changed on disk. */
  changed(uri: string): void {
    this.loader.forget(uri);
  }

  text(uri: string): Promise<string | undefined> {
    return this.loader.textOf(uri);
  }

  /** One file as it stands, held against the vocabulary alone. */
  async load(uri: string): Promise<LoadedFile | undefined> {
    return (await this.loader.load(uri))?.get(uri);
  }

  /** The analysis of a file as it is now; undefined when it cannot be read, or when the signal said stop. */
  async analyze(uri: string, asked: Asked): Promise<Analysis | undefined> {
    const files = await this.loader.load(uri);
    if (!files || asked.signal?.aborted) return undefined;
    const found = await this.settingsFor(uri);
    const ids = [...files.values()].map(f => f.id).join();
    const key = `${ids}|${asked.upto}|${asked.today}|${JSON.stringify(found.settings)}`;
    const last = this.last.get(uri);
    if (last?.key === key) return last.analysis;
    const kept: Kept = { before: this.models.get(uri) ?? new Map(), now: new Map() };
    const analysis = analyzeFiles(uri, files, found, asked, this.host, kept);
    this.models.set(uri, kept.now);
    this.last.set(uri, { key, analysis });
    return analysis;
  }

  /** The project file next above the house, inside what may be read. */
  private async settingsFor(uri: string): Promise<FoundSettings> {
    const roots = this.host.roots().map(r => (r.endsWith('/') ? r : `${r}/`));
    for (let folder = uri; folder.includes('/');) {
      folder = folder.slice(0, folder.lastIndexOf('/'));
      if (!roots.some(r => `${folder}/`.startsWith(r))) break;
      const at = `${folder}/${SETTINGS_FILE}`;
      const text = await this.loader.textOf(at);
      if (text === undefined) continue;
      const read = readSettings(text);
      if ('settings' in read) return { settings: read.settings };
      const span = { from: 0, to: Math.min(1, text.length) };
      const message = `${SETTINGS_FILE}: ${read.problem}`;
      return { settings: defaults, problem: textFinding('settings/unreadable', 'error', at, span, message) };
    }
    return { settings: defaults };
  }
}

interface FoundSettings {
  readonly settings: Settings;
  readonly problem?: Finding;
}

function analyzeFiles(uri: string, files: Files, found: FoundSettings, asked: Asked, host: Host, kept: Kept): Analysis {
  const { settings, problem } = found;
  const file = files.get(uri)!;
  const report = new Report(uri);
  const scopeFor = scopesOf(files, host, report);
  const scope = scopeFor(uri);
  const faults = new Set<string>();
  const fault = (error: unknown, what: string): void => {
    faults.add(what);
    host.fault(error, what);
  };
  judgeImports(file, files, report);
  judgeLibrary(file.declared, scopeFor, report);
  const imported = [...files.values()].slice(1);
  const scopeId = `${uri}|${imported.map(f => f.id).join()}`;
  const around: Around = { file, scopeFor, scopeId, settings, asked, kept, report, fault };
  const houses: AnalyzedHouse[] = [];
  const findings: Finding[] = [];
  const blocks = file.declared.blocks.filter(b => b.kind === 'house');
  for (const block of blocks) {
    try {
      const analyzed = analyzeHouse(block, around);
      houses.push(analyzed.house);
      findings.push(...analyzed.findings);
    } catch (error) {
      fault(error, `house ${block.name}`);
    }
  }
  const outside = [...file.problems, ...report.problems].filter(p => !blocks.some(b => within(p, b)));
  findings.push(
    ...outside.map(p => inputFinding(p, settings)),
    ...file.syntax.problems.map(p => syntaxFinding(p, uri)),
  );
  for (const other of imported) findings.push(...brokenImport(other));
  if (problem) findings.push(problem);
  for (const what of faults) findings.push(faultFinding(what, file, blocks[0]?.head));
  const told = findings.filter(f => settings.severity[f.code] !== 'off').sort(inOrder);
  return { uri, file, files, scope, houses, findings: told, settings };
}

/** A house that rests on a broken file is not clean, even when only the house is checked. */
function brokenImport({ uri, syntax, problems }: LoadedFile): Finding[] {
  const errors = problems.filter(p => inputCodes[p.code] === 'error');
  return [...syntax.problems.map(p => syntaxFinding(p, uri)), ...errors.map(p => inputFinding(p, defaults))];
}

function faultFinding(what: string, file: LoadedFile, head: { from: number; to: number } | undefined): Finding {
  const span = head ?? { from: 0, to: Math.min(1, file.syntax.text.length) };
  const message = `the program failed at ${what}; what it would have said is missing. Please report it with the text that caused it`;
  return textFinding(INTERNAL_FAULT, 'error', file.uri, span, message);
}
