import type { LangiumParser } from 'langium';
import type { Token, TokenType, TokenTypes } from './tokens.js';

/**
 * The part of the generated parser that decides how to go on after an error. These are internals of the parser library: this
 * file is the only one that knows them, and recovery.test.ts fails when they change.
 */
interface Recovering {
  LA(distance: number): Token;
  SKIP_TOKEN(): Token;
  consumeToken(): void;
  currIdx: number;
  input: Token[];
  attemptInRepetitionRecovery: () => void;
  tryInRuleRecovery: (expected: TokenType, follows: TokenType[]) => Token;
  findReSyncTokenType: () => TokenType;
}

/**
 * Makes every error end with its own statement. The passes before have marked that end, so the parser needs no guess: it
 * skips to the mark. The usual guesses (put a token in, leave one out, try the repetition again) may eat a neighbour, and the
 * last one runs out of stack after a few thousand errors in one block.
 */
export function steer(parser: LangiumParser, types: TokenTypes): void {
  const wrapper = (parser as unknown as { wrapper: Recovering }).wrapper;
  const end = types['END']!;
  const isEnd = (token: Token) => token.tokenType === end;
  wrapper.attemptInRepetitionRecovery = () => {};
  wrapper.tryInRuleRecovery = expected => {
    if (expected !== end) throw Object.assign(new Error('The rule is left.'), { name: 'InRuleRecoveryException' });
    while (!isEnd(wrapper.LA(1)) && !isEndOfInput(wrapper.LA(1))) wrapper.SKIP_TOKEN();
    const found = wrapper.LA(1);
    wrapper.consumeToken();
    return found;
  };
  wrapper.findReSyncTokenType = () => {
    for (let k = 1; ; k++) {
      const token = wrapper.LA(k);
      if (isEnd(token) || isEndOfInput(token)) return token.tokenType;
    }
  };
}

const isEndOfInput = (token: Token): boolean => token.tokenType.name === 'EOF';
