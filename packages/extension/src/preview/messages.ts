/** What the drawing sheet (webview) and the extension say to each other, by postMessage only. */
import type { PlainPlace, PreviewAnswer } from '@tautline/language/protocol';
import type { DetailAnswer, DetailWanted, FileWanted, Overlay } from '../details.ts';
import type { Look } from './space/contract.ts';

export type ToSheet =
  | {
      readonly type: 'answer';
      readonly answer: PreviewAnswer;
      readonly file: string;
    }
  /** The cursor stands on this line of this file. */
  | {
      readonly type: 'cursor';
      readonly uri: string;
      readonly line: number;
      readonly character: number;
    }
  | { readonly type: 'detail'; readonly id: string; readonly answer: DetailAnswer }
  /** Somebody wants to save something of what is on show. */
  | { readonly type: 'offer-files' }
  /** The server is away or did not answer: what is on show may be old. */
  | { readonly type: 'waiting'; readonly reason: string };

export type FromSheet =
  | { readonly type: 'ready' }
  | { readonly type: 'reveal'; readonly place: PlainPlace }
  | {
      readonly type: 'calculation';
      readonly place: PlainPlace;
      readonly check: string;
    }
  | { readonly type: 'write-assumed' }
  | {
      readonly type: 'detail';
      readonly id: string;
      readonly shelter: string;
      readonly wanted: DetailWanted;
    }
  | { readonly type: 'save'; readonly shelter: string; readonly files: readonly FileWanted[] };

/** Kept by the editor for each panel, and given back when the window is reloaded. */
export interface SheetState {
  readonly uri: string;
  readonly shelter?: string;
  readonly tab?: string;
  readonly zoom?: number;
  readonly overlay?: Overlay;
  /** Load that movement and bending are drawn under; the one that moves the frame most without it. */
  readonly load?: string;
  readonly look?: Look;
}
