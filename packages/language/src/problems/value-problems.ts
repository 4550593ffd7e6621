/** Problems of values: units, dimensions, names that lead nowhere or to the wrong kind of thing. */
import { isKind, kinds, NONE, sameDimension } from '@tautline/quantity';
import type { Takes } from '@tautline/shelter';
import {
  type Atom,
  type Expression,
  type File,
  isDay,
  isDefinition,
  isExpression,
  isLet,
  isName,
  isQuantity,
  type Name,
} from '../generated/ast.ts';
import type { FileMatch, Line } from '../match/match-file.ts';
import type { Sentence } from '../match/match-line.ts';
import { evaluate, fitKind } from '../spec/expression.ts';
import { isDay as isCalendarDay } from '../text/literals.ts';
import { didYouMean, type LanguageProblem, nearest, type Remedy, replacements } from './problem.ts';
import { takesInWords, withArticle } from './wording.ts';

export interface Seen {
  readonly name: string;
  /** Word of the definition, e.g. `pipe`; `let` for a constant. */
  readonly kind: string;
}

export interface ValueContext {
  /** Everything a reference in the file can lead to. */
  readonly seen: () => readonly Seen[];
  /** Ids of all checks; nothing is said of check ids without them. */
  readonly checks?: ReadonlySet<string> | undefined;
  readonly settled: ReadonlySet<Atom>;
}

export function valueProblems(
  file: File,
  match: FileMatch,
  context: ValueContext,
): readonly LanguageProblem[] {
  const problems: LanguageProblem[] = [];
  const push = (problem: LanguageProblem | undefined): void => {
    if (problem) problems.push(problem);
  };
  const sentence = (one: Sentence): void => {
    for (const { takes, atom } of one.slots) push(slotProblem(atom, takes, context));
    one.clauses.forEach(sentence);
  };
  for (const statement of file.statements) {
    if (isLet(statement) && statement.value) push(expressionProblem(statement.value, context));
    if (isLet(statement) && statement.value) push(circularLet(statement.value, statement));
  }
  const line = (node: Line): void => {
    const found = match.lines.get(node);
    if (found) sentence(found.sentence);
    for (const fact of node.block?.facts ?? []) line(fact);
  };
  for (const statement of file.statements) if (isDefinition(statement)) line(statement);
  return problems;
}

function circularLet(
  value: Expression,
  owner: Parameters<typeof evaluate>[1] extends readonly (infer L)[] | undefined ? L : never,
) {
  const result = evaluate(value, [owner]);
  return !result.ok && result.id === 'circular' ? toProblem(result) : undefined;
}

type Failure = Extract<ReturnType<typeof evaluate>, { ok: false }>;

function toProblem(failure: Failure): LanguageProblem {
  return {
    id: failure.id,
    severity: 'error',
    message: failure.message,
    start: failure.start,
    end: failure.end,
    remedies: replacements(failure.suggestions, failure.start, failure.end),
  };
}

function expressionProblem(value: Expression, context: ValueContext): LanguageProblem | undefined {
  const result = evaluate(value);
  if (result.ok || result.id === 'circular' || result.id === 'incomplete') return undefined;
  if (result.id !== 'unknown-name') return toProblem(result);
  const name = /`([^`]*)`/.exec(result.message)?.[1] ?? '';
  const constants = context.seen().filter(({ kind }) => kind === 'let');
  const meant = nearest(
    name,
    constants.map((one) => one.name),
  );
  return toProblem({ ...result, message: `${result.message}${didYouMean(meant)}`, suggestions: meant });
}

function slotProblem(atom: Atom, takes: Takes, context: ValueContext): LanguageProblem | undefined {
  switch (takes.type) {
    case 'quantity':
      return isExpression(atom) ? quantityProblem(atom, takes.kind, context) : undefined;
    case 'word':
      return isName(atom) ? wordProblem(atom, takes) : undefined;
    case 'item':
    case 'definition':
      return isName(atom) ? referenceProblem(atom, takes, context) : undefined;
    case 'check':
      return isName(atom) ? checkProblem(atom, context) : undefined;
    case 'date':
      return isDay(atom) && !isCalendarDay(atom.date)
        ? {
            id: 'bad-date',
            severity: 'error',
            message: `\`${atom.date}\` is not a day of the calendar.`,
            ...spanOf(atom),
          }
        : undefined;
    default:
      return undefined;
  }
}

const spanOf = (atom: Atom): { start: number; end: number } => ({
  start: atom.$cstNode?.offset ?? 0,
  end: atom.$cstNode?.end ?? 0,
});

function quantityProblem(
  atom: Expression,
  kindName: string,
  context: ValueContext,
): LanguageProblem | undefined {
  const result = evaluate(atom);
  if (!result.ok) return result.id === 'circular' ? toProblem(result) : expressionProblem(atom, context);
  if (!isKind(kindName)) return undefined;
  const fitted = fitKind(atom, result.value, kindName);
  if (fitted.ok || context.settled.has(atom)) return undefined;
  const span = spanOf(atom);
  const kind = kinds[kindName];
  const bare = sameDimension(result.value.dimension, NONE) && !sameDimension(kind.dimension, NONE);
  if (!bare) {
    const message = `${fitted.reason.charAt(0).toUpperCase()}${fitted.reason.slice(1)}.`;
    return { id: 'wrong-dimension', severity: 'error', message, ...span };
  }
  const text = atom.$cstNode?.text ?? '';
  const units = unitsOf(kindName);
  const remedies: Remedy[] = units.map((unit) => ({
    title: `Write \`${text} ${unit}\``,
    changes: [{ start: span.end, end: span.end, newText: ` ${unit}` }],
  }));
  return {
    id: 'needs-unit',
    severity: 'error',
    message: `\`${text}\` needs a unit: ${kind.noun}, e.g. \`${isQuantity(atom) ? text : '0.6'} ${units[0] ?? ''}\`.`,
    ...span,
    ...(isQuantity(atom) ? { remedies } : {}),
  };
}

/** Units a kind is written in, the everyday ones first: `m`, `mm`, `ft`, `in`. */
export function unitsOf(kindName: string): readonly string[] {
  if (!isKind(kindName)) return [];
  const { metric, us } = kinds[kindName];
  // Past a thousand SI units only maps and ships are measured in the unit.
  const handy = [metric, us].flatMap((rungs) => rungs.filter(({ from }) => from < 1000).reverse());
  return [...new Set((handy.length > 0 ? handy : metric).map(({ unit }) => unit))].filter(
    (unit) => unit !== '',
  );
}

function wordProblem(atom: Name, takes: Extract<Takes, { type: 'word' }>): LanguageProblem | undefined {
  const word = atom.ref?.$refText ?? '';
  if (takes.words.length === 0 || takes.words.includes(word)) return undefined;
  const meant = nearest(word, takes.words);
  const span = spanOf(atom);
  const all = meant.length > 0 ? didYouMean(meant) : ` It takes ${takesInWords(takes)}.`;
  return {
    id: 'unknown-word',
    severity: 'error',
    message: `\`${word}\` is not known here.${all}`,
    ...span,
    remedies: replacements(meant.length > 0 ? meant : takes.words.slice(0, 6), span.start, span.end),
  };
}

type ReferenceTakes = Extract<Takes, { type: 'item' | 'definition' }>;

const wantedKinds = (takes: ReferenceTakes): readonly string[] =>
  takes.type === 'item' ? takes.kinds : takes.of === 'shelter' ? ['shelter', 'variant'] : [takes.of];

function referenceProblem(
  atom: Name,
  takes: ReferenceTakes,
  context: ValueContext,
): LanguageProblem | undefined {
  const name = atom.ref?.$refText ?? '';
  const target = atom.ref?.ref;
  const wanted = wantedKinds(takes);
  const found = target && (isLet(target) ? 'let' : target.kind);
  if (found !== undefined && wanted.includes(found)) return undefined;
  const span = spanOf(atom);
  const fitting = context.seen().filter(({ kind }) => wanted.includes(kind));
  const meant = nearest(
    name,
    fitting.map((one) => one.name),
  );
  const noun = takesInWords(takes).replace(/^the name of /, '');
  const what =
    found === undefined
      ? `There is no ${noun.replace(/^an? /, '')} called \`${name}\`.`
      : `\`${name}\` is ${found === 'let' ? 'a constant' : withArticle(found)}; ${noun} belongs here.`;
  return {
    id: found === undefined ? 'unknown-name' : 'wrong-kind',
    severity: 'error',
    message: `${what}${meant.length > 0 ? didYouMean(meant) : knownOnes(fitting.map((one) => one.name))}`,
    ...span,
    remedies: replacements(meant, span.start, span.end),
  };
}

/** What there is of a kind, when nothing written comes near. */
function knownOnes(names: readonly string[]): string {
  if (names.length === 0) return '';
  const shown = names.slice(0, mostKnown).map((name) => `\`${name}\``);
  const rest = names.length - shown.length;
  return ` There is ${shown.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}.`;
}

/** More names than this are a list to read in the catalogue. */
const mostKnown = 6;

function checkProblem(atom: Name, { checks }: ValueContext): LanguageProblem | undefined {
  const id = atom.ref?.$refText ?? '';
  if (!checks || checks.has(id)) return undefined;
  const meant = nearest(id, checks);
  const span = spanOf(atom);
  return {
    id: 'unknown-check',
    severity: 'error',
    message: `There is no check called \`${id}\`.${didYouMean(meant)}`,
    ...span,
    remedies: replacements(meant, span.start, span.end),
  };
}
