import { type EvaluatedNotice, languageId } from '@tautline/language/protocol';
import {
  commands,
  type Disposable,
  type ExtensionContext,
  ViewColumn,
  type WebviewPanel,
  window,
} from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import type { SheetState } from '../preview/messages.ts';
import type { ExploredKept } from './explored-kept.ts';
import { PreviewSheet, sheetViewType } from './preview-sheet.ts';

/** The open drawing sheets, at most one a file. */
export class PreviewSheets implements Disposable {
  private readonly sheets = new Map<string, PreviewSheet>();
  private readonly held: Disposable[] = [];
  private readonly context: ExtensionContext;
  private readonly client: BaseLanguageClient;
  private readonly explored: ExploredKept;

  constructor(context: ExtensionContext, client: BaseLanguageClient, explored: ExploredKept) {
    this.context = context;
    this.client = client;
    this.explored = explored;
    explored.onFound((found) => this.sheets.get(found.uri)?.explored(found.explored));
    this.held.push(
      commands.registerCommand('tautline.openPreview', () => this.open()),
      commands.registerCommand('tautline.saveDrawing', () => this.save()),
      window.registerWebviewPanelSerializer(sheetViewType, {
        deserializeWebviewPanel: async (panel, state: SheetState | undefined) => {
          if (state === undefined) {
            panel.dispose();
            return;
          }
          this.keep(this.sheet(panel, state));
        },
      }),
      window.onDidChangeTextEditorSelection((change) => {
        if (change.textEditor.document.languageId === languageId) {
          for (const sheet of this.sheets.values()) {
            sheet.cursorMoved(change.textEditor.document.uri.toString(), change.selections[0]?.active);
          }
        }
      }),
      client.onDidChangeState((change) => {
        for (const sheet of this.sheets.values()) {
          sheet.serverChanged(change.newState === State.Running);
        }
      }),
    );
  }

  evaluated(notice: EvaluatedNotice): void {
    this.sheets.get(notice.uri)?.changed();
  }

  dispose(): void {
    for (const held of [...this.held, ...this.sheets.values()]) {
      held.dispose();
    }
  }

  private open(): void {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== languageId) {
      void window.showInformationMessage('Open a .shelter file first: the drawing sheet is drawn from it.');
      return;
    }
    const uri = document.uri.toString();
    const there = this.sheets.get(uri);
    if (there !== undefined) {
      there.show();
      return;
    }
    const panel = window.createWebviewPanel(
      sheetViewType,
      'Drawing sheet',
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableFindWidget: true },
    );
    this.keep(this.sheet(panel, { uri }));
  }

  /** Of the sheet in front, or of the sheet of the file in front. */
  private save(): void {
    const uri = window.activeTextEditor?.document.uri.toString() ?? '';
    const sheet = [...this.sheets.values()].find((one) => one.active) ?? this.sheets.get(uri);
    if (sheet === undefined) {
      void window.showInformationMessage('Open the drawing sheet first: what it shows is saved.');
    } else {
      sheet.offerFiles();
    }
  }

  private sheet(panel: WebviewPanel, state: SheetState): PreviewSheet {
    return new PreviewSheet(this.context.extensionUri, this.client, panel, state, this.explored);
  }

  private keep(sheet: PreviewSheet): void {
    this.sheets.get(sheet.uri)?.dispose();
    this.sheets.set(sheet.uri, sheet);
    sheet.onClosed(() => {
      if (this.sheets.get(sheet.uri) === sheet) {
        this.sheets.delete(sheet.uri);
      }
    });
  }
}
