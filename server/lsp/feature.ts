import {
  LSPErrorCodes,
  ResponseError,
  type CancellationToken,
  type Connection,
  type TextDocumentIdentifier,
} from 'vscode-languageserver';
import type { Houses, Seen } from './houses.js';

export type { Seen };

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

/** Answers a request about one document, as it is when all edits that came meanwhile are read; a request given up is not worked on. */
export function answer<P extends { readonly textDocument: TextDocumentIdentifier }, R, N>(
  server: Server,
  what: string,
  nothing: N,
  compute: (seen: Seen, params: P) => R | Promise<R>,
): (params: P, token: CancellationToken) => Promise<R | N> {
  return (params, token) =>
    guarded(server, what, nothing, async () => {
      await server.houses.caughtUp();
      if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'no longer asked for');
      const seen = await server.houses.seen(params.textDocument.uri);
      return seen ? compute(seen, params) : nothing;
    });
}

/** A fault in one request is logged and answered with nothing, and touches nothing else. A refusal goes to the user. */
export async function guarded<R, N>(
  { houses }: Server,
  what: string,
  nothing: N,
  compute: () => Promise<R>,
): Promise<R | N> {
  try {
    return await compute();
  } catch (error) {
    if (error instanceof ResponseError) throw error;
    houses.fault(error, what);
    return nothing;
  }
}
