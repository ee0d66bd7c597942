import {
  buildHouse,
  inputCodes,
  judgeLibrary,
  Report,
  scopeOf,
  type BuiltHouse,
  type InputCode,
  type Kept,
  type Problem,
  type Scope,
} from '../build/index.js';
import type { SyntaxProblem } from '../grammar/index.js';
import type { Tier } from '../results/index.js';
import type { Rule, Say } from '../rules/index.js';
import { print } from '../units/index.js';
import { Acceptances } from './acceptances.js';
import { judgeExpectations } from './expectations.js';
import { inOrder, type Finding } from './finding.js';
import type { Host } from './host.js';
import { judge, merged } from './judge.js';
import { Loader, type LoadedFile } from './loader.js';
import { defaults, readSettings, SETTINGS_FILE, type Settings } from './settings.js';
import { viewsOf, type StageView } from './views.js';

export interface Asked {
  /** How far to compute; what costs more is left out. */
  readonly upto: Tier;
  /** Today, as YYYY-MM-DD: acceptances run out by it. */
  readonly today: string;
  readonly signal?: { readonly aborted: boolean };
}

/** A house of the file with its stages, today first. */
export interface AnalyzedHouse {
  readonly built: BuiltHouse;
  readonly views: readonly StageView[];
  readonly say: Say;
  readonly currency: string | undefined;
}

/** All that is known of one file at one moment. */
export interface Analysis {
  readonly uri: string;
  readonly file: LoadedFile;
  /** The file and all that it imports. */
  readonly files: ReadonlyMap<string, LoadedFile>;
  readonly scope: Scope;
  readonly houses: readonly AnalyzedHouse[];
  /** In the order of the text; those of imported files carry their own address. */
  readonly findings: readonly Finding[];
  readonly settings: Settings;
}

/** The one door: texts go in, analyses come out. */
export class Session {
  private readonly loader: Loader;
  private readonly kept: Kept = new Map();
  private readonly last = new Map<string, { key: string; analysis: Analysis }>();

  constructor(private readonly host: Host) {
    this.loader = new Loader(host);
  }

  update(uri: string, text: string): void {
    this.loader.update(uri, text);
  }

  close(uri: string): void {
    this.loader.close(uri);
    this.last.delete(uri);
  }

  /** A file changed on disk. */
  changed(uri: string): void {
    this.loader.forget(uri);
  }

  text(uri: string): Promise<string | undefined> {
    return this.loader.textOf(uri);
  }

  /** The analysis of a file as it is now; undefined when it cannot be read, or when the signal said stop. */
  async analyze(uri: string, asked: Asked): Promise<Analysis | undefined> {
    const files = await this.loader.load(uri);
    if (!files || asked.signal?.aborted) return undefined;
    const settings = await this.settingsFor(uri);
    const key = `${[...files.values()].map(f => f.id).join(',')}|${asked.upto}|${asked.today}|${JSON.stringify(settings)}`;
    const last = this.last.get(uri);
    if (last?.key === key) return last.analysis;
    const analysis = this.analyzeFiles(uri, files, settings, asked);
    this.last.set(uri, { key, analysis });
    return analysis;
  }

  private analyzeFiles(
    uri: string,
    files: ReadonlyMap<string, LoadedFile>,
    { settings, problem }: FoundSettings,
    asked: Asked,
  ): Analysis {
    const { host } = this;
    const file = files.get(uri)!;
    const report = new Report(uri);
    const scopes = new Map<string, Scope>();
    const scopeFor = (at: string): Scope => {
      let scope = scopes.get(at);
      const own = files.get(at)?.declared ?? host.library.find(l => l.uri === at);
      if (!own) return EMPTY;
      if (!scope)
        scopes.set(
          at,
          (scope = scopeOf(own, importsOf(own.uri, files), host.library, at === uri ? report : new Report(at))),
        );
      return scope;
    };
    const scope = scopeFor(uri);
    judgeImports(file, files, report);
    judgeLibrary(file.declared, scopeFor, report);
    const scopeId = [...files.values()]
      .slice(1)
      .map(f => f.id)
      .join(',');
    const houses: AnalyzedHouse[] = [];
    const findings: Finding[] = [];
    for (const block of file.declared.blocks) {
      if (block.kind !== 'house') continue;
      const built = buildHouse(block, scopeFor, `${uri}|${scopeId}`, report, this.kept);
      const views = viewsOf(built, asked.today, host.fault);
      const currency = currencyOf(views);
      const say: Say = (si, dimension) =>
        print(si, dimension, { system: settings.units, ...(currency ? { currency } : {}) });
      houses.push({ built, views, say, currency });
      const severityOf = (rule: Rule) => settings.severity[rule.code] ?? rule.severity;
      const acceptances = new Acceptances(built, views, asked.today, report);
      const found = judge(views, asked.upto, say, severityOf, host.fault);
      findings.push(...merged(found.filter(f => !acceptances.silences(f))));
      judgeExpectations(built, views, asked.upto, say, report, host.fault);
      const inHouse = (p: { from: number; to: number }) => p.from >= block.span.from && p.to <= block.span.to;
      const text = [...file.problems, ...report.problems].filter(inHouse).map(p => inputFinding(p, settings));
      const silenced = new Set(text.filter(f => acceptances.silencesText(f)).map(placeKey));
      acceptances.tellUnused(asked.upto);
      findings.push(
        ...[...file.problems, ...report.problems]
          .filter(inHouse)
          .map(p => inputFinding(p, settings))
          .filter(f => !silenced.has(placeKey(f))),
      );
    }
    const inAnyHouse = (p: { from: number }) =>
      file.declared.blocks.some(b => b.kind === 'house' && p.from >= b.span.from && p.from <= b.span.to);
    findings.push(
      ...[...file.problems, ...report.problems].filter(p => !inAnyHouse(p)).map(p => inputFinding(p, settings)),
    );
    findings.push(...file.syntax.problems.map(p => syntaxFinding(p, uri)));
    for (const other of files.values()) if (other !== file) findings.push(...brokenImport(other));
    if (problem) findings.push(problem);
    const told = findings.filter(f => settings.severity[f.code] !== 'off').sort(inOrder);
    return { uri, file, files, scope, houses, findings: told, settings };
  }

  private async settingsFor(uri: string): Promise<FoundSettings> {
    const roots = this.host.roots();
    for (let folder = uri; folder.includes('/');) {
      folder = folder.slice(0, folder.lastIndexOf('/'));
      if (!roots.some(r => `${folder}/`.startsWith(r.endsWith('/') ? r : `${r}/`))) break;
      const at = `${folder}/${SETTINGS_FILE}`;
      const text = await this.loader.textOf(at);
      if (text === undefined) continue;
      const read = readSettings(text);
      if ('settings' in read) return { settings: read.settings, problem: undefined };
      return {
        settings: defaults,
        problem: finding(
          'settings/unreadable',
          'error',
          at,
          { from: 0, to: Math.min(1, text.length) },
          `${SETTINGS_FILE}: ${read.problem}`,
        ),
      };
    }
    return { settings: defaults, problem: undefined };
  }
}

interface FoundSettings {
  readonly settings: Settings;
  readonly problem: Finding | undefined;
}

const EMPTY: Scope = { block: () => undefined, source: () => undefined, names: () => [] };
const placeKey = (f: Finding): string => `${f.code}|${f.from}|${f.to}|${f.message}`;

const importsOf = (uri: string, files: ReadonlyMap<string, LoadedFile>) =>
  (files.get(uri)?.declared.imports ?? []).flatMap(i => files.get(i.target ?? '')?.declared ?? []);

/** Imports that lead nowhere, outside, or back to the file itself. */
function judgeImports(file: LoadedFile, files: ReadonlyMap<string, LoadedFile>, report: Report): void {
  for (const { name, span, target } of file.declared.imports) {
    if (target === undefined)
      report.add('input/file-outside', span, `"${name}" lies outside the workspace and is not read`);
    else if (!files.has(target)) report.add('input/file-missing', span, `there is no file "${name}" to import`);
    else if (leadsTo(target, file.uri, files, new Set()))
      report.add('input/import-cycle', span, `"${name}" imports this file in turn`);
  }
}

function leadsTo(from: string, to: string, files: ReadonlyMap<string, LoadedFile>, seen: Set<string>): boolean {
  if (from === to) return true;
  if (seen.has(from)) return false;
  seen.add(from);
  return (files.get(from)?.declared.imports ?? []).some(
    i => i.target !== undefined && leadsTo(i.target, to, files, seen),
  );
}

/** A house that rests on a broken file is not clean, even when only the house is checked. */
function brokenImport({ uri, syntax, problems }: LoadedFile): Finding[] {
  return [
    ...syntax.problems.map(p => syntaxFinding(p, uri)),
    ...problems.filter(p => inputCodes[p.code] === 'error').map(p => inputFinding(p, defaults)),
  ];
}

function currencyOf(views: readonly StageView[]): string | undefined {
  try {
    return views[0]?.house.currency;
  } catch {
    return undefined;
  }
}

function finding(
  code: string,
  severity: Finding['severity'],
  uri: string,
  span: { from: number; to: number },
  message: string,
): Finding {
  return {
    code,
    severity,
    message,
    uri,
    from: span.from,
    to: span.to,
    related: [],
    stages: [],
    address: undefined,
    unnecessary: false,
    fixes: () => [],
  };
}

function syntaxFinding(p: SyntaxProblem, uri: string): Finding {
  const fixes = (p.replace ?? []).map(({ title, from, to, text }) => ({ title, changes: [{ uri, from, to, text }] }));
  return { ...finding(p.code, 'error', uri, p, p.message.replace(/\.$/, '')), fixes: () => fixes };
}

function inputFinding(p: Problem, settings: Settings): Finding {
  const own = settings.severity[p.code];
  const severity = own && own !== 'off' ? own : inputCodes[p.code as InputCode];
  return {
    ...finding(p.code, severity, p.uri, p, p.message),
    related: p.related ?? [],
    unnecessary: p.code === 'accept/unused',
    fixes: () => p.mend?.() ?? [],
  };
}
