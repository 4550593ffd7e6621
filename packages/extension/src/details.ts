/**
 * What the drawing sheet asks for only when it is on show: overlays, the chart of gusts, the house in space,
 * files to save. Plain data, texts already in the reader's units.
 */
import type { Scene3d } from '@tautline/drawing';
import type { PreviewView } from '@tautline/language/protocol';

/** `DetailQuestion` -> `DetailAnswer`. */
export const detailRequest = 'tautline/sheet/detail';

export type Overlay = 'use' | 'deflected' | 'bending' | 'water';

/** An overlay over the section; `load` is an id of the `loads` of an earlier answer. */
export interface OverlayWanted {
  readonly kind: 'overlay';
  readonly overlay: Overlay;
  readonly load?: string;
}

export type DetailWanted =
  | OverlayWanted
  | { readonly kind: 'gusts' }
  | { readonly kind: 'space' }
  | { readonly kind: 'file'; readonly file: FileWanted };

export type FileWanted =
  | {
      readonly format: 'svg' | 'dxf';
      readonly view: PreviewView | 'gusts';
      /** Drawn over a section. */
      readonly over?: OverlayWanted;
    }
  | { readonly format: 'csv' };

export interface DetailQuestion {
  readonly uri: string;
  readonly shelter: string;
  readonly wanted: DetailWanted;
}

export type DetailAnswer =
  | {
      readonly kind: 'drawing';
      readonly svg: string;
      readonly description: string;
      /** Sentences for the foot of the drawing. */
      readonly captions: readonly string[];
      readonly loads?: Loads;
    }
  | {
      readonly kind: 'space';
      readonly scene: Scene3d;
      /** Side of a square of the grid on the ground, m. */
      readonly grid: number;
      readonly description: string;
    }
  | { readonly kind: 'file'; readonly name: string; readonly text: string }
  /** There is nothing to show: one sentence that says why. */
  | { readonly kind: 'nothing'; readonly why: string };

export interface Loads {
  readonly choices: readonly { readonly id: string; readonly title: string }[];
  readonly shown: string;
}
