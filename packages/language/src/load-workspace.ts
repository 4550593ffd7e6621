/** Reads a set of files at once: what the CLI, the book and the tests enter by. */
import type { Origin, SpecWorld } from '@tautline/shelter';
import { type LangiumDocument, URI } from 'langium';
import { builtInCatalogue, type SourceFile } from './files/catalogue.ts';
import { isDefinition } from './generated/ast.ts';
import type { LanguageProblem } from './problems/problem.ts';
import { createCoreServices } from './services/core-module.ts';
import { problemsOf, type ViewServices, worldOf } from './services/file-view.ts';
import { fileOf, importsOf } from './services/scope.ts';
import { placeOf, type Span, spanOf } from './spec/origin-key.ts';
import { docOf } from './spec/to-spec.ts';
import { type Position, positionAt } from './text/position.ts';

export interface LoadOptions {
  /** Folders imports must stay inside, as URIs; the folder of each file when there are none. */
  readonly roots?: readonly string[];
  /** Stands in for the built-in catalogue. */
  readonly catalogue?: readonly SourceFile[];
  /** Ids of all checks, so that an `accept` of an unknown one is reported. */
  readonly checks?: ReadonlySet<string>;
}

export interface LoadedShelter {
  readonly name: string;
  readonly uri: string;
  readonly kind: 'shelter' | 'variant' | 'range';
  /** First line of its doc comment, or ''. */
  readonly title: string;
  readonly origin: Origin;
  /** Everything it can refer to. */
  readonly world: SpecWorld;
}

export interface LocatedProblem extends LanguageProblem {
  readonly uri: string;
  readonly from: Position;
  readonly to: Position;
}

export interface Place extends Span {
  readonly uri: string;
  /** Zero-based. */
  readonly from: Position;
  readonly to: Position;
}

export interface LoadedFile extends SourceFile {
  /** Whether it was asked for, rather than imported. */
  readonly asked: boolean;
}

export interface LoadedWorkspace {
  readonly files: readonly LoadedFile[];
  /** Shelters, variants and ranges of the files asked for, in order. */
  readonly shelters: readonly LoadedShelter[];
  readonly problems: readonly LocatedProblem[];
  readonly worldOf: (uri: string) => SpecWorld | undefined;
  /** Where an origin was written; catalogue included. Undefined for origins this load did not make. */
  readonly placeOf: (origin: Origin) => Place | undefined;
}

/**
 * Loads files and whatever they import. `readImport` is asked for each imported file that is not among
 * `files`, and answers undefined when it cannot be read (it must check that a link does not lead out of
 * the workspace). Never throws for anything a file says.
 */
export async function loadWorkspace(
  files: readonly SourceFile[],
  readImport: (uri: string) => Promise<string | undefined> | string | undefined = () => undefined,
  options: LoadOptions = {},
): Promise<LoadedWorkspace> {
  const core = createCoreServices(options.roots ?? []);
  const services: ViewServices = { ...core, ...(options.checks ? { checks: options.checks } : {}) };
  const { LangiumDocuments, DocumentBuilder } = core.shared.workspace;
  // Without the mark that some editors put before a text: no editor counts it as a column.
  const add = ({ uri, text }: SourceFile): LangiumDocument | undefined => {
    const parsed = URI.parse(uri);
    return LangiumDocuments.hasDocument(parsed)
      ? undefined
      : LangiumDocuments.createDocument(parsed, text.replace(/^\ufeff/, ''));
  };
  const catalogue = (options.catalogue ?? builtInCatalogue).flatMap((file) => add(file) ?? []);
  const asked = files.flatMap((file) => add(file) ?? []);
  const documents = [...asked];
  for (const document of documents) {
    for (const edge of importsOf(document, LangiumDocuments, core.roots)) {
      if (edge.document || edge.uri === undefined) continue;
      const text = await readImport(edge.uri);
      const added = text === undefined ? undefined : add({ uri: edge.uri, text });
      if (added) documents.push(added);
    }
  }
  await DocumentBuilder.build([...catalogue, ...documents], { validation: false });

  const worlds = new Map<string, SpecWorld>();
  const world = (uri: string): SpecWorld | undefined => {
    const document = LangiumDocuments.getDocument(URI.parse(uri));
    if (!document) return undefined;
    const known = worlds.get(uri) ?? worldOf(document, services);
    worlds.set(uri, known);
    return known;
  };
  const locate = (uri: string, start: number, end: number): Pick<Place, 'from' | 'to'> => {
    const text = LangiumDocuments.getDocument(URI.parse(uri))?.textDocument.getText() ?? '';
    return { from: positionAt(text, start), to: positionAt(text, end) };
  };
  return {
    files: documents.map((document) => ({
      uri: document.uri.toString(),
      text: document.textDocument.getText(),
      asked: asked.includes(document),
    })),
    shelters: asked.flatMap((document) => sheltersOf(document, world(document.uri.toString()))),
    problems: documents.flatMap((document) =>
      problemsOf(document, services).map((problem) => {
        const uri = document.uri.toString();
        return { ...problem, uri, ...locate(uri, problem.start, problem.end) };
      }),
    ),
    worldOf: world,
    placeOf: (origin) => {
      const place = placeOf(origin);
      const document = place && LangiumDocuments.getDocument(URI.parse(place.uri));
      const file = document && fileOf(document);
      const span = file && spanOf(file, origin);
      return place && span && { uri: place.uri, ...span, ...locate(place.uri, span.start, span.end) };
    },
  };
}

function sheltersOf(document: LangiumDocument, world: SpecWorld | undefined): LoadedShelter[] {
  const uri = document.uri.toString();
  return (fileOf(document)?.statements ?? []).flatMap((statement) => {
    if (!isDefinition(statement) || statement.name === undefined || !world) return [];
    const { kind, name } = statement;
    if (kind !== 'shelter' && kind !== 'variant' && kind !== 'range') return [];
    const definition = world.definitions.get(name);
    if (!definition || placeOf(definition.origin)?.uri !== uri) return [];
    return [
      { name, uri, kind, title: docOf(statement).split('\n')[0] ?? '', origin: definition.origin, world },
    ];
  });
}
