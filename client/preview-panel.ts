import { randomBytes } from 'node:crypto';
import { Uri, ViewColumn, window } from 'vscode';
import type { Disposable, WebviewPanel } from 'vscode';
import type { Summary } from '../server/protocol/summary.js';
import type { PreviewMessage } from './preview/message.js';

/** The panel beside the text: headline results of the house that was last in view. */
export class PreviewPanel implements Disposable {
  #panel: WebviewPanel | undefined;
  #house: Uri | undefined;
  /** Counts requests, so that a late answer never overwrites a newer one. */
  #asked = 0;

  constructor(
    private readonly extension: Uri,
    private readonly summary: (house: Uri) => Promise<Summary | undefined>,
  ) {}

  open(house: Uri | undefined): void {
    this.#house = house ?? this.#house;
    if (this.#panel) this.#panel.reveal(undefined, true);
    else this.#panel = this.#create();
    void this.#update();
  }

  /** Shows another house when the editor does; any other file leaves the panel as it is. */
  follow(house: Uri | undefined): void {
    if (!house || house.toString() === this.#house?.toString()) return;
    this.#house = house;
    void this.#update();
  }

  /** Findings of these files are new, and with them the results. */
  refresh(changed: readonly Uri[]): void {
    if (changed.some(uri => uri.toString() === this.#house?.toString())) void this.#update();
  }

  dispose(): void {
    this.#panel?.dispose();
  }

  #create(): WebviewPanel {
    const root = Uri.joinPath(this.extension, 'dist/client');
    const panel = window.createWebviewPanel(
      'wattwright.preview',
      'House Preview',
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, localResourceRoots: [root] },
    );
    panel.onDidDispose(() => (this.#panel = undefined));
    // The page says when it is ready: what is posted earlier is lost.
    panel.webview.onDidReceiveMessage(() => this.#update());
    const script = panel.webview.asWebviewUri(Uri.joinPath(root, 'preview.js')).toString();
    const style = panel.webview.asWebviewUri(Uri.joinPath(root, 'preview.css')).toString();
    panel.webview.html = page({ script, style, nonce: randomBytes(16).toString('base64') });
    return panel;
  }

  async #update(): Promise<void> {
    const house = this.#house;
    if (!this.#panel || !house) return;
    const turn = ++this.#asked;
    const summary = await this.summary(house);
    if (turn !== this.#asked) return;
    const file = house.path.slice(house.path.lastIndexOf('/') + 1);
    const message: PreviewMessage = { file, summary };
    this.#panel.title = `Preview ${file}`;
    await this.#panel.webview.postMessage(message);
  }
}

/** Nothing is loaded but the extension's own script and style, and nothing is sent anywhere. */
function page({ script, style, nonce }: { script: string; style: string; nonce: string }): string {
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta http-equiv="Content-Security-Policy" content="${policy}" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <link rel="stylesheet" href="${style}" nonce="${nonce}" />
    <title>House Preview</title>
  </head>
  <body>
    <main aria-busy="true"></main>
    <script src="${script}" nonce="${nonce}"></script>
  </body>
</html>`;
}
