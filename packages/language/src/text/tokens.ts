/**
 * The tokens. The one thing that is not an everyday lexer: the first word of a line is a token of its
 * own (LINE_WORD), which is what a half-typed line is resynchronised on, and why no word is reserved
 * in the middle of a line.
 */
import { DefaultTokenBuilder, type GrammarAST, type LexerResult } from 'langium';
import { scanQuantity } from './quantity-text.ts';

export type Token = LexerResult['tokens'][number];
export type TokenType = Token['tokenType'];
type Matcher = (text: string, offset: number, before: Token[]) => Match;

const WORD = /[\p{L}_][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*/uy;
const SPACE = /\s+/uy;
const DATE = /\d{4}-\d{2}-\d{2}(?![\d-])/uy;
const LINE_COMMENT = /\/\/[^\n\r]*/uy;
/** An unclosed comment runs to the end of the file, an unclosed text to the end of its line. */
const BLOCK_COMMENT = /\/\*[\s\S]*?(?:\*\/|$(?![\s\S]))/uy;
const STRING = /"(?:\\[^\n\r]|[^"\\\n\r])*"?/uy;
const COMPARISON = />=|<=|>|</uy;

type Match = [string] | null;

function sticky(pattern: RegExp, text: string, offset: number): Match {
  pattern.lastIndex = offset;
  const found = pattern.exec(text);
  return found ? [found[0]] : null;
}

/** Whether a token at `offset` is the first of its line, or follows a brace or semicolon. */
function startsLine(text: string, offset: number, before: readonly Token[]): boolean {
  const last = before.at(-1);
  if (!last) return true;
  if (last.image === '{' || last.image === '}' || last.image === ';') return true;
  const end = last.startOffset + last.image.length;
  for (let i = end; i < offset; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 10 || code === 13) return true;
  }
  return false;
}

function lineWord(text: string, offset: number, before: readonly Token[]): Match {
  const word = sticky(WORD, text, offset);
  return word && startsLine(text, offset, before) ? word : null;
}

/** A minus sign directly before a digit belongs to the number; a subtraction has a space on both sides. */
function quantity(text: string, offset: number): Match {
  const scanned = scanQuantity(text, offset);
  return scanned ? [text.slice(offset, scanned.end)] : null;
}

const patterns: Record<string, Matcher> = {
  WS: (text, offset) => sticky(SPACE, text, offset),
  LINE_COMMENT: (text, offset) => sticky(LINE_COMMENT, text, offset),
  BLOCK_COMMENT: (text, offset) => sticky(BLOCK_COMMENT, text, offset),
  DATE: (text, offset) => sticky(DATE, text, offset),
  QUANTITY: quantity,
  LINE_WORD: lineWord,
  ID: (text, offset) => sticky(WORD, text, offset),
  STRING: (text, offset) => sticky(STRING, text, offset),
  COMPARISON: (text, offset) => sticky(COMPARISON, text, offset),
};

const order = [
  'WS',
  'LINE_COMMENT',
  'BLOCK_COMMENT',
  'DATE',
  'QUANTITY',
  'import',
  'let',
  'LINE_WORD',
  'ID',
  'STRING',
  'COMPARISON',
];

const rank = (token: TokenType): number => {
  const index = order.indexOf(token.name);
  return index < 0 ? order.length : index;
};

/** `import` and `let` are words of the grammar only where a line starts with exactly them. */
function keywordPattern(keyword: string): Matcher {
  return (text, offset, before) => {
    const word = lineWord(text, offset, before);
    return word?.[0] === keyword ? word : null;
  };
}

export class ShelterTokenBuilder extends DefaultTokenBuilder {
  override buildTokens(grammar: GrammarAST.Grammar): TokenType[] {
    const tokens = super.buildTokens(grammar) as TokenType[];
    return tokens.sort((a, b) => rank(a) - rank(b));
  }

  protected override buildTerminalToken(terminal: GrammarAST.TerminalRule): TokenType {
    const token = super.buildTerminalToken(terminal);
    const pattern = patterns[terminal.name];
    if (!pattern) throw new Error(`terminal ${terminal.name} has no pattern in tokens.ts`);
    token.PATTERN = pattern;
    token.LINE_BREAKS = true;
    return token;
  }

  protected override buildKeywordToken(keyword: GrammarAST.Keyword): TokenType {
    const word = /^\w+$/.test(keyword.value);
    return word
      ? { name: keyword.value, PATTERN: keywordPattern(keyword.value), LINE_BREAKS: true }
      : { name: keyword.value, PATTERN: keyword.value };
  }
}

/** Whether a text can be the name of a definition. */
export function isWord(text: string): boolean {
  return sticky(WORD, text, 0)?.[0] === text;
}
