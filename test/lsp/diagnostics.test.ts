import path from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { Client, FULL, root, until } from './client.js';
import { SMALL } from './houses.js';

let client: Client;
afterEach(() => client.stop());

describe('findings', () => {
  test('are pushed with code, page and severity, and go when the text is mended', async () => {
    client = await Client.start({ folder: root });
    const uri = await client.open('small.house', SMALL);
    expect(await client.findings(uri)).toEqual([]);
    await client.replace(uri, 'breaker: 40 A', 'breaker: 15 A');
    const [found] = await client.findings(uri);
    expect(found?.code).toMatch(/^circuit\//);
    expect(found?.source).toBe('wattwright');
    expect(found?.severity).toBe(1);
    expect(found?.codeDescription?.href).toMatch(/^file:.*\/circuit\/.*\.md$/);
    expect(client.piece(uri, found.range)).toBe('15 A');
    await client.replace(uri, 'breaker: 15 A', 'breaker: 40 A');
    expect(await client.findings(uri)).toEqual([]);
  });

  test('of a burst of edits are those of the last state', async () => {
    client = await Client.start({ folder: root });
    const uri = await client.open('small.house', SMALL);
    await client.findings(uri);
    for (const amperes of ['15', '20', '30', '35', '15']) {
      const at = client.text(uri).indexOf('c-range { breaker: ') + 'c-range { breaker: '.length;
      await client.edit(uri, at, at + 2, amperes);
    }
    const found = await client.findings(uri);
    expect(client.piece(uri, found[0].range)).toBe('15 A');
  });

  test('are never pushed to a client that asks for them', async () => {
    client = await Client.start({
      folder: root,
      capabilities: { ...FULL, textDocument: { ...FULL.textDocument, diagnostic: {} } },
    });
    expect(client.capabilities.diagnosticProvider).toBeDefined();
    const uri = await client.open('small.house', SMALL.replace('breaker: 40 A', 'breaker: 15 A'));
    const { items } = await client.ask<{ items: { code: string }[] }>('textDocument/diagnostic', uri);
    expect(items[0]?.code).toMatch(/^circuit\//);
    expect(client.published).toEqual([]);
  });

  test('of a broken import stand at the import, with the way to the place', async () => {
    client = await Client.start({ folder: path.join(root, 'samples') });
    const library = await client.open('library/equipment.house');
    const uri = await client.open('tamarack/tamarack.house');
    await client.findings(uri);
    await client.replace(library, '{', '{ 9 9');
    const told = await until(() => client.told(uri).find(f => /in equipment\.house/.test(f.message)));
    expect(client.piece(uri, told.range)).toContain('equipment.house');
    expect(told.relatedInformation?.[0]?.location.uri).toBe(library);
  });

  test('are cleared when the document closes', async () => {
    client = await Client.start({ folder: root });
    const uri = await client.open('small.house', SMALL.replace('breaker: 40 A', 'breaker: 15 A'));
    await client.findings(uri);
    await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    await client.ask('textDocument/hover', uri, { position: { line: 0, character: 0 } });
    expect(client.published.at(-1)).toEqual({ uri, diagnostics: [] });
  });

  test('see a file that changes on disk', async () => {
    client = await Client.start({ folder: path.join(root, 'samples') });
    const uri = await client.open('tamarack/tamarack.house');
    const before = await client.findings(uri);
    const published = client.published.length;
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('library/equipment.house'), type: 2 }],
    });
    const again = await until(() => (client.published.length > published ? client.told(uri) : undefined));
    expect(again).toEqual(before);
  });
});
