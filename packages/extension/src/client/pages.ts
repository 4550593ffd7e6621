import { commands, EventEmitter, type ExtensionContext, Uri, window, workspace } from 'vscode';

const scheme = 'tautline-page';

/** Read-only pages of Markdown that are made on demand: a calculation, a table of variants. */
export class Pages {
  private readonly texts = new Map<string, string>();
  private readonly changed = new EventEmitter<Uri>();

  constructor(context: ExtensionContext) {
    context.subscriptions.push(
      this.changed,
      workspace.registerTextDocumentContentProvider(scheme, {
        onDidChange: this.changed.event,
        provideTextDocumentContent: (page) =>
          this.texts.get(page.toString()) ??
          'Ask for this page again: it was made before this window was opened.',
      }),
    );
  }

  /** Asked from the drawing sheet, a page comes over the sheet; asked from the text, beside it. */
  async show(title: string, markdown: string): Promise<void> {
    const page = Uri.from({ scheme, path: `/${title.replaceAll(/[\\/?#]/g, ' ')}.md` });
    this.texts.set(page.toString(), markdown);
    this.changed.fire(page);
    const fromSheet = window.activeTextEditor === undefined;
    await commands.executeCommand(fromSheet ? 'markdown.showPreview' : 'markdown.showPreviewToSide', page);
  }
}
