import { type CstNode, type LangiumParser, LeafCstNodeImpl, type RootCstNode, CstUtils } from 'langium';
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
  getFollowsForInRuleRecovery: () => TokenType[];
  raiseNoAltException: () => never;
  SAVE_ERROR: (error: Error) => Error;
  tryInRuleRecovery: (expected: TokenType, follows: TokenType[]) => Token;
  findReSyncTokenType: () => TokenType;
}

interface Internals {
  wrapper: Recovering;
  nodeBuilder: {
    addHiddenNodes: () => void;
    buildLeafNode: (token: Token, feature?: unknown) => CstNode;
    current: { content: CstNode[] };
    rootNode: RootCstNode;
  };
}

/** A leaf of the concrete tree that finds its lines and columns when asked: this room asks for offsets alone. */
class Leaf extends LeafCstNodeImpl {
  constructor(private readonly token: Token) {
    super(token.startOffset, token.image.length, NO_RANGE, token.tokenType);
  }

  override get range() {
    return CstUtils.tokenToRange(this.token);
  }
}
const NO_RANGE = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/**
 * Makes every error end with its own statement. The passes before have marked that end, so the parser needs no guess: it
 * skips to the mark. The usual guesses (put a token in, leave one out, try the repetition again) may eat a neighbour, and the
 * last one runs out of stack after a few thousand errors in one block.
 */
export function steer(parser: LangiumParser, types: TokenTypes): void {
  const { wrapper, nodeBuilder } = parser as unknown as Internals;
  // Comments are kept beside the tree. Looking for their place in it, even for none, costs time that grows with the square of the file.
  nodeBuilder.addHiddenNodes = () => {};
  nodeBuilder.buildLeafNode = (token, feature) => {
    const leaf = Object.assign(new Leaf(token), { grammarSource: feature, root: nodeBuilder.rootNode });
    nodeBuilder.current.content.push(leaf);
    return leaf;
  };
  const end = types['END'];
  const isEnd = (token: Token) => token.tokenType === end;
  wrapper.attemptInRepetitionRecovery = () => {};
  wrapper.getFollowsForInRuleRecovery = () => [];
  wrapper.raiseNoAltException = () => {
    const [token, previousToken] = [wrapper.LA(1), wrapper.LA(0)];
    const error = new Error('No alternative fits.');
    throw wrapper.SAVE_ERROR(
      Object.assign(error, { name: 'NoViableAltException', token, previousToken, resyncedTokens: [] }),
    );
  };
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
