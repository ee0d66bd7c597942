import { spawn, type ChildProcess } from 'node:child_process';
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type CodeLens,
  type DocumentDiagnosticReport,
  type ProtocolConnection,
} from 'vscode-languageserver-protocol/node.js';
import { Lines } from '../../server/lsp/lines.js';

const SERVER = 'dist/server/lsp.js';

/** What an editor is shown of a document. */
export interface Shown {
  readonly findings: readonly { readonly message: string }[];
  readonly lenses: readonly string[];
}

/** An editor with the built server as a process of its own, over the streams that editors use. Findings are asked for. */
export class Editor {
  private constructor(
    private readonly process: ChildProcess,
    private readonly connection: ProtocolConnection,
  ) {}

  static async start(folder: string): Promise<Editor> {
    if (!existsSync(SERVER)) throw new Error(`There is no ${SERVER}; run npm run build before.`);
    const child = spawn(process.execPath, [SERVER, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    connection.listen();
    const uri = pathToFileURL(path.resolve(folder)).href;
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: uri,
      workspaceFolders: [{ uri, name: path.basename(folder) }],
      capabilities: { textDocument: { diagnostic: { relatedDocumentSupport: false } } },
    });
    await connection.sendNotification('initialized', {});
    return new Editor(child, connection);
  }

  /** Opens a text under the name of a file, which need not be there. */
  async open(file: string, text: string): Promise<OpenText> {
    const uri = pathToFileURL(path.resolve(file)).href;
    const textDocument = { uri, languageId: 'house', version: 1, text };
    await this.connection.sendNotification('textDocument/didOpen', { textDocument });
    return new OpenText(this.connection, uri, text);
  }

  /** Resident memory of the server in MB. */
  memory(): number {
    // The one program that tells it on every system with such a notion of memory.
    const kilobytes = execFileSync('ps', ['-o', 'rss=', '-p', String(this.process.pid)], { encoding: 'utf8' });
    return (Number(kilobytes) * 1024) / 1e6;
  }

  async stop(): Promise<void> {
    const ended = new Promise(resolve => this.process.once('exit', resolve));
    await this.connection.sendRequest('shutdown');
    await this.connection.sendNotification('exit');
    await ended;
    this.connection.dispose();
  }
}

/** A document that the editor holds. */
export class OpenText {
  private version = 1;

  constructor(
    private readonly connection: ProtocolConnection,
    private readonly uri: string,
    private held: string,
  ) {}

  /** Writes over a number that stands behind a piece of the text: one change of a few characters, as by a key. */
  async type(behind: string, number: string): Promise<void> {
    const at = this.held.indexOf(behind) + behind.length;
    const [old] = /^-?\d+/.exec(this.held.slice(at)) ?? [];
    if (!this.held.includes(behind) || old === undefined) throw new Error(`no number stands behind "${behind}"`);
    const range = new Lines(this.held).range({ from: at, to: at + old.length });
    this.held = this.held.slice(0, at) + number + this.held.slice(at + old.length);
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.uri, version: ++this.version },
      contentChanges: [{ range, text: number }],
    });
  }

  /** Asks for findings and lens as editors do after a change. */
  async shown(): Promise<Shown> {
    const textDocument = { uri: this.uri };
    const [report, lenses] = await Promise.all([
      this.connection.sendRequest<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument }),
      this.connection.sendRequest<CodeLens[]>('textDocument/codeLens', { textDocument }),
    ]);
    if (report.kind !== 'full') throw new Error('the server answered with no findings of its own');
    return { findings: report.items, lenses: lenses.map(l => l.command?.title ?? '') };
  }
}
