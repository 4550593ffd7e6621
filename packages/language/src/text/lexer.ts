/**
 * The lexer, with two duties beyond cutting a text into tokens: it refuses what is no spec at all (binary
 * content, files too large or nested too deep), and it balances the braces, so that a brace forgotten
 * in one definition is reported there and does not swallow the definitions after it.
 */
import { DefaultLexer, type LangiumCoreServices, type LexerResult, type LexingReport } from 'langium';
import type { Token, TokenType } from './tokens.ts';

/** Largest text that is read, in characters; the longest real specs are a few kilobytes. */
export const LARGEST_TEXT = 2 * 1024 * 1024;
const BINARY = 'This is not a plain text file. It was not read.';
/** Control and replacement characters a damaged text may still have. */
const MOST_ODD_CHARACTERS = 8;
const DEEPEST = 40;
const LONGEST_LINE = 400;

export interface LexicalProblem {
  readonly id: 'unreadable' | 'unclosed' | 'stray-brace' | 'character';
  readonly message: string;
  readonly start: number;
  readonly end: number;
}

export interface ShelterLexingReport extends LexingReport {
  readonly problems: readonly LexicalProblem[];
}

/** Why a text is not read at all, or undefined. */
export function refusal(text: string): string | undefined {
  if (text.length > LARGEST_TEXT) {
    const size = (text.length / 1024 / 1024).toFixed(1);
    return `This file holds ${size} MB of text, more than the 2 MB a spec may have. It was not read.`;
  }
  let odd = 0;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 0) return BINARY;
    if (code < 9 || (code > 13 && code < 32) || code === 0xfffd) odd += 1;
  }
  return odd > MOST_ODD_CHARACTERS ? BINARY : undefined;
}

export class ShelterLexer extends DefaultLexer {
  private readonly definitionWords: () => ReadonlySet<string>;

  constructor(services: LangiumCoreServices, definitionWords: () => ReadonlySet<string>) {
    super(services);
    this.definitionWords = definitionWords;
  }

  override tokenize(text: string): LexerResult {
    const refused = refusal(text);
    if (refused) return unread(refused, text);
    const result = super.tokenize(text);
    if (tooDeep(result.tokens)) {
      return unread('This file nests or chains deeper than any spec needs. It was not read.', text);
    }
    const problems: LexicalProblem[] = [];
    const tokens = balance(result.tokens, this.tokenTypes['}'], this.definitionWords(), problems);
    for (const error of result.errors) {
      problems.push({
        id: 'character',
        message: `\`${text.slice(error.offset, error.offset + Math.min(error.length, 20))}\` has no meaning here.`,
        start: error.offset,
        end: error.offset + error.length,
      });
    }
    return { ...result, tokens, report: report(problems) };
  }
}

const report = (problems: readonly LexicalProblem[]): ShelterLexingReport => ({ diagnostics: [], problems });

function unread(message: string, text: string): LexerResult {
  const end = Math.min(text.length, Math.max(text.slice(0, 200).search(/[\r\n]|$/), 1));
  return {
    tokens: [],
    hidden: [],
    errors: [],
    report: report([{ id: 'unreadable', message, start: 0, end }]),
  };
}

/** Nesting or chains that would exhaust the stack of a parser that descends by calling itself. */
function tooDeep(tokens: readonly Token[]): boolean {
  let depth = 0;
  let chain = 0;
  for (const { image, tokenType } of tokens) {
    if (image === '{' || image === '(') depth += 1;
    if (image === '}' || image === ')') depth = Math.max(0, depth - 1);
    chain = tokenType.name === 'LINE_WORD' ? 0 : chain + 1;
    if (depth > DEEPEST || chain > LONGEST_LINE) return true;
  }
  return false;
}

function virtualBrace(tokenType: TokenType): Token {
  const nowhere = { startOffset: Number.NaN, endOffset: Number.NaN, startLine: Number.NaN };
  return {
    image: '}',
    tokenType,
    tokenTypeIdx: tokenType.tokenTypeIdx as number,
    isInsertedInRecovery: true,
    ...nowhere,
  };
}

/**
 * Drops braces that close nothing and closes blocks left open: before a definition that starts in the
 * first column of a later line, else at the end. A balanced text comes back unchanged.
 */
function balance(
  tokens: readonly Token[],
  brace: TokenType | undefined,
  definitionWords: ReadonlySet<string>,
  problems: LexicalProblem[],
): Token[] {
  if (!brace) return [...tokens];
  let surplus = 0;
  for (const { image } of tokens) surplus += image === '{' ? 1 : image === '}' ? -1 : 0;
  const result: Token[] = [];
  const open: Token[] = [];
  const close = (): void => {
    const opened = open.pop() as Token;
    problems.push({
      id: 'unclosed',
      message: 'This block is not closed: a `}` is missing.',
      start: opened.startOffset,
      end: opened.startOffset + 1,
    });
    result.push(virtualBrace(brace));
  };
  for (const token of tokens) {
    const starts =
      surplus > 0 &&
      token.startColumn === 1 &&
      token.tokenType.name === 'LINE_WORD' &&
      definitionWords.has(token.image);
    while (starts && open.length > 0) close();
    if (token.image === '{' && token.tokenType.name === '{') open.push(token);
    if (token.image === '}' && token.tokenType.name === '}') {
      if (open.length === 0) {
        problems.push({
          id: 'stray-brace',
          message: 'This `}` closes nothing.',
          start: token.startOffset,
          end: token.startOffset + 1,
        });
        continue;
      }
      open.pop();
    }
    result.push(token);
  }
  while (open.length > 0) close();
  return result;
}
