import path from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { CodeAction, Diagnostic } from 'vscode-languageserver-protocol';
import { Client, root } from './client.js';
import { SMALL } from './houses.js';

let client: Client;
afterEach(() => client.stop());

const actionsAt = (uri: string, found: Diagnostic, only?: string[]): Promise<CodeAction[]> =>
  client.ask('textDocument/codeAction', uri, {
    range: found.range,
    context: { diagnostics: [found], ...(only ? { only } : {}) },
  });

/** Codes of errors of which there are more than before; the same one may tell other numbers. */
function newErrors(before: readonly Diagnostic[], after: readonly Diagnostic[]): string[] {
  const count = (of: readonly Diagnostic[], code: unknown) =>
    of.filter(f => f.severity === 1 && f.code === code).length;
  return [...new Set(after.map(f => String(f.code)))].filter(code => count(after, code) > count(before, code));
}

const errors = (found: readonly Diagnostic[]) => found.filter(f => f.severity === 1).map(f => `${f.code} ${f.message}`);

describe('a quick fix', () => {
  test('takes its finding away', async () => {
    client = await Client.start({ folder: root });
    const uri = await client.open('small.house', SMALL.replace('breaker: 40 A', 'breaker: 15 A'));
    const [found] = await client.findings(uri);
    const fixes = await actionsAt(uri, found);
    expect(fixes[0]?.diagnostics?.[0]?.code).toBe(found.code);
    await client.apply(fixes[0].edit!);
    expect(await client.findings(uri)).toEqual([]);
  });

  test('inserts what is missing', async () => {
    client = await Client.start({ folder: root });
    const uri = await client.open('small.house', SMALL.replace(', afue: 80 %', ''));
    const [found] = await client.findings(uri);
    expect(found?.code).toBe('input/missing-property');
    const [fix] = await actionsAt(uri, found);
    expect(fix?.isPreferred).toBe(true);
    await client.apply(fix.edit!);
    expect(errors(await client.findings(uri))).toEqual([]);
  });

  test('corrects a slipped word', async () => {
    client = await Client.start({ folder: root });
    const uri = await client.open('small.house', SMALL.replace('spaces: 24', 'spacs: 24'));
    const found = (await client.findings(uri)).find(f => f.code === 'input/unknown-property');
    const [fix] = await actionsAt(uri, found!);
    await client.apply(fix.edit!);
    expect(client.text(uri)).toBe(SMALL);
  });

  test('is not offered when the client asks for something else', async () => {
    client = await Client.start({ folder: root });
    const uri = await client.open('small.house', SMALL.replace('breaker: 40 A', 'breaker: 15 A'));
    const [found] = await client.findings(uri);
    expect(await actionsAt(uri, found, ['refactor'])).toEqual([]);
  });

  test('of every finding of the sample with faults takes it away and brings no new error', async () => {
    client = await Client.start({ folder: path.join(root, 'samples') });
    const original = await client.open('faults/faults.house');
    const before = await client.findings(original);
    let tried = 0;
    for (const found of before) {
      const fixes = await actionsAt(original, found);
      // Two readings of one number are a choice: the second may not fit the property.
      const offered = fixes.filter(f => f.diagnostics?.length);
      for (const fix of found.code === 'syntax/number' ? offered.slice(0, 1) : offered) {
        const copy = await client.open(`faults/copy-${tried++}.house`, client.text(original));
        await client.findings(copy);
        const edit = JSON.parse(JSON.stringify(fix.edit).replaceAll(original, copy)) as CodeAction['edit'];
        await client.apply(edit!);
        const after = await client.findings(copy);
        const same = (f: Diagnostic) => f.code === found.code && f.message === found.message;
        expect(after.filter(same).length, `${fix.title}: ${found.message}`).toBeLessThan(before.filter(same).length);
        expect(newErrors(before, after), fix.title).toEqual([]);
        await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri: copy } });
      }
    }
    expect(tried).toBeGreaterThan(3);
  });
});
