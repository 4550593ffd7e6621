/** What the parser says when a line cannot be read, in words for whoever wrote the line. */
import { AbstractParserErrorMessageProvider } from 'langium';
import type { Token } from './tokens.ts';

const shown = (token: Token | undefined): string => {
  const image = token?.image ?? '';
  if (image === '') return 'the end of the file';
  return `\`${image.length > 30 ? `${image.slice(0, 30)}...` : image}\``;
};

const wanted: Readonly<Record<string, string>> = {
  ID: 'a name',
  STRING: 'a text in double quotes',
  QUANTITY: 'a quantity such as `1.2 m`',
  LINE_WORD: 'a word',
  '=': '`=` and a value',
  '}': '`}`',
  ')': '`)`',
};

function calculation(actual: Token | undefined, previous: Token | undefined): string {
  const after = previous && /^[-+*/(=]$/.test(previous.image) ? ` after \`${previous.image}\`` : '';
  return `Expected a value${after}, found ${shown(actual)}.`;
}

export class GrowersMessages extends AbstractParserErrorMessageProvider {
  override buildMismatchTokenMessage(options: {
    expected: TokenTypeName;
    actual: Token;
    previous: Token;
    ruleName: string;
  }): string {
    const want = wanted[options.expected.name] ?? `\`${options.expected.name}\``;
    return `Expected ${want}, found ${shown(options.actual)}.`;
  }

  override buildNotAllInputParsedMessage(options: { firstRedundant: Token; ruleName: string }): string {
    return `A line starts with a word that says what it is about; ${shown(options.firstRedundant)} does not.`;
  }

  override buildNoViableAltMessage(options: { actual: Token[]; previous: Token }): string {
    return calculation(options.actual[0], options.previous);
  }

  override buildEarlyExitMessage(options: { actual: Token[]; previous: Token }): string {
    return calculation(options.actual[0], options.previous);
  }
}

type TokenTypeName = Token['tokenType'];
