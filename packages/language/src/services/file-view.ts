/** Everything the language knows of one linked document: matches, problems, spec, world. */
import type { SpecDefinition, SpecWorld } from '@tautline/shelter';
import {
  type AstNodeDescription,
  DocumentState,
  type LangiumCoreServices,
  type LangiumDocument,
  type LangiumSharedCoreServices,
} from 'langium';
import { type File, isDefinition } from '../generated/ast.ts';
import { matchOf } from '../match/match-file.ts';
import { fileProblems, type ImportFinding, type Namesake } from '../problems/file-problems.ts';
import { lineProblems } from '../problems/line-problems.ts';
import type { LanguageProblem } from '../problems/problem.ts';
import { textProblems, unreadable } from '../problems/text-problems.ts';
import { type Seen, valueProblems } from '../problems/value-problems.ts';
import { type Reading, readingOf } from '../spec/to-spec.ts';
import { writtenSystem } from '../text/written-system.ts';
import { closureOf, fileOf, importsOf, isCatalogue, type Roots, type ShelterScopes } from './scope.ts';

export interface ViewServices {
  readonly shared: LangiumSharedCoreServices;
  readonly language: LangiumCoreServices;
  readonly roots: Roots;
  /** Ids of all checks, when they are known. */
  readonly checks?: ReadonlySet<string>;
}

const scopesOf = ({ language }: ViewServices): ShelterScopes =>
  language.references.ScopeProvider as ShelterScopes;

/** Names and kinds of everything a document sees. */
export function seenFrom(document: LangiumDocument, services: ViewServices): readonly Seen[] {
  return scopesOf(services)
    .seenFrom(document)
    .map((description) => ({
      name: description.name,
      kind: isDefinition(description.node) ? description.node.kind : 'let',
    }));
}

/** All problems of a linked document, in the order of the text; worked out anew. Never throws. */
export function problemsOf(document: LangiumDocument, services: ViewServices): readonly LanguageProblem[] {
  const refused = unreadable(document.parseResult);
  if (refused) return [refused];
  const file = fileOf(document);
  if (!file) return [];
  const text = document.textDocument.getText();
  const match = matchOf(file);
  const lines = lineProblems(file, match);
  const all = [
    ...textProblems({ ...document.parseResult, value: file }, text),
    ...lines.problems,
    ...valueProblems(file, match, {
      seen: once(() => seenFrom(document, services)),
      checks: services.checks,
      settled: lines.settled,
    }),
    ...fileProblems(file, match, {
      uri: document.uri.toString(),
      imports: importFindings(document, services),
      namesake: namesakes(document, services),
    }),
  ];
  return withoutEchoes(all).sort((a, b) => a.start - b.start || a.end - b.end);
}

/** A line the parser stumbled over is reported once: what the vocabulary then misses is its echo. */
function withoutEchoes(problems: readonly LanguageProblem[]): LanguageProblem[] {
  const syntax = problems.filter(({ id }) => id === 'syntax');
  return problems.filter(
    (problem) =>
      !['incomplete', 'own-line', 'unexpected'].includes(problem.id) ||
      !syntax.some(({ start, end }) => problem.start < end + 1 && start < problem.end + 1),
  );
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function importFindings(
  document: LangiumDocument,
  { shared, roots }: ViewServices,
): readonly ImportFinding[] {
  const documents = shared.workspace.LangiumDocuments;
  return importsOf(document, documents, roots).flatMap((edge) => {
    const cst = edge.node.$cstNode;
    const start = cst ? cst.offset + Math.max(0, cst.text.indexOf('"')) : 0;
    const span = { start, end: cst?.end ?? start };
    if (edge.problem !== undefined) return [{ ...span, message: edge.problem }];
    if (!edge.document) return [];
    const around = closureOf(edge.document, documents, roots).includes(document);
    if (around) return [{ ...span, message: 'These files import each other in a circle.' }];
    const refused = unreadable(edge.document.parseResult);
    return refused ? [{ ...span, message: 'The imported file cannot be read as a spec.' }] : [];
  });
}

/** Finds definitions of the same name in imported files and the catalogue. */
function namesakes(
  document: LangiumDocument,
  { shared, roots }: ViewServices,
): (name: string) => Namesake | undefined {
  const { LangiumDocuments, IndexManager } = shared.workspace;
  const own = document.uri.toString();
  const byName = once(() => {
    const imported = closureOf(document, LangiumDocuments, roots).filter(({ uri }) => uri.toString() !== own);
    const catalogue = isCatalogue(document.uri)
      ? []
      : LangiumDocuments.all.filter(({ uri }) => isCatalogue(uri)).toArray();
    const found = new Map<string, AstNodeDescription>();
    for (const other of [...imported, ...catalogue]) {
      for (const one of IndexManager.allElements('Named', new Set([other.uri.toString()]))) {
        if (!found.has(one.name)) found.set(one.name, one);
      }
    }
    return found;
  });
  return (name) => {
    const other = byName().get(name);
    const segment = other?.nameSegment ?? other?.selectionSegment;
    return (
      other && {
        uri: other.documentUri.toString(),
        start: segment?.offset ?? 0,
        end: segment?.end ?? 0,
        where: isCatalogue(other.documentUri) ? 'in the catalogue' : 'in a file it imports',
      }
    );
  };
}

interface Read {
  readonly file: File;
  /** Made anew whenever the document is linked again. */
  readonly references: LangiumDocument['references'];
  readonly reading: Reading;
  /** Whether it was parsed without an error. */
  readonly whole: boolean;
}

const read = new WeakMap<LangiumDocument, Read>();

/**
 * The definitions of a document, read once for each time it is parsed or linked: what a file imports is not
 * read again at every keystroke in it, nor are the blocks of the file itself that nobody touched.
 */
export function definitionsOf(document: LangiumDocument): readonly SpecDefinition[] {
  const file = fileOf(document);
  if (!file) return [];
  const { references } = document;
  const known = read.get(document);
  if (known?.file === file && known.references === references) return known.reading.definitions;
  const { parserErrors, lexerErrors } = document.parseResult;
  const whole = parserErrors.length + lexerErrors.length === 0;
  const before = whole && known?.whole ? known.reading : undefined;
  const reading = readingOf(file, document.uri.toString(), before);
  // Before it is linked, a constant of another file has no value yet.
  if (document.state >= DocumentState.Linked) read.set(document, { file, references, reading, whole });
  return reading.definitions;
}

/**
 * Everything the shelters of a document need: its own definitions, the imported ones and the catalogue's.
 * Definitions without a name (project, prices, yard) stand under their word and a number.
 */
export function worldOf(document: LangiumDocument, { shared, roots }: ViewServices): SpecWorld {
  const documents = shared.workspace.LangiumDocuments;
  const near = closureOf(document, documents, roots);
  const catalogue = documents.all.filter(
    ({ uri }) => isCatalogue(uri) && !near.some((one) => one.uri === uri),
  );
  const definitions = new Map<string, SpecDefinition>();
  let unnamed = 0;
  for (const one of [...near, ...catalogue.toArray()]) {
    for (const definition of definitionsOf(one)) {
      unnamed += definition.name === '' ? 1 : 0;
      const key = definition.name === '' ? `${definition.word}#${unnamed}` : definition.name;
      if (!definitions.has(key)) definitions.set(key, definition);
    }
  }
  const written = writtenSystem(document.textDocument.getText());
  return { definitions, ...(written === undefined ? {} : { written }) };
}
