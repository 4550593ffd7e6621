import {
  languageId,
  type WholeHouseAnswer,
  type WholeHouseQuestion,
  wholeHouseRequest,
} from '@tautline/language/protocol';
import { commands, type ExtensionContext, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { askLong } from './long-question.ts';

/** Works out the whole houses of the file in front, in space, and tells how they stand. */
export function registerWholeHouse(context: ExtensionContext, client: BaseLanguageClient): void {
  const check = async (): Promise<void> => {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== languageId) {
      void window.showInformationMessage('Open a .shelter file first: its whole house is checked.');
      return;
    }
    const answer = await askLong<WholeHouseQuestion, WholeHouseAnswer>(
      client,
      'Checking the whole house',
      wholeHouseRequest,
      { uri: document.uri.toString() },
    );
    if (answer !== undefined) {
      const show = answer.done ? window.showInformationMessage : window.showWarningMessage;
      void show(answer.told);
    }
  };
  context.subscriptions.push(commands.registerCommand('tautline.checkWholeHouse', check));
}
