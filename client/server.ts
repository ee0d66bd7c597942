import { window } from 'vscode';
import type { Disposable, LogOutputChannel, Uri } from 'vscode';
import { LanguageClient, State, TransportKind } from 'vscode-languageclient/node.js';
import { followLooks, looks } from './looks.js';
import { SUMMARY } from '../server/protocol/summary.js';
import type { Summary, SummaryParams } from '../server/protocol/summary.js';

/** Where the server stands, as a user would say it. */
export type Standing = 'starting' | 'running' | 'stopped';

/** The language server as a process of its own, started from the bundle at `module`. */
export class Server implements Disposable {
  readonly #client: LanguageClient;
  readonly #looks: Disposable;

  constructor(
    module: string,
    language: string,
    private readonly output: LogOutputChannel,
  ) {
    this.#client = new LanguageClient(
      // The id names the settings, too: the client reads `wattwright.trace.server` by itself.
      'wattwright',
      'Wattwright',
      { module, transport: TransportKind.stdio },
      {
        documentSelector: [{ language }],
        outputChannel: output,
        diagnosticCollectionName: 'wattwright',
        middleware: looks,
      },
    );
    this.#looks = followLooks(this.#client);
  }

  standing(): Standing {
    if (this.#client.state === State.Running) return 'running';
    return this.#client.state === State.Starting ? 'starting' : 'stopped';
  }

  onChange(told: () => void): Disposable {
    return this.#client.onDidChangeState(told);
  }

  dispose(): void {
    this.#looks.dispose();
  }

  /** A server that does not come up is told once, with the way to its output; the editor goes on without it. */
  async start(): Promise<void> {
    try {
      await this.#client.start();
    } catch (fault) {
      await this.#tell('The Wattwright server did not start.', fault);
    }
  }

  async restart(): Promise<void> {
    try {
      if (this.#client.state === State.Stopped) await this.#client.start();
      else await this.#client.restart();
    } catch (fault) {
      await this.#tell('The Wattwright server did not restart.', fault);
    }
  }

  async stop(): Promise<void> {
    if (this.#client.state === State.Running) await this.#client.stop();
  }

  /** Headline results of an open house; undefined while the server has none to give. */
  async summary(uri: Uri): Promise<Summary | undefined> {
    if (this.#client.state !== State.Running) return undefined;
    const params: SummaryParams = { uri: this.#client.code2ProtocolConverter.asUri(uri) };
    try {
      return (await this.#client.sendRequest<Summary | null>(SUMMARY, params)) ?? undefined;
    } catch (fault) {
      this.output.warn(`No summary of ${uri.toString()}: ${String(fault)}`);
      return undefined;
    }
  }

  async #tell(message: string, fault: unknown): Promise<void> {
    this.output.error(`${message} ${String(fault)}`);
    const show = 'Show Output';
    if ((await window.showErrorMessage(message, show)) === show) this.output.show();
  }
}
