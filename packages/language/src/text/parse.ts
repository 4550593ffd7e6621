/** Parsing single texts without a workspace: for formatting, edits and tests. Nothing is linked. */
import type { LexerResult, ParseResult } from 'langium';
import type { File } from '../generated/ast.ts';
import { type CoreServices, createCoreServices } from '../services/core-module.ts';

let services: CoreServices | undefined;

function parserServices(): CoreServices['language']['parser'] {
  services ??= createCoreServices();
  return services.language.parser;
}

export const parseText = (text: string): ParseResult<File> =>
  parserServices().LangiumParser.parse<File>(text);

export const lexText = (text: string): LexerResult => parserServices().Lexer.tokenize(text);
