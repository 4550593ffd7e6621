import {
  type CalculationAnswer,
  type CalculationQuestion,
  calculationRequest,
  languageId,
  type PlainPosition,
} from '@tautline/language/protocol';
import { commands, EventEmitter, type ExtensionContext, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

const scheme = 'tautline-calculation';

/**
 * Shows the calculation behind a finding, or of the shelter under the cursor, as a read-only page.
 * Arguments of the command, all optional: uri, position, check id.
 */
export function registerCalculation(context: ExtensionContext, client: BaseLanguageClient): void {
  const pages = new Map<string, string>();
  const changed = new EventEmitter<Uri>();
  const show = async (uri?: string, position?: PlainPosition, check?: string): Promise<void> => {
    const question = questionOf(uri, position, check);
    if (question === undefined) {
      return;
    }
    const answer = await client.sendRequest<CalculationAnswer | null>(calculationRequest, question);
    if (answer === null) {
      void window.showInformationMessage('There is no calculation at this place.');
      return;
    }
    const page = Uri.from({
      scheme,
      path: `/${answer.title.replaceAll(/[\\/?#]/g, ' ')}.md`,
    });
    pages.set(page.toString(), answer.markdown);
    changed.fire(page);
    // Asked from the drawing sheet, it comes over the sheet; asked from the text, beside it.
    const fromSheet = window.activeTextEditor === undefined;
    await commands.executeCommand(fromSheet ? 'markdown.showPreview' : 'markdown.showPreviewToSide', page);
  };
  context.subscriptions.push(
    changed,
    workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: (page) =>
        pages.get(page.toString()) ?? 'Show the calculation again: this page is from an earlier session.',
    }),
    commands.registerCommand('tautline.showCalculation', show),
  );
}

function questionOf(
  uri: string | undefined,
  position: PlainPosition | undefined,
  check: string | undefined,
): CalculationQuestion | undefined {
  const editor = window.activeTextEditor;
  if (typeof uri === 'string' && position !== undefined) {
    return { uri, position, ...(check === undefined ? {} : { check }) };
  }
  if (editor?.document.languageId !== languageId) {
    return undefined;
  }
  const { line, character } = editor.selection.active;
  return { uri: editor.document.uri.toString(), position: { line, character } };
}
