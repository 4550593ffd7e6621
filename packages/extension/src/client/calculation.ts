import {
  type CalculationAnswer,
  type CalculationQuestion,
  calculationRequest,
  languageId,
  type PlainPosition,
} from '@tautline/language/protocol';
import { commands, type ExtensionContext, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { Pages } from './pages.ts';

/**
 * Shows the calculation behind a finding, or of the shelter under the cursor, as a read-only page.
 * Arguments of the command, all optional: uri, position, check id.
 */
export function registerCalculation(
  context: ExtensionContext,
  client: BaseLanguageClient,
  pages: Pages,
): void {
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
    await pages.show(answer.title, answer.markdown);
  };
  context.subscriptions.push(commands.registerCommand('tautline.showCalculation', show));
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
