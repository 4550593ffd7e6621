/** Sheets that keep to the room they are shown in, though dimensions, guys and anchors stand beside the house. */
import { NARROWEST } from './frame.ts';
import type { Drawing, ViewOptions } from './shapes.ts';

/** Draws the house at a share (0 to 1) of the size it would have. */
type Draw<S, O extends ViewOptions, D extends Drawing | undefined> = (
  subject: S,
  options: O,
  share: number,
) => D;

/** Tries until the sheet fits. */
const TRIES = 8;
/** A sheet so many times too large is left: letters a little smaller are read more easily than a house half as large. */
const NEARLY = 1.07;
/** Nothing can be told apart in a house drawn smaller than this share of its usual size. */
const LEAST = 0.4;

/** A view whose house is drawn smaller until the sheet is as narrow and low as asked, or as it goes. */
export const keptToSheet =
  <S, O extends ViewOptions, D extends Drawing | undefined>(draw: Draw<S, O, D>) =>
  (subject: S, options: O): D => {
    let best = draw(subject, options, 1);
    if (options.wide === undefined) return best;
    let least = best ? tooLarge(best, options) : 0;
    let share = 1;
    let last = least;
    for (let n = 0; n < TRIES && least > NEARLY && share > LEAST; n++) {
      // What stands outside the house shrinks with it, so a part of what is too much does; where a text no longer
      // finds room in its line and steps out of it, a sheet grows before it shrinks again.
      share = Math.max(LEAST, share * Math.min(0.96, 1 - 0.7 * (1 - 1 / Math.max(1, last))));
      const next = draw(subject, options, share);
      if (!next) break;
      last = tooLarge(next, options);
      if (last < least) [best, least] = [next, last];
    }
    return best;
  };

/** How many times too wide or too tall a sheet is. */
const tooLarge = ({ width, height }: Drawing, { wide = width, tall = height }: ViewOptions): number =>
  Math.max(width / Math.max(NARROWEST, wide), height / tall);
