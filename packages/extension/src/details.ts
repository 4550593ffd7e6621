/**
 * What the drawing sheet asks for only when it is on show: overlays, the chart of gusts, the house in space,
 * files to save. Plain data, texts already in the reader's units.
 */
import type { Scene3d } from '@tautline/drawing';
import type { Explored, PreviewView } from '@tautline/language/protocol';

/** `DetailQuestion` -> `DetailAnswer`. */
export const detailRequest = 'tautline/sheet/detail';

export type Overlay = 'use' | 'deflected' | 'bending' | 'along' | 'water';

/** An overlay over the section, or over the side where it is of what bends along the house; `load` is an id of the `loads` of an earlier answer. */
export interface OverlayWanted {
  readonly kind: 'overlay';
  readonly overlay: Overlay;
  readonly load?: string;
  /** The wind at this gust instead of the site's, m/s: one of the stops of an earlier answer. */
  readonly gust?: number;
}

export type DetailWanted =
  | OverlayWanted
  /** The chart of what exploring found. */
  | { readonly kind: 'variants'; readonly explored: Explored }
  /** A drawing by itself. */
  | { readonly kind: 'view'; readonly view: PreviewView }
  | { readonly kind: 'gusts' }
  | { readonly kind: 'space' }
  | { readonly kind: 'file'; readonly file: FileWanted };

export type FileWanted =
  | {
      /** A PNG is made by the page from the SVG: the server sends that. */
      readonly format: 'svg' | 'dxf' | 'png';
      readonly view: PreviewView | 'gusts';
      /** Drawn over a section. */
      readonly over?: OverlayWanted;
    }
  | { readonly format: 'csv' }
  /** The house in space as binary glTF. */
  | { readonly format: 'glb' };

export interface DetailQuestion {
  readonly uri: string;
  /** Width of the place a drawing is shown in, px, where it is a narrow one. */
  readonly wide?: number;
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
      readonly gusts?: GustScale;
      /** Hardest first. */
      readonly uses?: readonly UseAtGust[];
    }
  | {
      readonly kind: 'space';
      readonly scene: Scene3d;
      /** Side of a square of the grid on the ground, m. */
      readonly grid: number;
      readonly description: string;
    }
  | { readonly kind: 'file'; readonly name: string; readonly text: string }
  | { readonly kind: 'file'; readonly name: string; readonly base64: string }
  /** A newer question of the same kind came before this one was answered. */
  | { readonly kind: 'overtaken' }
  /** There is nothing to show: one sentence that says why. */
  | { readonly kind: 'nothing'; readonly why: string };

export interface Loads {
  readonly choices: readonly { readonly id: string; readonly title: string }[];
  readonly shown: string;
}

/** Gusts to slide through, calm first. */
export interface GustScale {
  readonly stops: readonly { readonly gust: number; readonly text: string }[];
  /** Index of the stop that is drawn. */
  readonly shown: number;
  /** Gusts one looks for, e.g. "site's gust". */
  readonly marks: readonly { readonly title: string; readonly stop: number }[];
}

/** How near a part is to its limit at a gust. */
export interface UseAtGust {
  readonly part: string;
  /** What happens at the limit, and the check that sets it. */
  readonly what: string;
  readonly check: string;
  /** 1 is the limit. */
  readonly use: number;
  readonly useText: string;
  readonly state: 'reached' | 'near' | 'holds';
  /** Declared to give way first. */
  readonly meant: boolean;
}
