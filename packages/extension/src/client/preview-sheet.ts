import {
  type Explored,
  type PreviewAnswer,
  type PreviewView,
  previewRequest,
} from '@tautline/language/protocol';
import { commands, type Disposable, type Position, Uri, type WebviewPanel, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type DetailAnswer, type DetailQuestion, detailRequest } from '../details.ts';
import type { FromSheet, SheetState, ToSheet } from '../preview/messages.ts';
import { reveal } from './commands.ts';
import type { ExploredKept } from './explored-kept.ts';
import { sheetPage } from './preview-page.ts';
import { saveFile } from './save-file.ts';
import { exploreShelter, Pictures, writeVariant } from './sheet-work.ts';

export const sheetViewType = 'tautline.preview';

/**
 * One drawing sheet beside its file. Asks the server only while it is on show; what changed meanwhile is
 * asked for when it is shown again. Moving the cursor marks a part and never moves the text; a click on
 * a part moves the text, and the cursor event that this causes is not sent back (`landing`): the sheet has
 * marked what was clicked, and the line may describe other parts too.
 */
export class PreviewSheet implements Disposable {
  readonly uri: string;
  private readonly panel: WebviewPanel;
  private readonly client: BaseLanguageClient;
  private readonly held: Disposable[] = [];
  private readonly pictures = new Pictures((message) => this.post(message));
  private dirty = true;
  /** Of a narrow page, px. */
  private wide: number | undefined;
  private view: PreviewView | 'none' = 'section';
  /** Name of the shelter on show, '' for the first. */
  private one = '';
  private ready = false;
  private asking = false;
  private landing: string | undefined;

  private readonly kept: ExploredKept;

  constructor(
    extensionUri: Uri,
    client: BaseLanguageClient,
    panel: WebviewPanel,
    state: SheetState,
    kept: ExploredKept,
  ) {
    this.kept = kept;
    this.uri = state.uri;
    this.panel = panel;
    this.client = client;
    const roots = [Uri.joinPath(extensionUri, 'dist'), Uri.joinPath(extensionUri, 'media')];
    panel.title = `${fileName(this.uri)}: sheet`;
    panel.iconPath = {
      light: Uri.joinPath(extensionUri, 'media', 'file-light.svg'),
      dark: Uri.joinPath(extensionUri, 'media', 'file-dark.svg'),
    };
    panel.webview.options = { enableScripts: true, localResourceRoots: roots };
    this.held.push(
      panel.webview.onDidReceiveMessage((message: FromSheet) => void this.receive(message)),
      panel.onDidChangeViewState(() => {
        if (!panel.visible) {
          // A hidden panel loses its page; it says `ready` again when it is shown.
          this.ready = false;
          this.dirty = true;
        }
      }),
    );
    panel.webview.html = sheetPage(panel.webview, extensionUri, state);
  }

  show(): void {
    this.panel.reveal(undefined, true);
  }

  get active(): boolean {
    return this.panel.active;
  }

  /** The page knows what is on show: it answers with the files to choose from. */
  offerFiles(): void {
    this.post({ type: 'offer-files' });
  }

  /** Somebody had a shelter of this file explored. */
  explored(answer: Explored): void {
    this.post({ type: 'explored', shelter: answer.shelter, answer });
  }

  onClosed(act: () => void): void {
    this.held.push(this.panel.onDidDispose(act));
  }

  changed(): void {
    this.dirty = true;
    void this.ask();
  }

  serverChanged(running: boolean): void {
    if (running) {
      this.changed();
    } else {
      this.post({
        type: 'waiting',
        reason: 'The language server is starting again.',
      });
    }
  }

  cursorMoved(uri: string, position: Position | undefined): void {
    if (position === undefined || !workspace.getConfiguration('tautline').get('preview.followCursor', true)) {
      return;
    }
    const here = `${uri}:${position.line}`;
    const landed = this.landing === here;
    this.landing = undefined;
    if (!landed) {
      this.post({
        type: 'cursor',
        uri,
        line: position.line,
        character: position.character,
      });
    }
  }

  dispose(): void {
    this.panel.dispose();
    for (const held of this.held) {
      held.dispose();
    }
  }

  private async receive(message: FromSheet): Promise<void> {
    switch (message.type) {
      case 'width':
        this.wide = message.wide;
        if (this.ready) {
          this.dirty = true;
          await this.ask();
        }
        break;
      case 'view':
        this.view = message.view;
        this.turnTo(message.shelter ?? '');
        break;
      case 'ready':
        this.ready = true;
        this.dirty = true;
        for (const found of this.kept.of(this.uri)) {
          this.explored(found);
        }
        await this.ask();
        break;
      case 'reveal': {
        const { place } = message;
        this.landing = `${place.uri}:${place.range.start.line}`;
        await reveal(place);
        break;
      }
      case 'calculation':
        await commands.executeCommand(
          'tautline.showCalculation',
          message.place.uri,
          message.place.range.start,
          message.check,
        );
        break;
      case 'write-assumed':
        await commands.executeCommand('tautline.writeAssumed', this.uri);
        break;
      case 'detail': {
        const { id, shelter, wanted } = message;
        this.post({
          type: 'detail',
          id,
          answer: await this.detail({ uri: this.uri, shelter, wanted, ...this.narrow() }),
        });
        break;
      }
      case 'save':
        await saveFile(message.files, Uri.parse(this.uri), {
          ask: (file) =>
            this.detail({ uri: this.uri, shelter: message.shelter, wanted: { kind: 'file', file } }),
          picture: (svg, width) => this.pictures.ask(svg, width),
        });
        break;
      case 'raster':
        this.pictures.came(message.id, message.base64);
        break;
      case 'explore': {
        const { shelter } = message;
        const answer = await exploreShelter(this.client, this.uri, shelter);
        if ('why' in answer) {
          this.post({ type: 'explored', shelter, answer });
        } else {
          this.kept.found(this.uri, answer);
        }
        break;
      }
      case 'write-variant':
        await writeVariant(this.client, {
          uri: this.uri,
          shelter: message.shelter,
          number: message.number,
        });
        break;
    }
  }

  private async detail(question: DetailQuestion): Promise<DetailAnswer> {
    try {
      return await this.client.sendRequest<DetailAnswer>(detailRequest, question);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      return { kind: 'nothing', why: `No answer from the language server (${why}).` };
    }
  }

  private narrow(): { readonly wide?: number } {
    return this.wide === undefined ? {} : { wide: this.wide };
  }

  private post(message: ToSheet): void {
    if (this.ready && this.panel.visible) {
      void this.panel.webview.postMessage(message);
    }
  }

  private turnTo(shelter: string): void {
    if (shelter !== this.one) {
      this.one = shelter;
      this.changed();
    }
  }

  /** One question at a time; a change that comes while the server works is asked about afterwards. */
  private async ask(): Promise<void> {
    if (this.asking || !this.ready || !this.panel.visible) {
      return;
    }
    this.asking = true;
    try {
      while (this.dirty && this.panel.visible) {
        this.dirty = false;
        // A sheet restored without its editor: the server has to know the text.
        await workspace.openTextDocument(Uri.parse(this.uri));
        const answer = await this.client.sendRequest<PreviewAnswer>(previewRequest, {
          uri: this.uri,
          view: this.view,
          one: this.one,
          ...this.narrow(),
        });
        this.post({ type: 'answer', answer, file: fileName(this.uri) });
        this.sendCursor();
      }
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.post({
        type: 'waiting',
        reason: `No answer from the language server (${why}).`,
      });
    } finally {
      this.asking = false;
    }
  }

  private sendCursor(): void {
    const editor = window.visibleTextEditors.find((one) => one.document.uri.toString() === this.uri);
    this.cursorMoved(this.uri, editor?.selection.active);
  }
}

function fileName(uri: string): string {
  return Uri.parse(uri).path.split('/').at(-1) ?? uri;
}
