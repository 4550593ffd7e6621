/** Matches all lines of a file against the vocabulary, once a parse: what each line is, what each word is. */
import { type DefinitionKind, definitionKind, type Entry, type Takes } from '@tautline/shelter';
import {
  type Atom,
  type Block,
  type Definition,
  type Fact,
  type File,
  isArithmetic,
  isDefinition,
  isLet,
  isName,
  type Name,
} from '../generated/ast.ts';
import { type LineMatch, matchLine, type Sentence } from './match-line.ts';

export type Line = Definition | Fact;

/** What a word in the middle of a line is. */
export type Role =
  | { readonly type: 'literal' }
  | { readonly type: 'clause'; readonly entry: Entry }
  | { readonly type: 'slot'; readonly takes: Takes }
  /** Name of a `let` inside a calculation. */
  | { readonly type: 'value' }
  | { readonly type: 'unknown' };

export interface FileMatch {
  /** Lines whose word is known. */
  readonly lines: ReadonlyMap<Line, LineMatch>;
  readonly roles: ReadonlyMap<Name, Role>;
  /** Facts that may be said in a block; none for blocks of unknown lines. */
  readonly blocks: ReadonlyMap<Block, { readonly entry: Entry; readonly facts: readonly Entry[] }>;
}

const cache = new WeakMap<File, FileMatch>();

export function matchOf(file: File): FileMatch {
  let match = cache.get(file);
  if (!match) {
    match = matchFile(file);
    cache.set(file, match);
  }
  return match;
}

export const isReferenceRole = (role: Role | undefined): boolean =>
  role?.type === 'value' ||
  (role?.type === 'slot' && (role.takes.type === 'item' || role.takes.type === 'definition'));

/** The kind of thing a definition defines, or undefined when its word is unknown. */
export const kindOfDefinition = (definition: Definition): DefinitionKind | undefined =>
  definitionKind(definition.kind);

function matchFile(file: File): FileMatch {
  const lines = new Map<Line, LineMatch>();
  const roles = new Map<Name, Role>();
  const blocks = new Map<Block, { entry: Entry; facts: readonly Entry[] }>();

  const line = (node: Line, entry: Entry | undefined): void => {
    if (!entry) {
      for (const atom of node.atoms) namesIn(atom, (name) => roles.set(name, { type: 'unknown' }));
    } else {
      const match = matchLine(entry, node.atoms);
      lines.set(node, match);
      if (node.block) blocks.set(node.block, { entry, facts: entry.facts ?? [] });
      setRoles(match.sentence, node, roles);
      for (const atom of node.atoms) {
        namesIn(atom, (name) => {
          if (!roles.has(name)) roles.set(name, { type: 'unknown' });
        });
      }
    }
    for (const fact of node.block?.facts ?? []) {
      line(
        fact,
        entry?.facts?.find((candidate) => candidate.word === fact.word),
      );
    }
  };

  for (const statement of file.statements) {
    if (isDefinition(statement)) line(statement, kindOfDefinition(statement));
    else if (isLet(statement) && statement.value)
      namesIn(statement.value, (name) => roles.set(name, { type: 'value' }));
  }
  return { lines, roles, blocks };
}

export function namesIn(atom: Atom | undefined, visit: (name: Name) => void): void {
  if (isName(atom)) visit(atom);
  else if (isArithmetic(atom)) {
    namesIn(atom.left, visit);
    namesIn(atom.right, visit);
  }
}

function setRoles(sentence: Sentence, line: Line, roles: Map<Name, Role>): void {
  const set = (at: number, role: Role): void => {
    const atom = line.atoms[at];
    if (isName(atom)) roles.set(atom, role);
  };
  if (sentence.from >= 0) set(sentence.from, { type: 'clause', entry: sentence.entry });
  for (const at of sentence.literals) set(at, { type: 'literal' });
  for (const { takes, atom } of sentence.slots) {
    if (takes.type === 'quantity') namesIn(atom, (name) => roles.set(name, { type: 'value' }));
    else if (isName(atom)) roles.set(atom, { type: 'slot', takes });
  }
  for (const clause of sentence.clauses) setRoles(clause, line, roles);
}
