/** Problems of the file as a whole: facts said twice or not at all, names, imports, circles. */
import type { Entry } from '@tautline/shelter';
import { appendFacts } from '../edit/place-fact.ts';
import {
  type Definition,
  type File,
  isDefinition,
  isImport,
  isName,
  type Statement,
} from '../generated/ast.ts';
import type { FileMatch, Line } from '../match/match-file.ts';
import { kindOfDefinition } from '../match/match-file.ts';
import type { Sentence } from '../match/match-line.ts';
import type { LanguageProblem } from './problem.ts';

export interface ImportFinding {
  readonly start: number;
  readonly end: number;
  readonly message: string;
}

/** A definition of the same name elsewhere in what the file sees. */
export interface Namesake {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
  readonly where: string;
}

export interface FileContext {
  readonly uri: string;
  readonly imports: readonly ImportFinding[];
  readonly namesake: (name: string) => Namesake | undefined;
}

type Named = Extract<Statement, { name?: string }>;

const nameSpan = (node: Named): { start: number; end: number } => {
  const cst = node.$cstNode;
  if (!cst || node.name === undefined) return { start: cst?.offset ?? 0, end: cst?.end ?? 0 };
  const head = node.$type === 'Let' ? 'let' : node.kind;
  const start = cst.offset + head.length + cst.text.slice(head.length).indexOf(node.name);
  return { start, end: start + node.name.length };
};

export function fileProblems(file: File, match: FileMatch, context: FileContext): readonly LanguageProblem[] {
  const problems: LanguageProblem[] = context.imports.map((finding) => ({
    id: 'import',
    severity: 'error',
    ...finding,
  }));
  problems.push(...nameProblems(file, context));
  for (const statement of file.statements) {
    if (!isDefinition(statement)) continue;
    facts(statement, match, context.uri, problems);
    problems.push(...likeCircle(statement, match));
  }
  return problems;
}

function nameProblems(file: File, context: FileContext): LanguageProblem[] {
  const problems: LanguageProblem[] = [];
  const first = new Map<string, Named>();
  for (const statement of file.statements) {
    if (isImport(statement)) continue;
    const kind = isDefinition(statement) ? kindOfDefinition(statement) : undefined;
    if (kind?.named && statement.name === undefined) {
      const start = statement.$cstNode?.offset ?? 0;
      const message = `This ${kind.word} needs a name, e.g. \`${kind.example.replace(/\{.*/, '').trim()}\`.`;
      problems.push({ id: 'missing-name', severity: 'error', message, start, end: start + kind.word.length });
    }
    if (kind && !kind.named && statement.name !== undefined) {
      const message = `\`${kind.word}\` has no name: start its block with \`{\`.`;
      problems.push({ id: 'unexpected', severity: 'error', message, ...nameSpan(statement) });
    }
    if (statement.name === undefined || (kind && !kind.named)) continue;
    const before = first.get(statement.name);
    const other = before
      ? { uri: context.uri, ...nameSpan(before), where: 'above' }
      : context.namesake(statement.name);
    if (other) {
      problems.push({
        id: 'duplicate-name',
        severity: 'error',
        message: `\`${statement.name}\` is already defined ${other.where}. Give this one another name.`,
        ...nameSpan(statement),
        related: [{ uri: other.uri, start: other.start, end: other.end, message: 'The other one is here.' }],
      });
    }
    if (!before) first.set(statement.name, statement);
  }
  return problems;
}

interface Said {
  readonly entry: Entry;
  readonly start: number;
  readonly end: number;
}

function facts(line: Line, match: FileMatch, uri: string, problems: LanguageProblem[]): void {
  const found = match.lines.get(line);
  if (!found) return;
  const own: Said[] = [];
  clauseFacts(found.sentence, line, own, uri, problems);
  for (const fact of line.block?.facts ?? []) {
    const entry = match.lines.get(fact)?.sentence.entry;
    const start = fact.$cstNode?.offset ?? 0;
    if (entry) own.push({ entry, start, end: start + fact.word.length });
    facts(fact, match, uri, problems);
  }
  duplicates(own, uri, problems);
  const likeAnother = found.sentence.slots.some(({ slot }) => slot === 'like');
  // A line that stopped in the middle may be about to say the rest.
  if (!likeAnother && !found.trouble) missing(found.sentence.entry, own, lineWord(line), problems, line);
}

function lineWord(line: Line): { start: number; end: number } {
  if (isDefinition(line) && line.name !== undefined) return nameSpan(line);
  const start = line.$cstNode?.offset ?? 0;
  return { start, end: start + (isDefinition(line) ? line.kind : line.word).length };
}

/** Clauses of the line count as facts of the line; clauses inside a clause as facts of that clause. */
function clauseFacts(
  sentence: Sentence,
  line: Line,
  said: Said[],
  uri: string,
  problems: LanguageProblem[],
): void {
  for (const clause of sentence.clauses) {
    const cst = line.atoms[clause.from]?.$cstNode;
    const span = { start: cst?.offset ?? 0, end: cst?.end ?? 0 };
    said.push({ entry: clause.entry, ...span });
    const inner: Said[] = [];
    clauseFacts(clause, line, inner, uri, problems);
    duplicates(inner, uri, problems);
    if (clause.complete) missing(clause.entry, inner, span, problems);
  }
}

function duplicates(said: readonly Said[], uri: string, problems: LanguageProblem[]): void {
  const first = new Map<string, Said>();
  for (const one of said) {
    const before = first.get(one.entry.word);
    if (!before) first.set(one.entry.word, one);
    else if (!one.entry.many) {
      problems.push({
        id: 'duplicate-fact',
        severity: 'error',
        message: `\`${one.entry.word}\` is said twice here.`,
        start: one.start,
        end: one.end,
        related: [{ uri, start: before.start, end: before.end, message: 'It is said here first.' }],
      });
    }
  }
}

function missing(
  entry: Entry,
  said: readonly Said[],
  span: { readonly start: number; readonly end: number },
  problems: LanguageProblem[],
  line?: Line,
): void {
  const text = line?.$cstNode?.root.fullText;
  for (const fact of entry.facts ?? []) {
    if (!fact.required || said.some((one) => one.entry.word === fact.word)) continue;
    problems.push({
      id: 'missing-fact',
      severity: 'error',
      message: `\`${entry.word}\` has to say \`${fact.word}\`, e.g. \`${fact.example}\`.`,
      ...span,
      ...(line && text !== undefined
        ? {
            remedies: [
              { title: `Add \`${fact.example}\``, changes: [appendFacts(text, line, [fact.example])] },
            ],
          }
        : {}),
    });
  }
}

function likeCircle(start: Definition, match: FileMatch): LanguageProblem[] {
  const slot = match.lines.get(start)?.sentence.slots.find((use) => use.slot === 'like');
  const target = (definition: Definition): Definition | undefined => {
    for (const atom of definition.atoms) {
      if (!isName(atom) || atom.ref?.$refText === 'like') continue;
      const found = atom.ref?.ref;
      if (isDefinition(found)) return found;
    }
    return undefined;
  };
  const seen = new Set<Definition>();
  for (let at: Definition | undefined = slot && target(start); at; at = target(at)) {
    if (at === start) {
      const cst = slot?.atom.$cstNode;
      return [
        {
          id: 'circular',
          severity: 'error',
          message: `\`${start.name ?? ''}\` is like itself, by way of what it is like.`,
          start: cst?.offset ?? 0,
          end: cst?.end ?? 0,
        },
      ];
    }
    if (seen.has(at) || at.kind !== start.kind) return [];
    seen.add(at);
  }
  return [];
}
