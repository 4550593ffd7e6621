import { element } from './dom.ts';

/** Buttons that change the size of the drawing. */
export function zoomButtons(zoom: () => number, to: (zoom: number) => void): HTMLElement {
  const button = (sign: string, title: string, act: () => void): HTMLElement =>
    element('button', { type: 'button', title, 'aria-label': title, click: act }, sign);
  const set = (wanted: number): void => to(Math.min(6, Math.max(0.5, wanted)));
  return element(
    'div',
    { class: 'zoom', role: 'group', 'aria-label': 'Size of the drawing' },
    button('−', 'Smaller', () => set(zoom() / 1.3)),
    button('fit', 'Fit the width', () => set(1)),
    button('+', 'Larger', () => set(zoom() * 1.3)),
  );
}
