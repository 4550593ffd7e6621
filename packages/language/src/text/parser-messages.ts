/** What the parser says when a line cannot be read, in words for whoever wrote the line. */
import { AbstractParserErrorMessageProvider } from 'langium';
import type { Token } from './tokens.ts';

/** Whether a token stands on a later line than the one before it; then that line ended too early. */
export const onLaterLine = (token: Token | undefined, previous: Token | undefined): boolean =>
  previous?.endLine !== undefined &&
  !Number.isNaN(previous.endLine) &&
  (token?.startLine === undefined || !(token.startLine <= previous.endLine));

const shown = (token: Token | undefined, previous?: Token): string => {
  const image = token?.image ?? '';
  if (onLaterLine(token, previous)) return 'the end of the line';
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
  return `Expected a value${after}, found ${shown(actual, previous)}.`;
}

export class GrowersMessages extends AbstractParserErrorMessageProvider {
  override buildMismatchTokenMessage(options: {
    expected: TokenTypeName;
    actual: Token;
    previous: Token;
    ruleName: string;
  }): string {
    if (options.expected.name === 'EOF') {
      return this.buildNotAllInputParsedMessage({
        firstRedundant: options.actual,
        ruleName: options.ruleName,
      });
    }
    const want = wanted[options.expected.name] ?? `\`${options.expected.name}\``;
    return `Expected ${want}, found ${shown(options.actual, options.previous)}.`;
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
