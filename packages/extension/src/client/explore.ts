import {
  type ExploreAnswer,
  type Explored,
  type ExploreQuestion,
  exploreRequest,
  languageId,
  type VariantAnswer,
  type VariantQuestion,
  variantRequest,
} from '@tautline/language/protocol';
import { commands, type ExtensionContext, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { writeEdits } from './commands.ts';
import { askLong } from './long-question.ts';
import type { Pages } from './pages.ts';

interface Last {
  readonly uri: string;
  readonly explored: Explored;
}

/**
 * Works out every variant of the shelter under the cursor and shows them as a table; then one of them can be
 * picked and written into the text, also later by a command of its own.
 */
export function registerExplore(context: ExtensionContext, client: BaseLanguageClient, pages: Pages): void {
  let last: Last | undefined;
  const explore = async (): Promise<void> => {
    const editor = window.activeTextEditor;
    if (editor?.document.languageId !== languageId) {
      void window.showInformationMessage('Open a .shelter file first: what may vary in it is explored.');
      return;
    }
    const { line, character } = editor.selection.active;
    const uri = editor.document.uri.toString();
    const answer = await askLong<ExploreQuestion, ExploreAnswer>(
      client,
      'Exploring what may vary',
      exploreRequest,
      { uri, position: { line, character } },
    );
    if (answer === undefined) {
      return;
    }
    if ('why' in answer) {
      void window.showWarningMessage(answer.why);
      return;
    }
    last = { uri, explored: answer };
    await pages.show(`${answer.shelter} variants`, answer.markdown);
    const write = 'Write a Variant...';
    const said = `${answer.variants.length} variants of ${answer.shelter}, ${answer.variants.filter(({ best }) => best).length} of them beaten by no other.`;
    if ((await window.showInformationMessage(said, write)) === write) {
      await pick(client, last);
    }
  };
  const writeVariant = async (): Promise<void> => {
    if (last === undefined) {
      await explore();
    } else {
      await pick(client, last);
    }
  };
  context.subscriptions.push(
    commands.registerCommand('tautline.explore', explore),
    commands.registerCommand('tautline.writeVariant', writeVariant),
  );
}

/** Those that no other beats first, then those in which nothing fails. */
async function pick(client: BaseLanguageClient, { uri, explored }: Last): Promise<void> {
  const rank = ({ best, holds }: Explored['variants'][number]): number => (best ? 0 : holds ? 1 : 2);
  const rows = [...explored.variants]
    .sort((a, b) => rank(a) - rank(b) || a.number - b.number)
    .map((variant) => ({
      label: `${variant.best ? '$(star-full) ' : ''}${variant.number}: ${explored.axes.map((axis, at) => `${axis} ${variant.values[at]}`).join(', ')}`,
      description: variant.verdict,
      detail: [variant.usedText, variant.gustText, variant.headroomText, variant.costText]
        .filter((text) => text !== undefined && text !== '')
        .join(' · '),
      variant,
    }));
  const picked = await window.showQuickPick(rows, {
    title: `Variants of ${explored.shelter}`,
    placeHolder: 'Which one to write into the text: most used, first failure, headroom, cost',
    matchOnDescription: true,
  });
  if (picked === undefined) {
    return;
  }
  const question: VariantQuestion = { uri, shelter: explored.shelter, number: picked.variant.number };
  const document = await workspace.openTextDocument(Uri.parse(uri));
  const answer = await client.sendRequest<VariantAnswer>(variantRequest, question);
  if ('why' in answer) {
    void window.showWarningMessage(answer.why);
  } else {
    await writeEdits(document, answer);
  }
}
