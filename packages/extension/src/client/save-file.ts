import { Uri, window, workspace } from 'vscode';
import type { DetailAnswer, FileWanted } from '../details.ts';

const viewWords = {
  section: 'Section',
  plan: 'Plan',
  side: 'Side',
  end: 'Front end',
  'setting-out': 'Setting out',
  gusts: 'Gusts',
} as const;

/** How long the status bar tells that a file is written, ms. */
const told = 8000;

/** Width of a picture: two and a half pixels to a dot of a screen drawing, sharp on a printed page. */
const pixels = 2400;

const formatWords = { svg: 'SVG', dxf: 'DXF', png: `PNG, ${pixels} pixels wide` } as const;

function titleOf(file: FileWanted): string {
  switch (file.format) {
    case 'csv':
      return 'Materials as CSV';
    case 'glb':
      return 'House in space as glTF';
    default:
      return `${viewWords[file.view]}${file.over === undefined ? '' : ' with results'} as ${formatWords[file.format]}`;
  }
}

export interface FileSources {
  /** Asks the server. */
  readonly ask: (file: FileWanted) => Promise<DetailAnswer>;
  /** Asks the page for a picture of a drawing, base64; undefined where it has none to give. */
  readonly picture: (svg: string, width: number) => Promise<string | undefined>;
}

/** Asks which of the files is wanted and where, and writes it there. Colours are those of paper. */
export async function saveFile(
  files: readonly FileWanted[],
  shelterFile: Uri,
  { ask, picture }: FileSources,
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
  const bytes = await bytesOf(answer, format === 'png' ? picture : undefined);
  if (bytes === undefined) {
    void window.showWarningMessage('The drawing sheet could not make the picture: save it as SVG instead.');
    return;
  }
  const target = await window.showSaveDialog({
    defaultUri: Uri.joinPath(shelterFile, '..', answer.name),
    filters: { [format.toUpperCase()]: [format] },
  });
  if (target !== undefined) {
    await workspace.fs.writeFile(target, bytes);
    // Told where it does not lie over the sheet.
    window.setStatusBarMessage(`$(check) ${answer.name} is written`, told);
  }
}

async function bytesOf(
  answer: Extract<DetailAnswer, { kind: 'file' }>,
  picture: FileSources['picture'] | undefined,
): Promise<Uint8Array | undefined> {
  if ('base64' in answer) {
    return decoded(answer.base64);
  }
  if (picture === undefined) {
    return new TextEncoder().encode(answer.text);
  }
  const base64 = await picture(answer.text, pixels);
  return base64 === undefined ? undefined : decoded(base64);
}

function decoded(base64: string): Uint8Array {
  return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
}
