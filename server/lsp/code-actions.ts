import {
  CodeActionKind,
  type CodeAction,
  type CodeActionParams,
  type Diagnostic,
  type TextDocumentEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Finding } from '../../language/index.js';
import type { FileChange, Mending } from '../../language/build/index.js';
import type { Able, Seen } from './feature.js';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.wattwright`;

/** Fixes of the findings at the place, fixes of all of their kind, and all preferred fixes of the file. */
export async function codeActions(seen: Seen, params: CodeActionParams, able: Able): Promise<CodeAction[]> {
  const { analysis, lines } = seen;
  const { only, diagnostics } = params.context;
  const wants = (kind: string) => !only || only.some(k => kind === k || kind.startsWith(`${k}.`));
  const own = analysis.findings.filter(f => f.uri === analysis.uri);
  const actions: CodeAction[] = [];
  if (wants(CodeActionKind.QuickFix)) {
    const span = lines.span(params.range);
    const here = own.filter(f => f.from <= span.to && f.to >= span.from);
    for (const finding of here) {
      const told = diagnostics.filter(d => isOf(d, finding, seen));
      const fixes = finding.fixes();
      for (const fix of fixes) actions.push(await action(fix, fixes, told, seen, able));
    }
    for (const code of new Set(here.map(f => f.code))) {
      const alike = own.filter(f => f.code === code);
      const all = together(alike);
      if (alike.length > 1 && all.count > 1)
        actions.push({
          title: `Mend all ${all.count} findings of ${code}`,
          kind: CodeActionKind.QuickFix,
          edit: await editOf(all.changes, seen, able),
        });
    }
  }
  if (wants(FIX_ALL) && only) {
    const { changes, count } = together(own);
    if (count)
      actions.push({ title: 'Apply all preferred fixes', kind: FIX_ALL, edit: await editOf(changes, seen, able) });
  }
  return distinct(actions);
}

const isOf = (d: Diagnostic, f: Finding, { lines }: Seen): boolean =>
  d.code === f.code && lines.offset(d.range.start) === f.from && lines.offset(d.range.end) === f.to;

async function action(
  fix: Mending,
  among: readonly Mending[],
  diagnostics: Diagnostic[],
  seen: Seen,
  able: Able,
): Promise<CodeAction> {
  const isPreferred = fix.preferred ?? among.length === 1;
  return {
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    ...(diagnostics.length ? { diagnostics } : {}),
    ...(isPreferred ? { isPreferred } : {}),
    edit: await editOf(fix.changes, seen, able),
  };
}

/** The preferred fix of each finding, as far as they do not touch one another. */
function together(findings: readonly Finding[]): { changes: FileChange[]; count: number } {
  const changes: FileChange[] = [];
  let count = 0;
  for (const finding of findings) {
    const fix = finding.fixes().find(f => f.preferred);
    if (!fix || fix.changes.some(c => changes.some(other => touches(c, other)))) continue;
    changes.push(...fix.changes);
    count++;
  }
  return { changes, count };
}

const touches = (a: FileChange, b: FileChange): boolean => a.uri === b.uri && a.from <= b.to && b.from <= a.to;

/** Changes as the protocol writes them, with the version they are meant for where the client can check it. */
export async function editOf(changes: readonly FileChange[], seen: Seen, able: Able): Promise<WorkspaceEdit> {
  const { houses } = seen;
  const byFile = new Map<string, TextDocumentEdit['edits']>();
  for (const uri of new Set(changes.map(c => c.uri))) {
    const lines = uri === seen.analysis.uri ? seen.lines : await houses.linesAt(uri);
    const ordered = changes.filter(c => c.uri === uri);
    byFile.set(
      houses.shown(uri),
      ordered.map(c => ({ range: lines.range(c), newText: c.text })),
    );
  }
  if (!able.versionedEdits) return { changes: Object.fromEntries(byFile) };
  return {
    documentChanges: [...byFile].map(([uri, edits]) => ({
      textDocument: { uri, version: houses.versionOf(uri) ?? null },
      edits,
    })),
  };
}

/** The same change under the same title is offered once. */
function distinct(actions: readonly CodeAction[]): CodeAction[] {
  const byText = new Map(actions.map(a => [`${a.title}|${a.kind}|${JSON.stringify(a.edit)}`, a]));
  return [...byText.values()];
}
