import { languageId, type ShelterTemplate } from '@tautline/language/protocol';
import { commands, type ExtensionContext, SnippetString, Uri, window, workspace } from 'vscode';

/** New shelter: pick the kind that is nearest, then tab through its numbers in a new unsaved file. */
export function registerWizard(context: ExtensionContext): void {
  const run = async (): Promise<void> => {
    const file = Uri.joinPath(context.extensionUri, 'dist', 'templates.json');
    const text = new TextDecoder().decode(await workspace.fs.readFile(file));
    const templates = JSON.parse(text) as readonly ShelterTemplate[];
    const picked = await pick(templates);
    if (picked === undefined) {
      return;
    }
    const document = await workspace.openTextDocument({
      language: languageId,
      content: '',
    });
    const editor = await window.showTextDocument(document);
    await editor.insertSnippet(new SnippetString(picked.snippet));
    await commands.executeCommand('tautline.openPreview');
  };
  context.subscriptions.push(commands.registerCommand('tautline.newShelter', run));
}

async function pick(templates: readonly ShelterTemplate[]): Promise<ShelterTemplate | undefined> {
  const choices = templates.map((template) => ({
    label: template.title,
    detail: template.description,
    template,
  }));
  const choice = await window.showQuickPick(choices, {
    title: 'New shelter',
    placeHolder: 'Which kind is nearest to yours? Every number can be changed afterwards.',
    matchOnDetail: true,
  });
  return choice?.template;
}
