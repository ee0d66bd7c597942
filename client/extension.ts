import { commands, languages, window } from 'vscode';
import type { ExtensionContext, Uri } from 'vscode';
import { PreviewPanel } from './preview-panel.js';
import { Server } from './server.js';
import { WorstFinding } from './worst-finding.js';

/** Language id of a house file, as package.json contributes it. */
const HOUSE = 'house';

let server: Server | undefined;

/** Starts the server and lays the commands; nothing is calculated on this side. */
export async function activate(context: ExtensionContext): Promise<void> {
  const output = window.createOutputChannel('Wattwright', { log: true });
  const running = new Server(context.asAbsolutePath('dist/server/lsp.js'), HOUSE, output);
  const preview = new PreviewPanel(context.extensionUri, uri => running.summary(uri));
  const worst = new WorstFinding(houseInView, () => running.standing());
  server = running;
  context.subscriptions.push(
    output,
    running,
    preview,
    worst,
    running.onChange(() => worst.show()),
    commands.registerCommand('wattwright.restartServer', () => running.restart()),
    commands.registerCommand('wattwright.showOutput', () => output.show()),
    commands.registerCommand('wattwright.openPreview', () => preview.open(houseInView())),
    languages.onDidChangeDiagnostics(({ uris }) => {
      worst.show();
      preview.refresh(uris);
    }),
    window.onDidChangeActiveTextEditor(() => {
      worst.show();
      preview.follow(houseInView());
    }),
  );
  await running.start();
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}

function houseInView(): Uri | undefined {
  const document = window.activeTextEditor?.document;
  return document?.languageId === HOUSE ? document.uri : undefined;
}
