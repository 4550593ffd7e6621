import {
  type ExploreAnswer,
  type Explored,
  type ExploreQuestion,
  exploreRequest,
  languageId,
} from '@tautline/language/protocol';
import { commands, type ExtensionContext, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ExploredKept } from './explored-kept.ts';
import { askLong } from './long-question.ts';
import type { Pages } from './pages.ts';
import { writeVariant } from './sheet-work.ts';

/**
 * Works out every variant of the shelter under the cursor and shows them as a table; then one of them can be
 * picked and written into the text, also later by a command of its own.
 */
export function registerExplore(
  context: ExtensionContext,
  client: BaseLanguageClient,
  pages: Pages,
  kept: ExploredKept,
): void {
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
    kept.found(uri, answer);
    await pages.show(`${answer.shelter} variants`, answer.markdown);
    const button = 'Write a Variant...';
    const { length } = answer.variants;
    const count = length === answer.of ? `${length}` : `Stopped: ${length} of ${answer.of}`;
    const said = `${count} variants of ${answer.shelter}, ${answer.variants.filter(({ best }) => best).length} of them beaten by no other.`;
    if ((await window.showInformationMessage(said, button)) === button) {
      await pick(client, uri, answer);
    }
  };
  const write = async (): Promise<void> => {
    const uri = window.activeTextEditor?.document.uri.toString();
    const [newest] = uri === undefined ? [] : kept.of(uri);
    if (uri === undefined || newest === undefined) {
      await explore();
    } else {
      await pick(client, uri, newest);
    }
  };
  context.subscriptions.push(
    commands.registerCommand('tautline.explore', explore),
    commands.registerCommand('tautline.writeVariant', write),
  );
}

/** Those that no other beats first, then those in which nothing fails. */
async function pick(client: BaseLanguageClient, uri: string, explored: Explored): Promise<void> {
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
  await writeVariant(client, { uri, shelter: explored.shelter, number: picked.variant.number });
}
