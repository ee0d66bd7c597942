import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { existsSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Location, Range, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { Client, root } from './client.js';
import { SMALL } from './houses.js';

let client: Client;
let uri: string;
beforeEach(async () => {
  client = await Client.start({ folder: path.join(root, 'samples') });
  uri = await client.open('small.house', SMALL);
});
afterEach(() => client.stop());

const definition = (at: string, piece: string, offset = 0) =>
  client.ask<Location[]>('textDocument/definition', at, { position: client.at(at, piece, offset) });

describe('definition', () => {
  test('leads to the block of the house', async () => {
    const [found] = await definition(uri, 'on: c-range', 5);
    expect(found?.uri).toBe(uri);
    expect(found?.range.start).toEqual(client.at(uri, 'circuit c-range', 8));
  });

  test('leads from a result in an expectation to its block', async () => {
    const [found] = await definition(uri, 'main.spaces-left', 2);
    expect(found?.range.start).toEqual(client.at(uri, 'panel main', 6));
  });

  test('leads into the text of the built-in library', async () => {
    const [found] = await definition(uri, 'range-12kw', 2);
    expect(found?.uri).toMatch(/library\/appliances\.house$/);
    expect(existsSync(fileURLToPath(found.uri))).toBe(true);
  });

  test('leads to an imported file and into it', async () => {
    const tamarack = await client.open('tamarack/tamarack.house');
    const [file] = await definition(tamarack, 'library/equipment', 3);
    expect(file?.uri).toBe(client.uri('library/equipment.house'));
    const [block] = await definition(tamarack, 'like prairie-3t', 7);
    expect(block?.uri).toBe(client.uri('library/equipment.house'));
  });
});

describe('references', () => {
  test('are all places that name the block', async () => {
    const found = await client.ask<Location[]>('textDocument/references', uri, {
      position: client.at(uri, 'panel main', 7),
      context: { includeDeclaration: true },
    });
    expect(found.map(f => client.piece(uri, f.range))).toEqual(['main', 'main', 'main']);
  });

  test('of a library block are found in the houses that import it', async () => {
    const library = await client.open('library/equipment.house');
    const found = await client.ask<Location[]>('textDocument/references', library, {
      position: client.at(library, 'prairie-3t', 2),
      context: { includeDeclaration: false },
    });
    expect(found.map(f => f.uri)).toContain(client.uri('tamarack/tamarack.house'));
  });

  test('are highlighted in the file', async () => {
    const found = await client.ask<{ range: Range; kind: number }[]>('textDocument/documentHighlight', uri, {
      position: client.at(uri, 'on: c-range', 6),
    });
    expect(found.map(f => f.kind)).toEqual([3, 2]);
  });
});

describe('rename', () => {
  const rename = (at: string, piece: string, offset: number, newName: string) =>
    client.ask<WorkspaceEdit | null>('textDocument/rename', at, { position: client.at(at, piece, offset), newName });

  test('writes the new name everywhere, also in expected results', async () => {
    const edit = await rename(uri, 'panel main', 7, 'house-panel');
    await client.apply(edit!);
    expect(client.text(uri)).toBe(
      SMALL.replace('panel main', 'panel house-panel')
        .replace('in main', 'in house-panel')
        .replace('main.spaces-left', 'house-panel.spaces-left'),
    );
    expect(await client.findings(uri)).toEqual([]);
  });

  test('goes over all files that import the block', async () => {
    const library = await client.open('library/equipment.house');
    const edit = await rename(library, 'prairie-3t', 2, 'plains-3t');
    const files = edit!.documentChanges!.map(c => ('textDocument' in c ? c.textDocument.uri : ''));
    expect(files).toContain(library);
    expect(files).toContain(client.uri('tamarack/tamarack.house'));
  });

  test('back again is the text as it was', async () => {
    await client.apply((await rename(uri, 'circuit c-range', 9, 'c-cooker'))!);
    await client.apply((await rename(uri, 'circuit c-cooker', 9, 'c-range'))!);
    expect(client.text(uri)).toBe(SMALL);
  });

  test.each([
    ['Main Panel', /not a name/],
    ['panel', /word of the language/],
    ['c-dryer', /already/],
  ])('refuses %s', async (name, why) => {
    await expect(rename(uri, 'circuit c-range', 9, name)).rejects.toThrow(why);
  });

  test('is offered for names alone', async () => {
    const prepare = (piece: string, offset: number) =>
      client.ask<{ range: Range; placeholder: string } | null>('textDocument/prepareRename', uri, {
        position: client.at(uri, piece, offset),
      });
    expect((await prepare('circuit c-range', 9))?.placeholder).toBe('c-range');
    expect(await prepare('circuit c-range', 2)).toBeNull();
    expect(await prepare('like range-12kw', 7)).toBeNull();
    expect(await prepare('80 m2', 1)).toBeNull();
  });
});
