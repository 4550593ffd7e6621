/** Puts the language and the editor services together. */

import { checks } from '@tautline/checks';
import {
  type DeepPartial,
  DefaultWorkspaceManager,
  EmptyFileSystem,
  type FileSystemNode,
  type FileSystemProvider,
  inject,
  type LangiumDocument,
  type LangiumSharedCoreServices,
  type Module,
  URI,
  UriUtils,
  type WorkspaceFolder,
} from 'langium';
import {
  createDefaultModule,
  createDefaultSharedModule,
  DefaultDocumentUpdateHandler,
  DefaultLanguageServer,
  type LangiumServices,
  type LangiumSharedServices,
  type PartialLangiumServices,
} from 'langium/lsp';
import {
  CodeActionKind,
  type Connection,
  type DidChangeWatchedFilesParams,
  type InitializeParams,
  type InitializeResult,
} from 'vscode-languageserver';
import type { Analyst } from '../analyst/analyst.ts';
import type { LongWork } from '../analyst/long-work.ts';
import { builtInCatalogue, type SourceFile } from '../files/catalogue.ts';
import { TautlineGeneratedModule, TautlineGeneratedSharedModule } from '../generated/module.ts';
import { fixAllKind, otherStockKind, ShelterActions } from './actions.ts';
import { Analyses } from './analyses.ts';
import { ShelterColours } from './colours.ts';
import { ShelterCompletion } from './completion.ts';
import type { EditorContext } from './context.ts';
import { coreModule } from './core-module.ts';
import { ShelterValidator } from './diagnostics.ts';
import { explanationAddress } from './explanation.ts';
import { ShelterHints } from './hints.ts';
import { ShelterHover } from './hover.ts';
import { ShelterLenses } from './lenses.ts';
import { ShelterFormatter, ShelterLinks, ShelterOutline, ShelterSignature } from './outline.ts';
import { ShelterRename } from './rename.ts';
import { isCatalogue, ShelterIndex } from './scope.ts';
import { defaultSettings, type Settings } from './settings.ts';

export interface ServerOptions {
  /** Reads the workspace; without one only open files and the catalogue are known. */
  readonly fileSystem?: () => FileSystemProvider;
  readonly analyst: Analyst;
  /** Does what takes seconds, beside the analyst. */
  readonly longWork: LongWork;
  /** Whether to work out something before anybody asks: for analysts in a worker. */
  readonly warm?: boolean;
  readonly catalogue?: readonly SourceFile[];
  /** Today as an ISO date: ages are counted to it. */
  readonly today?: () => string;
  /** Address of the explanation of a check: a page of `explanationScheme` unless said otherwise. */
  readonly explanation?: (check: string) => string;
}

export interface ServerServices {
  readonly shared: LangiumSharedServices;
  readonly language: LangiumServices;
  readonly context: EditorContext;
  readonly analyses: Analyses;
  readonly analyst: Analyst;
  readonly longWork: LongWork;
  readonly setSettings: (settings: Settings) => void;
}

interface MutableRoots {
  folders: readonly string[];
}

class ShelterWorkspace extends DefaultWorkspaceManager {
  private readonly roots: MutableRoots;
  private readonly catalogue: readonly SourceFile[];

  constructor(services: LangiumSharedCoreServices, roots: MutableRoots, catalogue: readonly SourceFile[]) {
    super(services);
    this.roots = roots;
    this.catalogue = catalogue;
    this.initialBuildOptions = { validation: true };
  }

  override initialize(params: InitializeParams): void {
    super.initialize(params);
    this.roots.folders = (params.workspaceFolders ?? []).map(({ uri }) => uri);
  }

  protected override async loadAdditionalDocuments(
    _folders: WorkspaceFolder[],
    collect: (document: LangiumDocument) => void,
  ): Promise<void> {
    for (const { uri, text } of this.catalogue)
      collect(this.langiumDocuments.createDocument(URI.parse(uri), text));
  }

  override shouldIncludeEntry(entry: FileSystemNode): boolean {
    const name = UriUtils.basename(entry.uri);
    if (name.startsWith('.')) return false;
    return entry.isDirectory ? !['node_modules', 'dist', 'out'].includes(name) : name.endsWith('.shelter');
  }
}

/** The client watches the files; only shelter files matter here. */
class ShelterUpdates extends DefaultDocumentUpdateHandler {
  private readonly files: FileSystemProvider;

  constructor(services: LangiumSharedServices) {
    super(services);
    this.files = services.workspace.FileSystemProvider;
  }

  /** A closed file is again what is on disk, not what was typed and not saved. */
  didCloseDocument({ document }: { readonly document: { readonly uri: string } }): void {
    const uri = URI.parse(document.uri);
    if (isCatalogue(uri)) return;
    this.files.exists(uri).then(
      (there) => this.fireDocumentUpdate(there ? [uri] : [], there ? [] : [uri]),
      () => this.fireDocumentUpdate([], [uri]),
    );
  }

  /** Being there, it makes the server ask to be told of saved files: who wants to know listens to the documents. */
  didSaveDocument(): void {}

  protected override getWatchers(): [] {
    return [];
  }

  override didChangeWatchedFiles(params: DidChangeWatchedFilesParams): void {
    super.didChangeWatchedFiles({ changes: params.changes.filter(({ uri }) => uri.endsWith('.shelter')) });
  }
}

class ShelterServer extends DefaultLanguageServer {
  protected override buildInitializeResult(params: InitializeParams): InitializeResult {
    const result = super.buildInitializeResult(params);
    const codeActionProvider = { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind, otherStockKind] };
    return {
      ...result,
      capabilities: { ...result.capabilities, selectionRangeProvider: true, codeActionProvider },
      serverInfo: { name: 'Tautline' },
    };
  }
}

/** Services of the language server. Without a connection they can be used directly, as the tests do. */
export function createServerServices(
  connection: Connection | undefined,
  options: ServerOptions,
): ServerServices {
  const roots: MutableRoots = { folders: [] };
  const { analyst, longWork } = options;
  let settings = defaultSettings;
  let context: EditorContext;
  const here = (): EditorContext => context;

  const sharedModule: Module<LangiumSharedServices, DeepPartial<LangiumSharedServices>> = {
    workspace: {
      IndexManager: (services) => new ShelterIndex(services, roots),
      WorkspaceManager: (services) =>
        new ShelterWorkspace(services, roots, options.catalogue ?? builtInCatalogue),
    },
    lsp: {
      DocumentUpdateHandler: (services) => new ShelterUpdates(services),
      LanguageServer: (services) => new ShelterServer(services),
    },
  };
  const editorModule: Module<LangiumServices, PartialLangiumServices> = {
    validation: { DocumentValidator: () => new ShelterValidator(here) },
    lsp: {
      CompletionProvider: () => new ShelterCompletion(here),
      HoverProvider: () => new ShelterHover(here),
      DocumentSymbolProvider: () => new ShelterOutline(),
      DocumentLinkProvider: () => new ShelterLinks(here),
      SignatureHelp: () => new ShelterSignature(),
      Formatter: () => new ShelterFormatter(),
      SemanticTokenProvider: (services) => new ShelterColours(services),
      CodeActionProvider: () => new ShelterActions(here, () => analyst, longWork),
      InlayHintProvider: () => new ShelterHints(here),
      CodeLensProvider: () => new ShelterLenses(here, () => analyst),
      RenameProvider: (services) => new ShelterRename(services),
    },
  };
  const fileSystem = options.fileSystem ? { fileSystemProvider: options.fileSystem } : EmptyFileSystem;
  const shared = inject(
    createDefaultSharedModule({ ...(connection ? { connection } : {}), ...fileSystem }),
    TautlineGeneratedSharedModule,
    sharedModule,
  );
  const language = inject(
    createDefaultModule({ shared }),
    TautlineGeneratedModule,
    coreModule(roots),
    editorModule,
  );
  shared.ServiceRegistry.register(language);
  const view = { shared, language, roots, checks: new Set(checks.map(({ id }) => id)) };
  const analyses = new Analyses(view, analyst, () => options.today?.());
  context = {
    view,
    analyses,
    settings: () => settings,
    today: () => options.today?.(),
    explanation: options.explanation ?? explanationAddress,
  };
  shared.workspace.DocumentBuilder.updateBuildOptions = { validation: true };
  const setSettings = (next: Settings): void => {
    settings = next;
  };
  return { shared, language, context, analyses, analyst, longWork, setSettings };
}
