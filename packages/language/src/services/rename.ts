/** Rename: any definition or constant of the workspace, across files; never into the read-only catalogue. */
import type { LangiumDocument } from 'langium';
import { DefaultRenameProvider } from 'langium/lsp';
import {
  LSPErrorCodes,
  type Range,
  type RenameParams,
  ResponseError,
  type TextDocumentPositionParams,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { catalogueScheme } from '../protocol.ts';
import { isWord } from '../text/tokens.ts';

const refuse = (message: string): never => {
  throw new ResponseError(LSPErrorCodes.RequestFailed, message);
};

export class ShelterRename extends DefaultRenameProvider {
  override async rename(document: LangiumDocument, params: RenameParams): Promise<WorkspaceEdit | undefined> {
    if (!isWord(params.newName))
      refuse('A name is one word of letters, digits, `_` and single hyphens, and starts with a letter.');
    const edit = await super.rename(document, params);
    for (const uri of Object.keys(edit?.changes ?? {})) {
      if (uri.startsWith(`${catalogueScheme}:`))
        refuse('The built-in catalogue cannot be changed. Say `like` to make an item of your own.');
    }
    return edit;
  }

  override async prepareRename(
    document: LangiumDocument,
    params: TextDocumentPositionParams,
  ): Promise<Range | undefined> {
    const range = await super.prepareRename(document, params);
    if (!range) return undefined;
    const edit = await super.rename(document, { ...params, newName: 'x' });
    const uris = Object.keys(edit?.changes ?? {});
    return uris.length === 0 || uris.some((uri) => uri.startsWith(`${catalogueScheme}:`)) ? undefined : range;
  }
}
