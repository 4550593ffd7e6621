import {
  type AssumedAnswer,
  type AssumedQuestion,
  assumedRequest,
  languageId,
  type PlainPlace,
  reasonCommand,
} from '@tautline/language/protocol';
import {
  commands,
  type ExtensionContext,
  Range,
  Selection,
  type TextDocument,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Writes the assumed values of the shelter under the cursor into the text, as one undoable step. */
export function registerAssumed(context: ExtensionContext, client: BaseLanguageClient): void {
  const write = async (target?: string): Promise<void> => {
    const editor = window.activeTextEditor;
    const uri = typeof target === 'string' ? target : editor?.document.uri.toString();
    if (uri === undefined) {
      return;
    }
    const document = await workspace.openTextDocument(Uri.parse(uri));
    if (document.languageId !== languageId) {
      return;
    }
    const position = editor?.document === document ? editor.selection.active : undefined;
    const question: AssumedQuestion = {
      uri,
      ...(position === undefined ? {} : { position: { line: position.line, character: position.character } }),
    };
    const answer = await client.sendRequest<AssumedAnswer>(assumedRequest, question);
    if (answer.edits.length === 0) {
      void window.showInformationMessage('Nothing is assumed here: every value is written down.');
      return;
    }
    await writeEdits(document, answer);
  };
  context.subscriptions.push(commands.registerCommand('tautline.writeAssumed', write));
}

/** Puts edits of the server into the text they were made for, as one undoable step; says so when it has changed. */
export async function writeEdits(document: TextDocument, answer: AssumedAnswer): Promise<boolean> {
  if (answer.version !== document.version) {
    void window.showWarningMessage('The text changed meanwhile. Try again.');
    return false;
  }
  const edit = new WorkspaceEdit();
  for (const change of answer.edits) {
    edit.replace(document.uri, rangeOf(change.range), change.newText);
  }
  return workspace.applyEdit(edit);
}

/**
 * Not in the palette: `tautline.reveal`, by which lenses and the drawing sheet land on a line, and what comes after an
 * `accept` line is written.
 */
export function registerPlaces(context: ExtensionContext): void {
  context.subscriptions.push(
    commands.registerCommand('tautline.reveal', reveal),
    commands.registerCommand(reasonCommand, selectReason),
  );
}

/** Selects the last place that still waits for a reason, so that typing writes it. */
function selectReason(words: string): void {
  const editor = window.activeTextEditor;
  const at = editor?.document.getText().lastIndexOf(`"${words}"`) ?? -1;
  if (editor !== undefined && at >= 0) {
    const [start, end] = [at + 1, at + 1 + words.length].map((offset) => editor.document.positionAt(offset));
    if (start !== undefined && end !== undefined) {
      editor.selection = new Selection(start, end);
      editor.revealRange(editor.selection, TextEditorRevealType.InCenterIfOutsideViewport);
    }
  }
}

export async function reveal(place: PlainPlace): Promise<void> {
  const uri = Uri.parse(place.uri);
  // Land in the column where the file is already open, not on top of the drawing sheet.
  const open = window.visibleTextEditors.find((editor) => editor.document.uri.toString() === uri.toString());
  const range = rangeOf(place.range);
  const editor = await window.showTextDocument(uri, {
    viewColumn: open?.viewColumn ?? ViewColumn.One,
    selection: new Range(range.start, range.start),
  });
  editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
}

export function registerServerCommands(context: ExtensionContext, client: BaseLanguageClient): void {
  context.subscriptions.push(
    commands.registerCommand('tautline.restartServer', async () => {
      await client.stop();
      await client.start();
    }),
    commands.registerCommand('tautline.showLog', () => client.outputChannel.show()),
  );
}

function rangeOf(range: PlainPlace['range']): Range {
  return new Range(range.start.line, range.start.character, range.end.line, range.end.character);
}
