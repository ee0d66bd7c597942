import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type {
  CodeLens,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  InlayHint,
  SelectionRange,
  SemanticTokens,
  SymbolInformation,
} from 'vscode-languageserver-protocol';
import { SUMMARY, type Summary } from '../../server/protocol/summary.js';
import { Client, root } from './client.js';
import { SMALL } from './houses.js';

let client: Client;
let uri: string;
beforeAll(async () => {
  client = await Client.start({ folder: path.join(root, 'samples') });
  uri = await client.open('small.house', SMALL);
});
afterAll(() => client.stop());

describe('the outline', () => {
  test('holds blocks and what stages do, in the order of the text', async () => {
    const [house] = await client.ask<DocumentSymbol[]>('textDocument/documentSymbol', uri);
    expect(house?.name).toBe('house small');
    const stage = house.children!.at(-1)!;
    expect(stage.children!.map(c => c.name)).toEqual(['change ground', 'circuit c-dryer', 'load dryer', 'expect']);
  });

  test('every selection lies in its range, in every sample', async () => {
    const inside = (s: DocumentSymbol, at: string): void => {
      expect(client.piece(at, s.range)).toContain(client.piece(at, s.selectionRange));
      s.children?.forEach(c => inside(c, at));
    };
    for (const name of ['tamarack/tamarack.house', 'faults/faults.house', 'library/assemblies.house']) {
      const at = await client.open(name);
      const symbols = await client.ask<DocumentSymbol[]>('textDocument/documentSymbol', at);
      symbols.forEach(s => inside(s, at));
    }
  });

  test('of the workspace is searched by kind, name and title', async () => {
    const found = await client.connection.sendRequest<SymbolInformation[]>('workspace/symbol', {
      query: 'heat-pump prairie',
    });
    expect(found[0]?.name).toBe('prairie-3t');
    expect(found[0]?.location.uri).toBe(client.uri('library/equipment.house'));
  });

  test('folds blocks, tables and comments', async () => {
    const at = await client.open('tamarack/tamarack.house');
    const found = await client.ask<FoldingRange[]>('textDocument/foldingRange', at);
    const table = client.at(at, 'months: table').line;
    expect(found.some(f => f.startLine === table && f.endLine === client.at(at, 'record-low').line - 2)).toBe(true);
    expect(found.some(f => f.startLine === 0 && f.kind === 'comment')).toBe(true);
    expect(found.some(f => f.kind === 'imports')).toBe(true);
  });

  test('widens a selection from the word to the file', async () => {
    const [found] = await client.ask<SelectionRange[]>('textDocument/selectionRange', uri, {
      positions: [client.at(uri, '40 A', 1)],
    });
    const pieces: string[] = [];
    for (let at: SelectionRange | undefined = found; at; at = at.parent) pieces.push(client.piece(uri, at.range));
    expect(pieces.slice(0, 3)).toEqual(['40', '40 A', 'breaker: 40 A']);
    expect(pieces[3]).toMatch(/^circuit c-range \{/);
    expect(pieces.at(-1)).toBe(SMALL);
  });

  test('links imports and files', async () => {
    const at = await client.open('tamarack/tamarack.house');
    const found = await client.ask<DocumentLink[]>('textDocument/documentLink', at);
    expect(found.map(f => client.piece(at, f.range))).toEqual([
      '../library/assemblies.house',
      '../library/equipment.house',
      'bills/interval.csv',
    ]);
  });
});

describe('beside the text', () => {
  test('a line of headline results stands above the house and each stage', async () => {
    const found = await client.ask<CodeLens[]>('textDocument/codeLens', uri);
    expect(found.map(f => client.piece(uri, f.range))).toEqual(['small', 'more']);
    expect(found[0]?.command?.title).toMatch(/^design load 6 kW  ·  worst margin/);
    expect(found[1]?.command?.title).toMatch(/service demand 51 A/);
  });

  test('a change against the stage before is told', async () => {
    const at = await client.open('tamarack/tamarack.house');
    const found = await client.ask<CodeLens[]>('textDocument/codeLens', at);
    expect(found.length).toBe(8);
    expect(found[2]?.command?.title).toMatch(/^design load [\d.]+ kW \(−[\d.]+ kW\)/);
  });

  test('hints give °F behind °C, amperes behind watts, U-values behind assemblies', async () => {
    const whole = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
    const at = await client.open('tamarack/tamarack.house');
    const found = await client.ask<InlayHint[]>('textDocument/inlayHint', at, { range: whole });
    const hintAt = (piece: string) => {
      const end = client.at(at, piece, piece.length);
      return found.find(f => f.position.line === end.line && f.position.character === end.character)?.label;
    };
    expect(hintAt('outdoor: -34 °C')).toBe('−29.2 °F');
    expect(hintAt('rating: 10.2 kW')).toBe('42.5 A');
    expect(found.some(f => /^U 0\.\d+ W\/m2K$/.test(f.label as string))).toBe(true);
    const none = await client.ask<InlayHint[]>('textDocument/inlayHint', at, {
      range: { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } },
    });
    expect(none).toEqual([]);
  });

  test('colours come in the order of the text and do not overlap', async () => {
    const at = await client.open('tamarack/tamarack.house');
    const { data } = await client.ask<SemanticTokens>('textDocument/semanticTokens/full', at);
    expect(data.length % 5).toBe(0);
    expect(data.length).toBeGreaterThan(1000);
    for (let i = 5; i < data.length; i += 5) if (data[i] === 0) expect(data[i + 1]).toBeGreaterThanOrEqual(data[i - 3]);
  });

  test('the summary gives every stage with its headline results', async () => {
    const found = await client.connection.sendRequest<Summary>(SUMMARY, { uri });
    expect(found.stages.map(s => s.name)).toEqual(['today', 'more']);
    expect(found.stages[0]?.results.find(r => r.name === 'service.demand')?.text).toBe('45.8 A');
    expect(found.findings).toEqual({ errors: 0, warnings: 0, infos: 0 });
    expect(await client.connection.sendRequest(SUMMARY, { uri: client.uri('none.house') })).toBeNull();
  });
});
