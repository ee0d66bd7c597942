import {
  DidChangeWatchedFilesNotification,
  TextDocuments,
  TextDocumentSyncKind,
  CodeActionKind,
  type CancellationToken,
  type ClientCapabilities,
  type Connection,
  type InitializeParams,
  type ServerCapabilities,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { SUMMARY, type SummaryParams } from '../protocol/summary.js';
import { codeActions, FIX_ALL } from './code-actions.js';
import { codeLenses } from './code-lens.js';
import { completion } from './completion.js';
import { diagnosticsOf, Pushing } from './diagnostics.js';
import { answer, guarded, type Able, type Server } from './feature.js';
import { formatting, onTypeFormatting, rangeFormatting } from './formatting.js';
import { hover } from './hover.js';
import { Houses } from './houses.js';
import { inlayHints } from './inlay-hints.js';
import { definition, highlights, prepareRename, references, rename } from './navigation.js';
import { documentLinks, documentSymbols, foldingRanges, selectionRanges, workspaceSymbols } from './outline.js';
import { LEGEND, semanticTokens } from './semantic-tokens.js';
import { summary } from './summary.js';

/** What a change on disk may change the meaning of: houses, what they read, and the project's settings. */
const WATCHED = ['**/*.house', '**/*.csv', '**/*.xml', '**/wattwright.json'];

/** Serves one client over a connection until it ends. */
export function startServer(connection: Connection, today: () => string = localDate): void {
  const fault = (error: unknown, what: string): void =>
    connection.console.error(`${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  const houses = new Houses(fault, today);
  let able = ableTo({});
  const server: Server = { connection, houses, able: () => able };
  const pushing = new Pushing(server);
  const documents = new TextDocuments(TextDocument);

  connection.onInitialize((params: InitializeParams) => {
    able = ableTo(params.capabilities);
    const folders = params.workspaceFolders?.map(f => f.uri);
    houses.setFolders(folders ?? (params.rootUri ? [params.rootUri] : []));
    return { capabilities: capabilities(able), serverInfo: { name: 'wattwright' } };
  });
  connection.onInitialized(() => {
    if (able.folders) followFolders(server, pushing);
    if (!able.watchFiles) return;
    const watchers = WATCHED.map(globPattern => ({ globPattern }));
    connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }).catch(e => fault(e, 'watching'));
  });

  documents.onDidChangeContent(({ document }) => {
    houses.update(document.uri, document.version, document.getText());
    for (const { uri } of houses.openOnes()) pushing.schedule(uri);
  });
  documents.onDidSave(() => {
    if (able.watchFiles) return;
    houses.forget();
    refresh(server, pushing);
  });
  documents.onDidClose(({ document }) => {
    houses.close(document.uri);
    pushing.forget(document.uri);
    if (!able.pullDiagnostics) void connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    for (const { uri } of houses.openOnes()) pushing.schedule(uri);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) houses.changed(uri);
    refresh(server, pushing);
  });

  connection.languages.diagnostics.on(
    answer(server, 'diagnostics', { kind: 'full', items: [] } as const, async seen => ({
      kind: 'full' as const,
      items: await diagnosticsOf(seen, able),
    })),
  );
  connection.onHover(answer(server, 'hover', null, (seen, params) => hover(seen, params, able)));
  connection.onCodeAction(answer(server, 'code actions', [], (seen, params) => codeActions(seen, params, able)));

  connection.onCompletion(
    answer(server, 'completion', { isIncomplete: false, items: [] }, (seen, params) => completion(seen, params, able)),
  );
  connection.onDocumentFormatting(answer(server, 'formatting', [], formatting));
  connection.onDocumentRangeFormatting(answer(server, 'formatting', [], rangeFormatting));
  connection.onDocumentOnTypeFormatting(answer(server, 'formatting', [], onTypeFormatting));
  connection.onCodeLens(answer(server, 'code lens', [], codeLenses));
  connection.languages.inlayHint.on(answer(server, 'inlay hints', [], inlayHints));
  connection.onDefinition(answer(server, 'definition', [], definition));
  connection.onReferences(answer(server, 'references', [], references));
  connection.onDocumentHighlight(answer(server, 'highlights', [], highlights));
  connection.onPrepareRename(answer(server, 'rename', null, prepareRename));
  connection.onRenameRequest(answer(server, 'rename', null, (seen, params) => rename(seen, params, able)));
  connection.onDocumentSymbol(answer(server, 'symbols', [], documentSymbols));
  connection.onWorkspaceSymbol(({ query }) =>
    guarded(server, 'workspace symbols', [], () => workspaceSymbols(houses, query)),
  );
  connection.onFoldingRanges(answer(server, 'folding', [], foldingRanges));
  connection.onSelectionRanges(answer(server, 'selection', [], selectionRanges));
  connection.onDocumentLinks(answer(server, 'links', [], documentLinks));
  connection.languages.semanticTokens.on(answer(server, 'colours', { data: [] }, semanticTokens));
  connection.onRequest(SUMMARY, ({ uri }: SummaryParams, token: CancellationToken) =>
    answer(server, 'summary', null, summary)({ textDocument: { uri } }, token),
  );

  documents.listen(connection);
  connection.listen();
}

function followFolders(server: Server, pushing: Pushing): void {
  const { connection, houses } = server;
  connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
    houses.changeFolders(
      added.map(f => f.uri),
      new Set(removed.map(f => f.uri)),
    );
    refresh(server, pushing);
  });
}

/** Everything that is shown is asked for or told anew: what it rests on has changed outside of the open texts. */
function refresh({ connection, houses, able }: Server, pushing: Pushing): void {
  for (const { uri } of houses.openOnes()) pushing.schedule(uri);
  if (able().pullDiagnostics && able().refreshDiagnostics) connection.languages.diagnostics.refresh();
  if (able().refreshLens) void connection.sendRequest('workspace/codeLens/refresh').catch(() => undefined);
}

function capabilities(able: Able): ServerCapabilities {
  return {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
    ...(able.pullDiagnostics
      ? { diagnosticProvider: { identifier: 'wattwright', interFileDependencies: true, workspaceDiagnostics: false } }
      : {}),
    hoverProvider: true,
    completionProvider: { triggerCharacters: [' ', ':', '"', '.', '/', '['] },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] },
    codeLensProvider: {},
    inlayHintProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    documentLinkProvider: {},
    semanticTokensProvider: { legend: LEGEND, full: true },
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL] },
  };
}

function ableTo({ textDocument, workspace }: ClientCapabilities): Able {
  return {
    snippets: textDocument?.completion?.completionItem?.snippetSupport ?? false,
    markdown: textDocument?.hover?.contentFormat?.includes('markdown') ?? true,
    related: textDocument?.publishDiagnostics?.relatedInformation ?? false,
    pullDiagnostics: textDocument?.diagnostic !== undefined,
    refreshDiagnostics: workspace?.diagnostics?.refreshSupport ?? false,
    refreshLens: workspace?.codeLens?.refreshSupport ?? false,
    versionedEdits: workspace?.workspaceEdit?.documentChanges ?? false,
    folders: workspace?.workspaceFolders ?? false,
    watchFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false,
  };
}

function localDate(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
