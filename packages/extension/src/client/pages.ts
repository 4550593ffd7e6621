import {
  commands,
  EventEmitter,
  type ExtensionContext,
  type Memento,
  TabInputWebview,
  Uri,
  window,
  workspace,
} from 'vscode';

const scheme = 'tautline-page';

const key = 'tautline.pages';
/** Pages that are kept for a workspace, the newest. */
const most = 12;

type Kept = readonly { readonly page: string; readonly markdown: string }[];

/**
 * Read-only pages of Markdown that are made on demand: a calculation, a table of variants. A page that the window
 * restores says that it is an earlier one.
 */
export class Pages {
  private readonly texts = new Map<string, string>();
  private readonly changed = new EventEmitter<Uri>();
  private readonly store: Memento;

  constructor(context: ExtensionContext) {
    this.store = context.workspaceState;
    context.subscriptions.push(
      this.changed,
      workspace.registerTextDocumentContentProvider(scheme, {
        onDidChange: this.changed.event,
        provideTextDocumentContent: (page) => this.texts.get(page.toString()) ?? this.before(page.toString()),
      }),
    );
  }

  /** Asked from the drawing sheet, a page comes over the sheet; asked from the text, beside it. */
  async show(title: string, markdown: string): Promise<void> {
    const page = Uri.from({ scheme, path: `/${title.replaceAll(/[\\/?#]/g, ' ')}.md` });
    this.texts.set(page.toString(), markdown);
    const others = this.kept().filter((one) => one.page !== page.toString());
    void this.store.update(key, [{ page: page.toString(), markdown }, ...others].slice(0, most));
    this.changed.fire(page);
    const fromSheet = window.tabGroups.activeTabGroup.activeTab?.input instanceof TabInputWebview;
    await commands.executeCommand(fromSheet ? 'markdown.showPreview' : 'markdown.showPreviewToSide', page);
  }

  private kept(): Kept {
    return this.store.get<Kept>(key, []);
  }

  private before(page: string): string {
    const found = this.kept().find((one) => one.page === page);
    return found === undefined
      ? 'Ask for this page again: it was made before this window was opened.\n'
      : `> **Earlier.** Made before this window was opened. Ask for it again to have it as the text is now.\n\n${found.markdown}`;
  }
}
