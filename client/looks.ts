import { workspace } from 'vscode';
import type { Disposable } from 'vscode';
import { CodeLensRequest, InlayHintRequest } from 'vscode-languageclient/node.js';
import type { LanguageClient, Middleware } from 'vscode-languageclient/node.js';

/** What is shown beside the text can be turned off for each kind; the server goes on computing the same. */
export const looks: Middleware = {
  provideCodeLenses: (document, token, next) => (shown('codeLens') ? next(document, token) : []),
  provideInlayHints: (document, range, token, next) => (shown('inlayHints') ? next(document, range, token) : []),
};

/** Shows or hides in every open house as soon as a setting changes, instead of at the next edit. */
export function followLooks(client: LanguageClient): Disposable {
  return workspace.onDidChangeConfiguration(change => {
    for (const document of workspace.textDocuments) {
      if (change.affectsConfiguration('wattwright.codeLens', document))
        client.getFeature(CodeLensRequest.method).getProvider(document)?.onDidChangeCodeLensEmitter.fire();
      if (change.affectsConfiguration('wattwright.inlayHints', document))
        client.getFeature(InlayHintRequest.method).getProvider(document)?.onDidChangeInlayHints.fire();
    }
  });
}

function shown(kind: 'codeLens' | 'inlayHints'): boolean {
  return workspace.getConfiguration('wattwright').get<boolean>(kind, true);
}
