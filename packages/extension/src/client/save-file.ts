import { Uri, window, workspace } from 'vscode';
import type { DetailAnswer, FileWanted } from '../details.ts';

const viewWords = {
  section: 'Section',
  plan: 'Plan',
  side: 'Side',
  'setting-out': 'Setting out',
  gusts: 'Gusts',
} as const;

const titleOf = (file: FileWanted): string =>
  file.format === 'csv'
    ? 'Materials as CSV'
    : `${viewWords[file.view]}${file.over === undefined ? '' : ' with results'} as ${file.format.toUpperCase()}`;

/** Asks which of the files is wanted and where, and writes it there. Colours are those of paper. */
export async function saveFile(
  files: readonly FileWanted[],
  shelterFile: Uri,
  ask: (file: FileWanted) => Promise<DetailAnswer>,
): Promise<void> {
  const picked = await window.showQuickPick(
    files.map((file) => ({ label: titleOf(file), file })),
    { title: 'Save a drawing or list', placeHolder: 'What to save' },
  );
  if (picked === undefined) {
    return;
  }
  const answer = await ask(picked.file);
  if (answer.kind !== 'file') {
    void window.showWarningMessage(
      answer.kind === 'nothing' ? answer.why : 'The language server sent something else.',
    );
    return;
  }
  const { format } = picked.file;
  const target = await window.showSaveDialog({
    defaultUri: Uri.joinPath(shelterFile, '..', answer.name),
    filters: { [format.toUpperCase()]: [format] },
  });
  if (target !== undefined) {
    await workspace.fs.writeFile(target, new TextEncoder().encode(answer.text));
    void window.showInformationMessage(`${answer.name} is written.`);
  }
}
