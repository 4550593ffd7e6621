import type { PreviewPart, PreviewShelter } from '@tautline/language/protocol';
import type { SheetState } from './messages.ts';

/** What the tabs need of the sheet they stand on. */
export interface TabHost {
  state(): SheetState;
  /** Remembers, without drawing again. */
  keep(state: SheetState): void;
  /** Remembers and draws again. */
  replace(state: SheetState): void;
  /** Draws what is worked out on demand anew, in its place. */
  refresh(): void;
  current(): PreviewShelter | undefined;
  reveal(part: PreviewPart): void;
  point(part: PreviewPart | undefined): void;
}
