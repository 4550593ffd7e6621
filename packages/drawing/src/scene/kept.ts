/** Sheets that keep to the width they are shown at, though dimensions, guys and anchors stand beside the house. */
import { NARROWEST } from './frame.ts';
import type { Drawing, ViewOptions } from './shapes.ts';

/** Draws with so much less room for the house (page units) than the usual. */
type Draw<S, O extends ViewOptions, D extends Drawing | undefined> = (
  subject: S,
  options: O,
  less: number,
) => D;

/** Tries until the sheet fits. */
const TRIES = 6;
/** A sheet so many times too wide is left: letters a little smaller are read more easily than a house half as large. */
const NEARLY = 1.07;

/** A view that is drawn smaller until its sheet is as narrow as asked, or as narrow as it goes. */
export const keptToWidth =
  <S, O extends ViewOptions, D extends Drawing | undefined>(draw: Draw<S, O, D>) =>
  (subject: S, options: O): D => {
    let last = draw(subject, options, 0);
    if (options.wide === undefined) return last;
    const wide = Math.max(NARROWEST, options.wide);
    let best = last;
    let less = 0;
    for (let n = 0; n < TRIES && last && best && best.width > NEARLY * wide; n++) {
      // What stands outside the house shrinks with it, so a part of what is too much does at first; where a text
      // no longer finds room in its line and steps out of it, a sheet grows before it shrinks again.
      less += Math.max(8, (last.width - wide) * 0.6);
      last = draw(subject, options, less);
      if (last && last.width < best.width) best = last;
    }
    return best;
  };
