import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  CompletionItemKind,
  type CompletionItem,
  type CompletionList,
  type Diagnostic,
  type TextEdit,
} from 'vscode-languageserver-protocol';
import { Lines } from '../../server/lsp/lines.js';
import { Client, root } from './client.js';
import { SMALL } from './houses.js';

let client: Client;
beforeAll(async () => {
  client = await Client.start({ folder: path.join(root, 'samples') });
});
afterAll(() => client.stop());

let count = 0;
/** Items at `|`, which stands for the cursor in a piece that takes the place of another one in the small house. */
async function items(from: string, to: string): Promise<CompletionItem[]> {
  const text = SMALL.replace(from, to);
  const offset = text.indexOf('|');
  return at(await client.open(`small-${count++}.house`, text.replace('|', '')), offset);
}

async function at(uri: string, offset: number): Promise<CompletionItem[]> {
  const position = new Lines(client.text(uri)).position(offset);
  return (await client.ask<CompletionList>('textDocument/completion', uri, { position })).items;
}

const labels = (list: readonly CompletionItem[]) => list.map(i => i.label);

/** What stands in the file after an item is taken, places to fill in with what they propose. */
function taken(text: string, item: CompletionItem): string {
  const lines = new Lines(text);
  const edits = [item.textEdit as TextEdit, ...(item.additionalTextEdits ?? [])];
  const plain = (snippet: string) =>
    snippet
      .replace(/\$\{\d+\|((?:\\.|[^,|\\])*)[^}]*\|\}/g, '$1')
      .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, '$1')
      .replace(/\$\{\d+\}|\$\d+/g, '')
      .replace(/\\(.)/g, '$1');
  let out = text;
  const spans = edits.map(e => ({ ...lines.span(e.range), text: e.newText })).sort((a, b) => b.from - a.from);
  for (const { from, to, text: inserted } of spans)
    out = out.slice(0, from) + (item.insertTextFormat === 2 ? plain(inserted) : inserted) + out.slice(to);
  return out;
}

describe('completion', () => {
  test('in a block offers properties not yet given and blocks that may stand there', async () => {
    const list = labels(await items('    load range', '    |\n    load range'));
    expect(list).toContain('evse');
    expect(list).toContain('load');
    expect(list).not.toContain('service');
    expect(list).not.toContain('wall');
    const panel = labels(await items('spaces: 24', 'spaces: 24, |'));
    expect(panel).not.toContain('bus');
    expect(panel).toContain('fed-by');
  });

  test('finds a block by what people call it', async () => {
    const list = await items('    load range', '    |\n    load range');
    expect(list.find(i => i.label === 'evse')?.filterText).toMatch(/charger/i);
  });

  test('of a whole block fills in what it cannot do without', async () => {
    const list = await items('    load range', '    |\n    load range');
    const load = list.find(i => i.label === 'load')!;
    expect((load.textEdit as TextEdit).newText).toMatch(/^load \$\{1:new-load\} \{ kind: \$\{2\|.*range.*\|\}/);
  });

  test('offers units of the dimension behind a number', async () => {
    const list = labels(await items('area: 80 m2', 'area: 80 |'));
    expect(list.slice(0, 1)).toEqual(['cm2']);
    expect(list).toContain('ft2');
    expect(list).not.toContain('m');
    const bound = labels(await items('at most 100 A', 'at most 100 |'));
    expect(bound).toContain('A');
    expect(bound).not.toContain('kW');
  });

  test('offers names of the right kind alone', async () => {
    const list = labels(await items('on: c-range', 'on: |'));
    expect(list).toContain('c-range');
    expect(list).not.toContain('main');
    const like = await items('like range-12kw', 'like |');
    expect(labels(like)).toContain('range-12kw');
    expect(labels(like)).not.toContain('cold-climate-3t');
  });

  test('offers the name of a library that is not imported together with its import', async () => {
    const list = await items('heating { furnace', 'heating { heat-pump hp like | }\n  heating { furnace');
    const item = list.find(i => i.label === 'prairie-3t')!;
    expect(item.additionalTextEdits?.[0]?.newText).toContain('import "library/equipment.house"');
  });

  test('offers choices, currencies, sources, stages’ words and results', async () => {
    expect(labels(await items('level: above-grade', 'level: |'))).toContain('below-grade');
    expect(labels(await items('currency: CAD', 'currency: |'))).toContain('USD');
    expect(labels(await items('from audit {', 'from | {'))).toEqual(['audit']);
    expect(labels(await items('starts: 2026', '|\n    starts: 2026'))).toEqual(
      expect.arrayContaining(['add', 'change', 'remove', 'cost', 'changeover']),
    );
    const results = labels(await items('main.spaces-left: at least 2', '|'));
    expect(results).toContain('main.spaces-left');
    expect(results).toContain('heating.worst-margin');
    expect(results).not.toContain('service.demand');
  });

  test('in a stage offers what stands in it to change and remove', async () => {
    const list = labels(await items('change ground { area: 90 m2 }', 'remove |'));
    expect(list).toContain('old');
    expect(list).toContain('c-range');
    expect(list).not.toContain('c-dryer');
    const change = labels(await items('area: 90 m2 }', '| }'));
    expect(change).toContain('height');
    expect(change).not.toContain('add');
  });

  test('offers codes to accept, and files to import', async () => {
    expect(labels(await items('starts: 2026', 'accept |\n    starts: 2026'))).toContain('circuit/voltage-drop');
    expect(labels(await items('house small', 'import "|"\nhouse small'))).toContain('library/equipment.house');
  });

  test('in front of what stands already writes the word alone', async () => {
    const inserts = async (from: string, to: string, label: string) => {
      const item = (await items(from, to)).find(i => i.label === label);
      return (item?.textEdit as TextEdit).newText;
    };
    expect(await inserts('change ground {', 'change gr|ou {', 'ground')).toBe('ground');
    expect(await inserts('bus: 100 A', 'b|: 100 A', 'bus')).toBe('bus');
    expect(await inserts('panel main {', 'pa| main {', 'panel')).toBe('panel');
  });

  test('in comments and texts offers nothing', async () => {
    expect(await items('/** The kitchen', '/** |The kitchen')).toEqual([]);
    expect(await items('"A small one"', '"A sm|all one"')).toEqual([]);
  });

  test('typing a blank alone brings no list where nothing is awaited', async () => {
    const uri = await client.open('blank.house', SMALL);
    const ask = (piece: string, offset: number) =>
      client.ask<CompletionList>('textDocument/completion', uri, {
        position: client.at(uri, piece, offset),
        context: { triggerKind: 2, triggerCharacter: ' ' },
      });
    expect((await ask('  heating {', 2)).items).toEqual([]);
    expect((await ask('80 m2', 3)).items.length).toBeGreaterThan(1);
  });

  test('without snippets writes plain text', async () => {
    const plain = await Client.start({ folder: root, capabilities: {} });
    const uri = await plain.open('plain.house', SMALL.replace('    load range', '    \n    load range'));
    const list = await plain.ask<CompletionList>('textDocument/completion', uri, {
      position: plain.at(uri, '    \n    load', 4),
    });
    expect(list.items.length).toBeGreaterThan(3);
    for (const item of list.items) expect((item.textEdit as TextEdit).newText).not.toMatch(/\$\{?\d/);
    await plain.stop();
  });
});

describe('whatever is taken', () => {
  const FORBIDDEN =
    /^(input\/(unknown-|misplaced-|header|wrong-|duplicate-property|reserved-name|not-alive|needs-parent|impossible|like-cycle|import-cycle|file-)|syntax\/(?!missing))/;

  /** Cursor places, each with a cut of the text: before a member, behind a colon, behind a number. */
  function* places(text: string): Generator<{ text: string; offset: number }> {
    for (const found of text.matchAll(/^[ ]{2,}(?=[a-z])/gm)) {
      const offset = found.index + found[0].length;
      yield { text: `${text.slice(0, offset)}\n${found[0]}${text.slice(offset)}`, offset };
    }
    for (const found of text.matchAll(/(?<=: )(?:"[^"]*"|[\w.-]+(?: [\w/²°%]+)?)(?=,| \}|$)/gm))
      yield { text: text.slice(0, found.index) + text.slice(found.index + found[0].length), offset: found.index };
    for (const found of text.matchAll(/(?<=\d )[a-zA-Z°%][\w/°%]*(?=,| \}|$)/gm))
      yield { text: text.slice(0, found.index) + text.slice(found.index + found[0].length), offset: found.index };
    for (const found of text.matchAll(/(?<=(?:like|change|remove|from|in) )[a-z][\w-]*(?: \{ area: 90 m2 \})?/g))
      yield { text: text.slice(0, found.index) + text.slice(found.index + found[0].length), offset: found.index };
  }

  const codes = (found: readonly Diagnostic[]) => found.map(f => String(f.code));

  test('is allowed where it was offered', { timeout: 120_000 }, async () => {
    let tried = 0;
    const wrong: string[] = [];
    const before = await client.open('before.house', SMALL);
    const had = new Set(codes(await client.findings(before)));
    let turn = 0;
    for (const { text, offset } of places(SMALL)) {
      const uri = await client.open('cut.house', text);
      for (const [i, item] of (await at(uri, offset)).entries()) {
        // Every item of short lists, and of long ones each third, a different third at each place.
        // A word such as add waits for what stands behind it.
        if (item.kind === CompletionItemKind.Keyword) continue;
        if (i > 12 && (i + turn) % 3) continue;
        const after = await client.open(`taken-${tried++}.house`, taken(text, item));
        const found = await client.findings(after);
        for (const f of found)
          if (FORBIDDEN.test(String(f.code)) && !had.has(String(f.code)))
            wrong.push(
              `${item.label} after ${JSON.stringify(text.slice(Math.max(0, offset - 40), offset))}: ${f.code} ${f.message}`,
            );
        await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri: after } });
      }
      turn++;
    }
    expect(wrong.slice(0, 40)).toEqual([]);
    expect(tried).toBeGreaterThan(300);
  });
});
