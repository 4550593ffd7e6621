/** What the page and its second script, loaded with the first look at the house in space, know of each other. */
import type { Scene3d } from '@tautline/drawing';

/** Where the looker stands: angles in radians, distance as a multiple of the house's own size. */
export interface Look {
  readonly turn: number;
  readonly tilt: number;
  readonly away: number;
}

export interface SpaceActions {
  /** The pointer hit a part of this id, or none. */
  readonly pick: (part: string | undefined) => void;
  readonly point: (part: string | undefined) => void;
  readonly looked: (look: Look) => void;
}

export interface SpaceView {
  show(scene: Scene3d, grid: number): void;
  /** Tells parts apart: by id, the word for how each one shows. */
  mark(stateOf: (part: string) => PartState): void;
  /** The editor's colours have changed. */
  recolour(): void;
}

export type PartState = 'plain' | 'near' | 'fails' | 'pointed' | 'marked';

/** Undefined where the browser has no way to draw in space. */
export type CreateSpace = (host: HTMLElement, look: Look, actions: SpaceActions) => SpaceView | undefined;

declare global {
  var tautlineSpace: CreateSpace | undefined;
}
