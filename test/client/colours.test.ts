import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { globSync } from 'tinyglobby';
import { beforeAll, describe, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import type { IGrammar, IToken } from 'vscode-textmate';
import { parse } from '../../language/grammar/index.js';

/** What hosts without the server colour each kind of token as; kinds that are left out have no colour of their own. */
const COLOURS: Record<string, string> = {
  COMMENT: 'comment.',
  DATE: 'constant.numeric.date.',
  HEAD: 'storage.type.',
  KEY: 'support.type.property-name.',
  NUMBER: 'constant.numeric.',
  STRING: 'string.quoted.',
  TIME: 'constant.numeric.time.',
  UNIT: 'keyword.other.unit.',
};

const houses = globSync(['samples/**/*.house', 'language/library/*.house', 'test/grammar/fixtures/*.house']);

let grammar: IGrammar;
beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await oniguruma.loadWASM(readFileSync(wasm).buffer);
  const path = 'client/syntaxes/house.tmLanguage.json';
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: sources => new oniguruma.OnigScanner(sources),
      createOnigString: text => new oniguruma.OnigString(text),
    }),
    loadGrammar: () => Promise.resolve(textmate.parseRawGrammar(readFileSync(path, 'utf8'), path)),
  });
  const loaded = await registry.loadGrammar('source.house');
  if (!loaded) throw new Error('no grammar');
  grammar = loaded;
});

describe('the colours say what the parser reads', () => {
  test.each(houses)('in %s', file => {
    const text = readFileSync(file, 'utf8');
    const { tokens, comments } = parse(text);
    const scopes = scopesOf(text);
    const wrong = [...tokens, ...comments].flatMap(({ tokenType, image, startLine, startColumn }) => {
      const colour = COLOURS[tokenType.name];
      const found =
        scopes[(startLine ?? 0) - 1]?.findLast(({ startIndex }) => startIndex < (startColumn ?? 0))?.scopes ?? [];
      if (!colour || found.some(scope => scope.startsWith(colour))) return [];
      return [`${startLine}:${startColumn} ${image} is ${found.join(' ')}, not ${colour}`];
    });
    expect(wrong).toEqual([]);
  });

  test('there are houses to compare', () => expect(houses.length).toBeGreaterThan(5));
});

/** Tokens of each line, as a host without the server sees them. */
function scopesOf(text: string): IToken[][] {
  let state = textmate.INITIAL;
  return text.split(/\r\n|\n|\r/).map(line => {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    return result.tokens;
  });
}
