import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Lines } from '../../server/lsp/lines.js';

const text = fc.string({ unit: fc.constantFrom('a', '°', '𝛥', '\n', '\r', '\r\n', '\t', '\u2028'), maxLength: 60 });

describe('places of a text', () => {
  // The document of the protocol's own library is the outside source.
  test('are those of the protocol, for every offset', () => {
    fc.assert(
      fc.property(text, text => {
        const document = TextDocument.create('a:b', 'house', 1, text);
        const lines = new Lines(text);
        for (let offset = 0; offset <= text.length; offset++) {
          // Between the two characters of a line end there is no place.
          if (text[offset - 1] === '\r' && text[offset] === '\n') continue;
          expect(lines.position(offset)).toEqual(document.positionAt(offset));
          expect(lines.offset(lines.position(offset))).toBe(offset);
        }
      }),
    );
  });

  test('beyond a line or the text are its end', () => {
    fc.assert(
      fc.property(text, fc.nat(20), fc.nat(200), (text, line, character) => {
        const document = TextDocument.create('a:b', 'house', 1, text);
        expect(new Lines(text).offset({ line, character })).toBe(document.offsetAt({ line, character }));
      }),
    );
  });
});
