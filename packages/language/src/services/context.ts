/** What every editor service works with. */
import type { LangiumDocument } from 'langium';
import type { Range } from 'vscode-languageserver';
import type { Analyses } from './analyses.ts';
import type { ViewServices } from './file-view.ts';
import type { Settings } from './settings.ts';

export interface EditorContext {
  readonly view: ViewServices;
  readonly analyses: Analyses;
  readonly settings: () => Settings;
  /** Day that ages are counted to, ISO. */
  readonly today: () => string | undefined;
  /** Address of the explanation of a check; undefined for what is no check. */
  readonly explanation: (check: string) => string | undefined;
}

export function rangeOf(document: LangiumDocument, start: number, end: number): Range {
  return {
    start: document.textDocument.positionAt(start),
    end: document.textDocument.positionAt(end),
  };
}
