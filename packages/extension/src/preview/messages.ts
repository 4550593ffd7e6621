/** What the drawing sheet (webview) and the extension say to each other, by postMessage only. */
import type { ExploreAnswer, PlainPlace, PreviewAnswer, PreviewView } from '@tautline/language/protocol';
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
  /** Make a picture of this drawing, so many pixels wide. */
  | { readonly type: 'rasterise'; readonly id: number; readonly svg: string; readonly width: number }
  /** What exploring found, or why there is nothing. */
  | { readonly type: 'explored'; readonly shelter: string; readonly answer: ExploreAnswer }
  /** The server is away or did not answer: what is on show may be old. */
  | { readonly type: 'waiting'; readonly reason: string };

export type FromSheet =
  | { readonly type: 'ready' }
  /** How wide the page is, px, where it is narrow; before `ready`, and when it changes. */
  | { readonly type: 'width'; readonly wide?: number }
  /**
   * Which drawing of which shelter is on show (of the first without a name); before `ready`, and when it changes. The
   * others are asked for when they are looked at.
   */
  | { readonly type: 'view'; readonly view: PreviewView | 'none'; readonly shelter?: string }
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
  /** Answer to `rasterise`: bytes of a PNG; without them the page could not make it. */
  | { readonly type: 'raster'; readonly id: number; readonly base64?: string }
  | { readonly type: 'explore'; readonly shelter: string }
  | { readonly type: 'write-variant'; readonly shelter: string; readonly number: number }
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
  /** Gust that results are drawn at, m/s; the site's without it. */
  readonly gust?: number;
  readonly look?: Look;
}
