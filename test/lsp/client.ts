import { readFileSync } from 'node:fs';
import { PassThrough } from 'node:stream';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type ClientCapabilities,
  type Diagnostic,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node.js';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';
import { Lines } from '../../server/lsp/lines.js';
import { startServer } from '../../server/lsp/server.js';

export const root = path.resolve(import.meta.dirname, '../..');
const TODAY = '2026-03-01';

/** Capabilities of a client that does everything with pushed findings. */
export const FULL: ClientCapabilities = {
  workspace: { workspaceEdit: { documentChanges: true }, configuration: false },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    completion: { completionItem: { snippetSupport: true } },
    hover: { contentFormat: ['markdown'] },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
  },
};

/** A client in the same process, over the streams that an editor would use. */
export class Client {
  readonly connection: ProtocolConnection;
  readonly published: PublishDiagnosticsParams[] = [];
  readonly logged: string[] = [];
  private readonly texts = new Map<string, { version: number; text: string }>();
  private readonly waiting = new Set<() => void>();
  capabilities: InitializeResult['capabilities'] = {};

  private constructor(private readonly folder: string | undefined) {
    const up = new PassThrough();
    const down = new PassThrough();
    startServer(createConnection(ProposedFeatures.all, up, down), () => TODAY);
    this.connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
    this.connection.onNotification('textDocument/publishDiagnostics', (p: PublishDiagnosticsParams) => {
      this.published.push(p);
      this.waiting.forEach(look => look());
    });
    this.connection.onNotification('window/logMessage', (p: { message: string }) => this.logged.push(p.message));
    this.connection.onRequest('client/registerCapability', () => null);
    this.connection.listen();
  }

  static async start(
    options: { folder?: string | undefined; capabilities?: ClientCapabilities } = {},
  ): Promise<Client> {
    const client = new Client(options.folder);
    const { capabilities } = await client.connection.sendRequest<InitializeResult>('initialize', {
      processId: null,
      rootUri: client.folder ? pathToFileURL(client.folder).href : null,
      capabilities: options.capabilities ?? FULL,
      workspaceFolders: client.folder ? [{ uri: pathToFileURL(client.folder).href, name: 'folder' }] : null,
    });
    client.capabilities = capabilities;
    await client.connection.sendNotification('initialized', {});
    return client;
  }

  async stop(): Promise<void> {
    await this.connection.sendRequest('shutdown');
    this.connection.dispose();
  }

  uri(name: string): string {
    return pathToFileURL(path.join(this.folder ?? '/nowhere', name)).href;
  }

  /** Opens a text, or the file of that name as it is. */
  async open(name: string, text = readFileSync(path.join(this.folder ?? root, name), 'utf8')): Promise<string> {
    const uri = this.uri(name);
    this.texts.set(uri, { version: 1, text });
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'house', version: 1, text },
    });
    return uri;
  }

  text(uri: string): string {
    return this.texts.get(uri)!.text;
  }

  /** Replaces a part of the text; as one incremental change. */
  async edit(uri: string, from: number, to: number, inserted: string): Promise<void> {
    const held = this.texts.get(uri)!;
    const range = new Lines(held.text).range({ from, to });
    held.text = held.text.slice(0, from) + inserted + held.text.slice(to);
    held.version++;
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: held.version },
      contentChanges: [{ range, text: inserted }],
    });
  }

  async replace(uri: string, from: string, to: string): Promise<void> {
    const at = this.text(uri).indexOf(from);
    if (at < 0) throw new Error(`the text holds no ${from}`);
    await this.edit(uri, at, at + from.length, to);
  }

  /** Position of a piece of the text, with an offset into it. */
  at(uri: string, piece: string, offset = 0): Position {
    const at = this.text(uri).indexOf(piece);
    if (at < 0) throw new Error(`the text holds no ${piece}`);
    return new Lines(this.text(uri)).position(at + offset);
  }

  range(uri: string, piece: string): Range {
    return { start: this.at(uri, piece), end: this.at(uri, piece, piece.length) };
  }

  /** The piece of text that a range covers. */
  piece(uri: string, range: Range): string {
    const { from, to } = new Lines(this.text(uri)).span(range);
    return this.text(uri).slice(from, to);
  }

  ask<R>(method: string, uri: string, more: object = {}): Promise<R> {
    return this.connection.sendRequest<R>(method, { textDocument: { uri }, ...more });
  }

  /** Findings pushed last. */
  told(uri: string): Diagnostic[] {
    return this.published.findLast(p => p.uri === uri)?.diagnostics ?? [];
  }

  /** Findings of the document as it is now, as they were pushed. */
  async findings(uri: string): Promise<Diagnostic[]> {
    const version = this.texts.get(uri)!.version;
    const told = () => this.published.findLast(p => p.uri === uri && p.version === version);
    const now = told();
    if (now) return now.diagnostics;
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => reject(new Error('no findings came')), 20_000);
      const look = () => {
        const found = told();
        if (!found) return;
        clearTimeout(late);
        this.waiting.delete(look);
        resolve(found.diagnostics);
      };
      this.waiting.add(look);
    });
  }

  /** Makes the changes of an edit, as an editor does, and sends them. */
  async apply(edit: WorkspaceEdit): Promise<void> {
    const all =
      edit.documentChanges?.flatMap(c => ('edits' in c ? [[c.textDocument.uri, c.edits] as const] : [])) ??
      Object.entries(edit.changes ?? {});
    for (const [uri, edits] of all) {
      const lines = new Lines(this.text(uri));
      const spans = edits.flatMap(e =>
        'range' in e && 'newText' in e ? [{ ...lines.span(e.range), text: e.newText }] : [],
      );
      // From the end, so that offsets hold; of two at one place the later stands behind.
      const ordered = spans.map((s, i) => ({ ...s, i })).sort((a, b) => b.from - a.from || b.i - a.i);
      for (const { from, to, text } of ordered) await this.edit(uri, from, to, text);
    }
  }
}

/** Asks again until there is something. */
export async function until<T>(ask: () => T | undefined): Promise<T> {
  const end = Date.now() + 20_000;
  for (;;) {
    const answer = ask();
    if (answer !== undefined) return answer;
    if (Date.now() > end) throw new Error('waited in vain');
    await new Promise(resolve => setTimeout(resolve, 5));
  }
}
