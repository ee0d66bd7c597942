// Runs inside the extension host. What it checks is what other extensions and the editor itself see of ours.
import assert from 'node:assert/strict';
import { commands, ConfigurationTarget, extensions, languages, Range, Uri, window, workspace } from 'vscode';
import type { CodeAction, CodeLens, Diagnostic, Hover, TextEditor } from 'vscode';
import { FAULT, SAMPLE, WORKSHEET } from '../scenario.js';

const checks: Record<string, (editor: TextEditor) => Promise<void>> = {
  async 'the file is a house and its extension is active'(editor) {
    assert.equal(editor.document.languageId, 'house');
    await until('the extension is active', () => extensions.getExtension('wattwright.wattwright')?.isActive);
  },

  async 'an edit brings its finding, its fix takes it away'(editor) {
    const at = placeOf(editor, FAULT.from);
    await editor.edit(edit => edit.replace(at, FAULT.to));
    const finding = await until('the finding', () => findings(editor).find(one => one.message.includes(FAULT.message)));
    const actions = await commands.executeCommand<CodeAction[]>(
      'vscode.executeCodeActionProvider',
      editor.document.uri,
      finding.range,
    );
    const fix = actions.find(action => action.title.includes(FAULT.fix));
    assert.ok(fix?.edit, `no such fix among ${actions.map(action => action.title).join(', ')}`);
    await workspace.applyEdit(fix.edit);
    await until('the finding goes', () => !findings(editor).some(one => one.message.includes(FAULT.message)));
  },

  async 'hover gives a worksheet'(editor) {
    const position = placeOf(editor, WORKSHEET.at).start;
    const hovers = await commands.executeCommand<Hover[]>('vscode.executeHoverProvider', editor.document.uri, position);
    const text = hovers
      .flatMap(hover => hover.contents)
      .map(content => (typeof content === 'string' ? content : content.value));
    assert.match(text.join('\n'), new RegExp(WORKSHEET.text));
  },

  async 'the server can be restarted and answers again'(editor) {
    await commands.executeCommand('wattwright.restartServer');
    const at = placeOf(editor, FAULT.from);
    await editor.edit(edit => edit.replace(at, FAULT.to));
    await until('the finding', () => findings(editor).some(one => one.message.includes(FAULT.message)));
  },

  async 'a lens that is turned off is gone, and comes back'(editor) {
    const settings = workspace.getConfiguration('wattwright');
    const lenses = () => commands.executeCommand<CodeLens[]>('vscode.executeCodeLensProvider', editor.document.uri);
    assert.notEqual((await lenses()).length, 0);
    await settings.update('codeLens', false, ConfigurationTarget.Global);
    assert.equal((await lenses()).length, 0);
    await settings.update('codeLens', undefined, ConfigurationTarget.Global);
    assert.notEqual((await lenses()).length, 0);
  },

  async 'the preview opens beside the text'() {
    await commands.executeCommand('wattwright.openPreview');
    await until('its tab', () =>
      window.tabGroups.all.flatMap(group => group.tabs).some(tab => tab.label.includes('Preview')),
    );
  },
};

export async function run(): Promise<void> {
  const folder = workspace.workspaceFolders?.[0];
  assert.ok(folder);
  const document = await workspace.openTextDocument(Uri.joinPath(folder.uri, SAMPLE.file));
  const editor = await window.showTextDocument(document);
  let failed = 0;
  for (const [name, check] of Object.entries(checks)) {
    try {
      await check(editor);
      console.log(`passed: ${name}`);
    } catch (fault) {
      failed += 1;
      console.log(`failed: ${name}: ${fault instanceof Error ? fault.stack : String(fault)}`);
    }
  }
  if (failed) throw new Error(`${failed} failed`);
}

function findings(editor: TextEditor): Diagnostic[] {
  return languages.getDiagnostics(editor.document.uri);
}

function placeOf(editor: TextEditor, text: string): Range {
  const from = editor.document.getText().indexOf(text);
  assert.notEqual(from, -1, `the file holds no ${text}`);
  return new Range(editor.document.positionAt(from), editor.document.positionAt(from + text.length));
}

/** Asks again until there is something, for as long as a slow machine may take to start the server. */
async function until<T>(what: string, ask: () => T | undefined | false): Promise<T> {
  const end = Date.now() + 30_000;
  for (;;) {
    const answer = ask();
    if (answer !== undefined && answer !== false) return answer;
    if (Date.now() > end) throw new Error(`Waited in vain: ${what}`);
    await new Promise(resolve => setTimeout(resolve, 50));
  }
}
