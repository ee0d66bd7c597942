import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-protocol';
import { Client, root } from './client.js';
import { SMALL } from './houses.js';

let client: Client;
beforeEach(async () => {
  client = await Client.start({ folder: path.join(root, 'samples') });
});
afterEach(() => client.stop());

/** Every request about a document, at the end of its first line and somewhere in it. */
async function askEverything(uri: string): Promise<void> {
  const positions = [
    { line: 0, character: 3 },
    { line: 0, character: 100_000_000 },
    { line: 5, character: 7 },
  ];
  for (const position of positions) {
    await client.ask('textDocument/hover', uri, { position });
    await client.ask('textDocument/completion', uri, { position });
    await client.ask('textDocument/definition', uri, { position });
    await client.ask('textDocument/references', uri, { position, context: { includeDeclaration: true } });
    await client.ask('textDocument/prepareRename', uri, { position });
    await client.ask('textDocument/onTypeFormatting', uri, {
      position,
      ch: '}',
      options: { tabSize: 2, insertSpaces: true },
    });
  }
  const range = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
  for (const method of ['codeLens', 'documentSymbol', 'foldingRange', 'documentLink', 'semanticTokens/full'])
    await client.ask(`textDocument/${method}`, uri);
  await client.ask('textDocument/inlayHint', uri, { range });
  await client.ask('textDocument/codeAction', uri, { range, context: { diagnostics: [] } });
  await client.ask('textDocument/selectionRange', uri, { positions });
  await client.ask('textDocument/formatting', uri, { options: { tabSize: 2, insertSpaces: true } });
}

describe('any text', () => {
  const TEXTS: Record<string, string> = {
    empty: '',
    'line ends of all kinds': 'house a {\r\n  currency: CAD\r}\n\u2028',
    'binary junk': Array.from({ length: 3000 }, (_, i) => String.fromCharCode((i * 7919) % 65536)).join(''),
    'lone surrogates': `house a { currency: CAD /* \ud800 */ } \udc00`,
    'a line of ten million': `house a { currency: CAD } // ${'x'.repeat(10_000_000)}`,
    'brackets in brackets': `house a { x: ${'('.repeat(5000)}`,
    'braces in braces': 'a {'.repeat(5000),
    'many operators': `house a { occupants: 1 ${'+ 1 '.repeat(20_000)} }`,
    'many errors': 'house a {\n' + '  wrong wrong: : 9 9\n'.repeat(3000) + '}',
  };
  test.each(Object.keys(TEXTS))('%s is answered', { timeout: 120_000 }, async name => {
    const uri = await client.open('any.house', TEXTS[name]);
    await client.findings(uri);
    await askEverything(uri);
    const next = await client.open('next.house', SMALL);
    expect(await client.findings(next)).toEqual([]);
    expect(client.logged).toEqual([]);
  });

  test('that is not empty and no house is never clean', async () => {
    for (const name of ['binary junk', 'brackets in brackets', 'many errors']) {
      const uri = await client.open(`${name.replaceAll(' ', '-')}.house`, TEXTS[name]);
      expect((await client.findings(uri)).length).toBeGreaterThan(0);
    }
  });
});

describe('requests out of place', () => {
  test('about documents that are not there are answered with nothing', async () => {
    await askEverything(client.uri('nowhere.house'));
    await askEverything('untitled:Untitled-1');
    await askEverything('not an address');
    expect(client.logged).toEqual([]);
  });

  test('an unsaved document is judged like any other', async () => {
    await client.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: 'untitled:Untitled-1', languageId: 'house', version: 1, text: `import "x.house"\n${SMALL}` },
    });
    const { items } = await client.ask<{ items: { label: string }[] }>(
      'textDocument/completion',
      'untitled:Untitled-1',
      { position: { line: 2, character: 2 } },
    );
    expect(items.length).toBeGreaterThan(3);
  });
});

describe('files outside of the workspace', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'ww-lsp-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  test('are not read, neither by steps upwards nor through a link', async () => {
    writeFileSync(path.join(folder, 'secret.house'), 'assembly secret { r-value: 20 R }');
    const inner = path.join(folder, 'inner');
    mkdirSync(inner);
    symlinkSync(path.join(folder, 'secret.house'), path.join(inner, 'link.house'));
    const own = await Client.start({ folder: inner });
    const uri = await own.open('a.house', `import "../secret.house"\nimport "link.house"\n${SMALL}`);
    const codes = (await own.findings(uri)).map(f => f.code);
    expect(codes).toEqual(['input/file-outside', 'input/file-missing']);
    await own.stop();
  });

  test('without a workspace, those beside the document are read', async () => {
    writeFileSync(path.join(folder, 'lib.house'), 'load big { kind: range, rating: 12 kW }');
    const own = await Client.start({ folder: undefined });
    const uri = pathToFileURL(path.join(folder, 'a.house')).href;
    const text = `import "lib.house"\n${SMALL.replace('range-12kw', 'big')}`;
    await own.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'house', version: 1, text },
    });
    const links = await own.ask<unknown[]>('textDocument/documentLink', uri);
    expect(links.length).toBe(1);
    expect(own.published.findLast(p => p.uri === uri)?.diagnostics ?? []).toEqual([]);
    await own.stop();
  });
});

describe('formatting', () => {
  const options = { tabSize: 2, insertSpaces: true };
  const MESSY = SMALL.replace('  heating {', '        heating   {').replace('area: 80 m2,', 'area:80 m2  ,');

  test('sets a text in order, and twice changes nothing more', async () => {
    const uri = await client.open('messy.house', MESSY);
    const edits = await client.ask<TextEdit[]>('textDocument/formatting', uri, { options });
    await client.apply({ changes: { [uri]: edits } });
    expect(client.text(uri)).toBe(SMALL);
    expect(await client.ask('textDocument/formatting', uri, { options })).toEqual([]);
  });

  test('of a range leaves the rest alone', async () => {
    const uri = await client.open('messy.house', MESSY);
    const edits = await client.ask<TextEdit[]>('textDocument/rangeFormatting', uri, {
      range: client.range(uri, 'area:80 m2  ,'),
      options,
    });
    await client.apply({ changes: { [uri]: edits } });
    expect(client.text(uri)).toContain('area: 80 m2,');
    expect(client.text(uri)).toContain('        heating   {');
  });

  test('behind a closing brace sets its line in order', async () => {
    const uri = await client.open('messy.house', MESSY);
    const position = client.at(uri, 'afue: 80 % } }', 'afue: 80 % } }'.length);
    const edits = await client.ask<TextEdit[]>('textDocument/onTypeFormatting', uri, { position, ch: '}', options });
    await client.apply({ changes: { [uri]: edits } });
    expect(client.text(uri)).toContain('\n  heating { furnace');
    expect(client.text(uri)).toContain('area:80 m2  ,');
  });
});

describe('any edits', () => {
  test('leave what a fresh server would find', { timeout: 120_000 }, async () => {
    const piece = fc.constantFrom(
      '',
      '}',
      '{',
      '"',
      ' ',
      '9',
      '15 A',
      'breaker: ',
      '\n',
      'remove old\n',
      '// ',
      'x',
      '°',
      '−',
    );
    const edit = fc.record({ at: fc.nat(SMALL.length), cut: fc.nat(12), text: piece });
    let turn = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 8 }), async edits => {
        const uri = await client.open(`edits-${turn++}.house`, SMALL);
        for (const { at, cut, text } of edits) {
          const from = Math.min(at, client.text(uri).length);
          await client.edit(uri, from, Math.min(from + cut, client.text(uri).length), text);
        }
        const after = await client.findings(uri);
        const fresh = await Client.start({ folder: path.join(root, 'samples') });
        const again = await fresh.open(`edits-${turn - 1}.house`, client.text(uri));
        expect(after).toEqual(await fresh.findings(again));
        await fresh.stop();
        await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
      }),
      { numRuns: 60 },
    );
    expect(client.logged).toEqual([]);
  });
});

describe('a client with few abilities', () => {
  test('gets edits without versions and findings without related places', async () => {
    const plain = await Client.start({ folder: root, capabilities: {} });
    const uri = await plain.open('plain.house', SMALL.replace('spaces: 24', 'spacs: 24'));
    const [found] = await plain.findings(uri);
    expect(found?.relatedInformation).toBeUndefined();
    const [action] = await plain.ask<{ edit: { changes?: object } }[]>('textDocument/codeAction', uri, {
      range: found.range,
      context: { diagnostics: [found] },
    });
    expect(action?.edit.changes).toBeDefined();
    await plain.stop();
  });
});
