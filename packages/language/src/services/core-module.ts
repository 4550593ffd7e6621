/** The language without an editor: what server, CLI and tests share. */
import { definitionKinds } from '@tautline/shelter';
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  type LangiumSharedCoreServices,
  type Module,
  type PartialLangiumCoreServices,
  type ValueConverter,
} from 'langium';
import { TautlineGeneratedModule, TautlineGeneratedSharedModule } from '../generated/module.ts';
import { ShelterLexer } from '../text/lexer.ts';
import { GrowersMessages } from '../text/parser-messages.ts';
import { ShelterTokenBuilder } from '../text/tokens.ts';
import {
  type Roots,
  ShelterIndex,
  ShelterLinker,
  ShelterReferences,
  ShelterScopes,
  ShelterSymbols,
} from './scope.ts';

/** Texts stay as written in the tree; what they mean is worked out where it is needed. */
const asWritten: ValueConverter = { convert: (input) => input };

const definitionWords: ReadonlySet<string> = new Set(definitionKinds.map(({ word }) => word));

export function coreModule(roots: Roots): Module<LangiumCoreServices, PartialLangiumCoreServices> {
  return {
    parser: {
      TokenBuilder: () => new ShelterTokenBuilder(),
      Lexer: (services) => new ShelterLexer(services, () => definitionWords),
      // The grammar needs one token of lookahead, and a name before the words of a line is taken first.
      ParserConfig: () => ({ maxLookahead: 1 }),
      ValueConverter: () => asWritten,
      ParserErrorMessageProvider: () => new GrowersMessages(),
    },
    references: {
      Linker: (services) => new ShelterLinker(services),
      ScopeProvider: (services) => new ShelterScopes(services, roots),
      ScopeComputation: (services) => new ShelterSymbols(services),
    },
    workspace: {
      ReferenceDescriptionProvider: (services) => new ShelterReferences(services),
    },
  };
}

export interface CoreServices {
  readonly shared: LangiumSharedCoreServices;
  readonly language: LangiumCoreServices;
  readonly roots: Roots;
}

/** Services that read no files: texts are handed in. */
export function createCoreServices(folders: readonly string[] = []): CoreServices {
  const roots: Roots = { folders };
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), TautlineGeneratedSharedModule, {
    workspace: { IndexManager: (services: LangiumSharedCoreServices) => new ShelterIndex(services, roots) },
  });
  const language = inject(createDefaultCoreModule({ shared }), TautlineGeneratedModule, coreModule(roots));
  shared.ServiceRegistry.register(language);
  return { shared, language, roots };
}
