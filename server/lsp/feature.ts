import type { Connection, TextDocumentIdentifier } from 'vscode-languageserver';
import type { Analysis } from '../../language/index.js';
import type { Houses } from './houses.js';
import type { Lines } from './lines.js';

/** What a feature works on: the analysis of the document as it is now, and its places. */
export interface Seen {
  readonly analysis: Analysis;
  readonly lines: Lines;
  readonly houses: Houses;
}

/** What the client can do, as far as features ask. */
export interface Able {
  readonly snippets: boolean;
  readonly markdown: boolean;
  readonly related: boolean;
  readonly pullDiagnostics: boolean;
  readonly refreshDiagnostics: boolean;
  readonly refreshLens: boolean;
  readonly versionedEdits: boolean;
  readonly watchFiles: boolean;
  readonly folders: boolean;
}

export interface Server {
  readonly connection: Connection;
  readonly houses: Houses;
  readonly able: () => Able;
}

/**
 * Answers a request about one document. A fault in it is logged and answered with nothing, and touches nothing else.
 */
export function answer<P extends { readonly textDocument: TextDocumentIdentifier }, R, N>(
  { houses }: Server,
  what: string,
  nothing: N,
  compute: (seen: Seen, params: P) => R | Promise<R>,
): (params: P) => Promise<R | N> {
  return async params => {
    try {
      const seen = await houses.seen(params.textDocument.uri);
      return seen ? await compute(seen, params) : nothing;
    } catch (error) {
      houses.fault(error, what);
      return nothing;
    }
  };
}
