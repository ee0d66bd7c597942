import { DiagnosticSeverity, DiagnosticTag, type Diagnostic } from 'vscode-languageserver';
import type { Analysis, Finding } from '../../language/index.js';
import type { Able, Seen, Server } from './feature.js';
import type { Lines } from './lines.js';
import { isLibraryFile, pageOf } from './shipped.js';

const SEVERITY = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

/** The findings of a document, its own alone: those of the files it imports are told in them. */
export async function diagnosticsOf({ analysis, lines, houses }: Seen, able: Able): Promise<Diagnostic[]> {
  if (isLibraryFile(analysis.uri)) return [];
  const places = new Map<string, Lines>([[analysis.uri, lines]]);
  const placed = async (uri: string) => {
    if (!places.has(uri)) places.set(uri, await houses.linesAt(uri));
    return places.get(uri)!;
  };
  const told: Diagnostic[] = [];
  for (const finding of ownFindings(analysis)) {
    const related = [];
    for (const r of able.related ? finding.related : [])
      related.push({
        location: { uri: houses.shown(r.uri), range: (await placed(r.uri)).range(r) },
        message: r.message,
      });
    const page = pageOf(finding.code);
    told.push({
      range: lines.range(finding),
      severity: SEVERITY[finding.severity],
      code: finding.code,
      ...(page ? { codeDescription: { href: page } } : {}),
      source: 'wattwright',
      message: finding.message + inStages(finding, analysis),
      ...(related.length ? { relatedInformation: related } : {}),
      ...(finding.unnecessary ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    });
  }
  return told;
}

/** Findings of this text, and one at its first import for a file that is broken elsewhere. */
function ownFindings(analysis: Analysis): Finding[] {
  const own = analysis.findings.filter(f => f.uri === analysis.uri);
  const foreign = new Map<string, Finding[]>();
  for (const f of analysis.findings) if (f.uri !== analysis.uri) foreign.set(f.uri, [...(foreign.get(f.uri) ?? []), f]);
  for (const [uri, findings] of foreign) own.push(atImport(uri, findings, analysis));
  return own;
}

/** A house that rests on a broken file is not clean: it says so where it names that file. */
function atImport(uri: string, findings: readonly Finding[], { uri: own, file }: Analysis): Finding {
  const [first] = findings;
  const leads = file.declared.imports.find(i => i.target === uri) ?? file.declared.imports[0];
  const { from, to } = leads?.span ?? { from: 0, to: Math.min(1, file.syntax.text.length) };
  const name = uri.slice(uri.lastIndexOf('/') + 1);
  const rest = findings.length > 1 ? ` (and ${findings.length - 1} more)` : '';
  return {
    ...first,
    uri: own,
    from,
    to,
    message: `in ${name}: ${first.message}${rest}`,
    related: [{ uri, from: first.from, to: first.to, message: first.message }],
    fixes: () => [],
  };
}

/** In which stages a finding holds, when it does not hold in all. */
function inStages({ stages }: Finding, { houses }: Analysis): string {
  const all = houses[0]?.views.length ?? 0;
  if (!stages.length || stages.length >= all) return '';
  const names = stages.map(s => (s === 'today' ? 'the house today' : s));
  return ` [in ${names.length > 3 ? `${names.slice(0, 2).join(', ')} and ${names.length - 2} more` : names.join(', ')}]`;
}

/** When the last analysis took long, the next one waits until the typing pauses, but no longer than this in ms, or twice as long as it took. */
const LONGEST_WAIT = 400;

/** Pushes findings after every change to clients that do not ask for them; a burst of edits is judged in its last state. */
export class Pushing {
  private readonly waiting = new Map<string, { readonly since: number; cancel: () => void }>();
  private readonly running = new Map<string, AbortController>();
  /** How long the last analysis of a document took, in ms. */
  private readonly took = new Map<string, number>();

  constructor(private readonly server: Server) {}

  /** Something changed that a document may rest on. */
  schedule(uri: string): void {
    if (this.server.able().pullDiagnostics) return;
    this.running.get(uri)?.abort();
    const before = this.waiting.get(uri);
    before?.cancel();
    const since = before?.since ?? Date.now();
    const took = this.took.get(uri) ?? 0;
    const pause = took < 25 ? 0 : Math.min(took / 3, 120);
    const left = Math.max(0, Math.min(pause, Math.max(LONGEST_WAIT, 2 * took) - (Date.now() - since)));
    const run = () => {
      this.waiting.delete(uri);
      void this.run(uri);
    };
    if (left === 0) {
      const immediate = setImmediate(run);
      this.waiting.set(uri, { since, cancel: () => clearImmediate(immediate) });
    } else {
      const timer = setTimeout(run, left);
      this.waiting.set(uri, { since, cancel: () => clearTimeout(timer) });
    }
  }

  forget(uri: string): void {
    this.waiting.get(uri)?.cancel();
    this.waiting.delete(uri);
    this.running.get(uri)?.abort();
    this.took.delete(uri);
  }

  private async run(uri: string): Promise<void> {
    const { connection, houses, able } = this.server;
    const control = new AbortController();
    this.running.set(uri, control);
    const began = performance.now();
    try {
      const version = houses.versionOf(uri);
      if (version === undefined) return;
      const seen = await houses.seen(uri, control.signal);
      if (!seen || control.signal.aborted || houses.versionOf(uri) !== version) return;
      const diagnostics = await diagnosticsOf(seen, able());
      if (houses.versionOf(uri) !== version) return;
      await connection.sendDiagnostics({ uri, version, diagnostics });
      this.took.set(uri, performance.now() - began);
    } catch (error) {
      houses.fault(error, 'diagnostics');
    } finally {
      if (this.running.get(uri) === control) this.running.delete(uri);
    }
  }
}
