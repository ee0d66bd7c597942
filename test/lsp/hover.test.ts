import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol';
import { Client, root } from './client.js';
import { SMALL } from './houses.js';

let client: Client;
let uri: string;
beforeAll(async () => {
  client = await Client.start({ folder: path.join(root, 'samples') });
  uri = await client.open('small.house', SMALL);
});
afterAll(() => client.stop());

async function hover(piece: string, offset = 0, at = uri): Promise<string> {
  const found = await client.ask<Hover | null>('textDocument/hover', at, { position: client.at(at, piece, offset) });
  return found ? (found.contents as MarkupContent).value : '';
}

describe('hover', () => {
  test('on a property tells what it is, its limits in both systems and its default', async () => {
    expect(await hover('area: 80 m2')).toMatch(/\*\*area\*\*: an area/);
    const outdoor = await hover('outdoor: -25 °C, indoor: 22 °C, source');
    expect(outdoor).toMatch(/Usual: .*°C to .*°C \(.*°F to .*°F\)/);
    expect(outdoor).toContain('required');
  });

  test('on a value gives it in both systems with its origin', async () => {
    const text = await hover('6 kW');
    expect(text).toContain('6 kW (20473 BTU/h)');
    expect(text).toContain('from audit (The walk, measured)');
  });

  test('on a block gives its comment, what it contributes and its worksheet', async () => {
    const text = await hover('circuit c-range');
    expect(text).toContain("The kitchen's own.");
    expect(text).toMatch(/c-range\.load: \*\*[\d.]+ A\*\*/);
    expect(text).toContain('**Worksheet**');
  });

  test('on a circuit added before its load speaks of the stage that has the load', async () => {
    const at = await client.open('tamarack/tamarack.house');
    const text = await hover('circuit c-strip', 0, at);
    expect(text).toContain('After stage heat-and-water:');
    expect(text).toMatch(/c-strip\.load: \*\*41\.7 A\*\*/);
  });

  test('on what is not known says why, each reason once', async () => {
    const other = await client.open('idle.house', SMALL.replace('load range like range-12kw { on: c-range }', ''));
    const text = await hover('circuit c-range', 0, other);
    expect(text.match(/no load names/g)?.length).toBe(1);
  });

  test('on a name gives the block that it means, also in the built-in library', async () => {
    expect(await hover('on: c-range', 4)).toContain('**circuit c-range**');
    expect(await hover('like range-12kw', 6)).toContain('**load range-12kw**');
  });

  test('on house and stage gives headline results', async () => {
    expect(await hover('house small')).toContain('The house today:');
    const stage = await hover('stage more', 6);
    expect(stage).toContain('After stage more:');
    expect(stage).toContain('heating.design-load');
  });

  test('on a result in an expectation gives its value in each stage', async () => {
    const text = await hover('service.demand');
    expect(text).toContain('- today: ');
    expect(text).toContain('**Worksheet**');
    const spaces = await hover('main.spaces-left', 6);
    expect(spaces).toContain('- today: 22');
    expect(spaces).toContain('- more: 20');
  });

  test('on the place of a finding shows the worksheet behind it', async () => {
    const other = await client.open('broken.house', SMALL.replace('breaker: 40 A', 'breaker: 15 A'));
    const text = await hover('15 A', 1, other);
    expect(text).toMatch(/Behind `circuit\//);
    expect(text).toContain('**Worksheet**');
  });

  test('on a damaged value says that it has none', async () => {
    const other = await client.open('damaged.house', SMALL.replace('area: 80 m2', 'area: 80 m2m'));
    expect(await hover('80 m2m', 1, other)).toContain('No value');
  });

  test('has no markup for a client that shows text as it is', async () => {
    const plain = await Client.start({
      folder: root,
      capabilities: { textDocument: { hover: { contentFormat: ['plaintext'] } } },
    });
    const at = await plain.open('plain.house', SMALL);
    const found = await plain.ask<Hover>('textDocument/hover', at, { position: plain.at(at, 'circuit c-range') });
    expect((found.contents as MarkupContent).kind).toBe('plaintext');
    expect((found.contents as MarkupContent).value).not.toMatch(/\*\*|`/);
    await plain.stop();
  });

  test('on nothing is nothing', async () => {
    const found = await client.ask('textDocument/hover', uri, { position: { line: 9999, character: 9999 } });
    expect(found).toBeNull();
  });

  test('answers anywhere in every sample without a fault', async () => {
    for (const name of [
      'tamarack/tamarack.house',
      'juniper/juniper.house',
      'faults/faults.house',
      'start/start.house',
      'library/assemblies.house',
    ]) {
      const at = await client.open(name);
      const lines = client.text(at).split('\n');
      let answered = 0;
      for (let line = 0; line < lines.length; line += 3) {
        const character = Math.floor(lines[line].length / 2);
        if (await client.ask('textDocument/hover', at, { position: { line, character } })) answered++;
      }
      expect(answered, name).toBeGreaterThan(3);
    }
    expect(client.logged).toEqual([]);
  });
});
