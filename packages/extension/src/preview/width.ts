/** Width from which on drawings need no narrow layout, px, and the steps below it in which it is told. */
const ROOMY = 760;
const STEP = 40;
/** Time that somebody who drags the edge of the page is left alone, ms. */
const REST = 250;

/** The width to draw for: undefined where there is room enough. */
export const widthTold = (px: number): number | undefined =>
  px >= ROOMY ? undefined : Math.floor(px / STEP) * STEP;

/** Tells the width of the page at once and whenever it has changed by a step; a hidden page has none. */
export function tellWidth(page: HTMLElement, tell: (wide: number | undefined) => void): void {
  let told: number | undefined;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const look = (): void => {
    const px = page.clientWidth;
    const wide = widthTold(px);
    if (px > 0 && wide !== told) {
      told = wide;
      tell(wide);
    }
  };
  look();
  new ResizeObserver(() => {
    clearTimeout(waiting);
    waiting = setTimeout(look, REST);
  }).observe(page);
}
