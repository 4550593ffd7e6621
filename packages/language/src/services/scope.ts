/** Which definitions a file sees: its own, those of the files it imports (and they import), the catalogue. */
import {
  type AstNode,
  type AstNodeDescription,
  AstUtils,
  Cancellation,
  DefaultIndexManager,
  DefaultLinker,
  DefaultReferenceDescriptionProvider,
  DefaultScopeComputation,
  DefaultScopeProvider,
  interruptAndCheck,
  type LangiumCoreServices,
  type LangiumDocument,
  type LangiumDocuments,
  type LangiumSharedCoreServices,
  type LinkingError,
  type LocalSymbols,
  MapScope,
  MultiMap,
  type ReferenceDescription,
  type ReferenceInfo,
  type Scope,
  URI,
  WorkspaceCache,
} from 'langium';
import { resolveImport } from '../files/import-path.ts';
import { type File, type Import, isFile, isImport, isName } from '../generated/ast.ts';
import { isReferenceRole, matchOf } from '../match/match-file.ts';
import { catalogueScheme } from '../protocol.ts';
import { textOf } from '../text/literals.ts';

export const fileOf = (document: LangiumDocument): File | undefined =>
  isFile(document.parseResult.value) ? document.parseResult.value : undefined;

/** Folders of the workspace as URIs; imports stay inside them. */
export interface Roots {
  readonly folders: readonly string[];
}

export interface ImportEdge {
  readonly node: Import;
  /** The file it leads to, when it may be read. */
  readonly document?: LangiumDocument;
  readonly uri?: string;
  readonly problem?: string;
}

/** The imports of a file, each with the file it leads to or what is wrong with it. */
export function importsOf(
  document: LangiumDocument,
  all: LangiumDocuments,
  roots: Roots,
): readonly ImportEdge[] {
  const file = fileOf(document);
  return (file?.statements ?? []).filter(isImport).map((node) => {
    if (node.path === undefined) return { node, problem: 'The path of the file to import is missing.' };
    const target = targetOf(node, textOf(node.path), document, roots);
    if (typeof target === 'string') return { node, problem: target };
    const [uri, found] = [target.toString(), all.getDocument(target)];
    return found
      ? { node, uri, document: found }
      : { node, uri, problem: `There is no readable file \`${textOf(node.path)}\`.` };
  });
}

/** Where imports lead, by the folders they must stay in: all files are asked at each change of one of them. */
const targets = new WeakMap<Import, { readonly folders: Roots['folders']; readonly target: URI | string }>();

/** The address an import leads to, or what is wrong with it. */
function targetOf(node: Import, path: string, document: LangiumDocument, { folders }: Roots): URI | string {
  const known = targets.get(node);
  if (known?.folders === folders) return known.target;
  const found = resolveImport(document.uri.toString(), path, folders);
  const target = found.ok ? URI.parse(found.uri) : found.message;
  targets.set(node, { folders, target });
  return target;
}

/** The file itself and everything it imports, nearest first. Ends also when imports go in a circle. */
export function closureOf(
  document: LangiumDocument,
  all: LangiumDocuments,
  roots: Roots,
): readonly LangiumDocument[] {
  const seen = new Map<string, LangiumDocument>([[document.uri.toString(), document]]);
  for (const next of seen.values()) {
    for (const edge of importsOf(next, all, roots)) {
      if (edge.document && !seen.has(edge.document.uri.toString()))
        seen.set(edge.document.uri.toString(), edge.document);
    }
  }
  return [...seen.values()];
}

export const isCatalogue = (uri: URI): boolean => uri.scheme === catalogueScheme;

export class ShelterScopes extends DefaultScopeProvider {
  private readonly documents: LangiumDocuments;
  private readonly roots: Roots;
  private readonly visible: WorkspaceCache<string, Scope>;

  constructor(services: LangiumCoreServices, roots: Roots) {
    super(services);
    this.documents = services.shared.workspace.LangiumDocuments;
    this.roots = roots;
    this.visible = new WorkspaceCache(services.shared);
  }

  override getScope(context: ReferenceInfo): Scope {
    const document = AstUtils.getDocument(context.container);
    return this.visible.get(document.uri.toString(), () => new MapScope(this.seenFrom(document)));
  }

  /** Everything with a name that a file sees; nearer definitions hide farther ones. */
  seenFrom(document: LangiumDocument): readonly AstNodeDescription[] {
    const near = closureOf(document, this.documents, this.roots);
    const catalogue = this.documents.all.filter(({ uri }) => isCatalogue(uri)).toArray();
    const names = new Map<string, AstNodeDescription>();
    for (const { uri } of [...near, ...catalogue]) {
      for (const description of this.indexManager.allElements('Named', new Set([uri.toString()])))
        if (!names.has(description.name)) names.set(description.name, description);
    }
    return [...names.values()];
  }
}

/** The words of a file that the vocabulary takes as references; every other word only could be one. */
const referencesIn = (file: File): readonly ReferenceInfo[] =>
  [...matchOf(file).roles].flatMap(([container, role]) =>
    isReferenceRole(role) && container.ref ? [{ container, reference: container.ref, property: 'ref' }] : [],
  );

/** Links the words that are references, and no other. */
export class ShelterLinker extends DefaultLinker {
  override async link(
    document: LangiumDocument,
    cancelToken = Cancellation.CancellationToken.None,
  ): Promise<void> {
    const file = fileOf(document);
    if (!file) return super.link(document, cancelToken);
    for (const info of referencesIn(file)) this.doLink(info, document);
    await interruptAndCheck(cancelToken);
  }

  override getCandidate(info: ReferenceInfo): AstNodeDescription | LinkingError {
    return refersToSomething(info) ? super.getCandidate(info) : this.createLinkingError(info);
  }
}

function refersToSomething({ container }: ReferenceInfo): boolean {
  const root = AstUtils.findRootNode(container);
  return isName(container) && isFile(root) && isReferenceRole(matchOf(root).roles.get(container));
}

/** Lists what refers where, for renaming and finding, without looking at words that are no references. */
export class ShelterReferences extends DefaultReferenceDescriptionProvider {
  override async createDescriptions(
    document: LangiumDocument,
    cancelToken = Cancellation.CancellationToken.None,
  ): Promise<ReferenceDescription[]> {
    const file = fileOf(document);
    if (!file) return super.createDescriptions(document, cancelToken);
    await interruptAndCheck(cancelToken);
    return referencesIn(file).flatMap((info) => this.createInfoDescriptions(info));
  }
}

/** Every name is seen in its whole file and by those that import it: nothing is local to a block. */
export class ShelterSymbols extends DefaultScopeComputation {
  override collectLocalSymbols(): Promise<LocalSymbols> {
    return Promise.resolve(new MultiMap<AstNode, AstNodeDescription>());
  }
}

/** A file is affected by changes of whatever it imports, also of what it does not refer to yet. */
export class ShelterIndex extends DefaultIndexManager {
  private readonly roots: Roots;

  constructor(services: LangiumSharedCoreServices, roots: Roots) {
    super(services);
    this.roots = roots;
  }

  override isAffected(document: LangiumDocument, changed: Set<string>): boolean {
    return (
      super.isAffected(document, changed) ||
      closureOf(document, this.documents, this.roots).some(
        ({ uri }) => uri.toString() !== document.uri.toString() && changed.has(uri.toString()),
      )
    );
  }
}
