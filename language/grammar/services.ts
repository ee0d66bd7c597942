import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  DefaultTokenBuilder,
  DefaultValueConverter,
  EmptyFileSystem,
  type GrammarAST,
  inject,
  type LangiumCoreServices,
  type LangiumParser,
  type Lexer,
  type LexerResult,
  type ValueType,
} from 'langium';
import { HouseGeneratedModule, HouseGeneratedSharedModule } from './generated/module.js';
import { steer } from './recovery.js';
import type { Token, TokenType, TokenTypes } from './tokens.js';

/**
 * The parser alone of what Langium offers: text comes in as tokens that are already mended, a tree goes out. There is no
 * linker, no scope, no document and no editor service, for what a name means depends on vocabulary and stage.
 */
export interface HouseParser {
  readonly types: TokenTypes;
  parse(text: string, tokens: Token[]): ReturnType<LangiumParser['parse']>;
}

export function createParser(): HouseParser {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), HouseGeneratedSharedModule);
  const services: LangiumCoreServices = inject(createDefaultCoreModule({ shared }), HouseGeneratedModule, {
    parser: {
      Lexer: (container: LangiumCoreServices) => new GivenTokens(container),
      ValueConverter: () => new Converter(),
    },
  });
  shared.ServiceRegistry.register(services);
  const lexer = services.parser.Lexer as GivenTokens;
  const parser = services.parser.LangiumParser;
  steer(parser, lexer.definition);
  return {
    types: lexer.definition,
    parse: (text, tokens) => {
      lexer.tokens = tokens;
      return parser.parse(text);
    },
  };
}

/** Hands the parser the tokens it was given: they were cut and mended before. */
class GivenTokens implements Lexer {
  readonly definition: TokenTypes;
  tokens: Token[] = [];

  constructor(services: LangiumCoreServices) {
    const types = new DefaultTokenBuilder().buildTokens(services.Grammar) as TokenType[];
    this.definition = Object.fromEntries(types.map(type => [type.name, type]));
  }

  tokenize(): LexerResult {
    return { tokens: this.tokens, errors: [], hidden: [] };
  }
}

class Converter extends DefaultValueConverter {
  protected override runConverter(
    rule: GrammarAST.AbstractRule,
    input: string,
    cst: Parameters<DefaultValueConverter['convert']>[1],
  ): ValueType {
    if (rule.name === 'STRING') return stringContent(input);
    if (rule.name === 'MINUS') return '-';
    if (rule.name === 'BOUND') return input.replace(/[ \t]+/, ' ');
    return super.runConverter(rule, input, cst);
  }
}

/** What a string says: without its quotation marks, with `\"` and `\\` read as the character behind the backslash. */
function stringContent(image: string): string {
  const end = image.length > 1 && image.endsWith('"') ? image.length - 1 : image.length;
  return image.slice(1, end).replace(/\\(.)/gs, '$1');
}
