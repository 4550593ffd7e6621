/** Problems of the text itself: what lexer and parser could not read. */
import { AstUtils, type ParseResult } from 'langium';
import { type File, isText } from '../generated/ast.ts';
import type { ShelterLexingReport } from '../text/lexer.ts';
import { closed } from '../text/literals.ts';
import { onLaterLine } from '../text/parser-messages.ts';
import type { LanguageProblem } from './problem.ts';

const reportOf = (result: ParseResult): ShelterLexingReport | undefined =>
  result.lexerReport as ShelterLexingReport | undefined;

/** Set when the text was not parsed at all; then this is its only problem. */
export function unreadable(result: ParseResult): LanguageProblem | undefined {
  const problem = reportOf(result)?.problems.find(({ id }) => id === 'unreadable');
  return problem && { ...problem, severity: 'error' };
}

export function textProblems(result: ParseResult<File>, text: string): readonly LanguageProblem[] {
  const problems: LanguageProblem[] = [];
  for (const problem of reportOf(result)?.problems ?? []) problems.push({ ...problem, severity: 'error' });
  for (const error of result.parserErrors) problems.push(parserProblem(error, text));
  const last = result.value.$cstNode?.root.content.at(-1);
  if (last?.hidden && last.text.startsWith('/*') && (last.length < 4 || !last.text.endsWith('*/'))) {
    problems.push({
      id: 'unclosed-comment',
      severity: 'error',
      message: 'This comment is not closed: `*/` is missing.',
      start: last.offset,
      end: last.offset + 2,
    });
  }
  for (const node of AstUtils.streamAllContents(result.value)) {
    if (isText(node) && node.text !== undefined && !closed(node.text)) problems.push(openText(node.$cstNode));
  }
  return problems;
}

function openText(cst: { readonly offset: number; readonly end: number } | undefined): LanguageProblem {
  const start = cst?.offset ?? 0;
  const end = cst?.end ?? 0;
  return {
    id: 'unclosed-text',
    severity: 'error',
    message: 'The closing `"` of this text is missing.',
    start,
    end,
    remedies: [{ title: 'Add the closing quote', changes: [{ start: end, end, newText: '"' }] }],
  };
}

type ParserError = ParseResult['parserErrors'][number];

function parserProblem(error: ParserError, text: string): LanguageProblem {
  const previous = (error as { previousToken?: ParserError['token'] }).previousToken;
  const placed = (token: ParserError['token'] | undefined): token is ParserError['token'] =>
    token !== undefined && !Number.isNaN(token.startOffset);
  const at = placed(previous) && onLaterLine(error.token, previous) ? previous : error.token;
  const known = placed(at) ? at : placed(previous) ? previous : undefined;
  const start = known?.startOffset ?? text.length;
  const end = start + (known?.image.length ?? 0);
  return {
    id: 'syntax',
    severity: 'error',
    message: error.message,
    start: Math.min(start, text.length),
    end: Math.min(Math.max(end, start), text.length),
  };
}
