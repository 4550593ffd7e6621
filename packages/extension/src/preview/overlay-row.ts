import type { Loads, Overlay } from '../details.ts';
import { element } from './dom.ts';

const titles: readonly (readonly [Overlay | 'none', string])[] = [
  ['none', 'sizes only'],
  ['use', 'use of limits'],
  ['deflected', 'movement'],
  ['bending', 'bending'],
  ['along', 'bending along the house'],
  ['water', 'standing water'],
];

export interface OverlayChoice {
  readonly overlay?: Overlay;
  readonly load?: string;
}

/** What is drawn over the section, and under which load. */
export function overlayRow(
  chosen: OverlayChoice,
  loads: Loads | undefined,
  choose: (choice: OverlayChoice) => void,
): HTMLElement {
  const select = (
    label: string,
    key: string,
    options: readonly (readonly [string, string])[],
    value: string,
    changed: (value: string) => void,
  ): HTMLElement => {
    const list = element('select', {
      'data-key': key,
      change: (event) => changed((event.target as HTMLSelectElement).value),
    });
    for (const [id, title] of options) {
      list.append(element('option', { value: id, selected: id === value }, title));
    }
    return element('label', {}, element('span', { class: 'quiet' }, label), list);
  };
  const overlay = chosen.overlay ?? 'none';
  return element(
    'div',
    { class: 'overlays', role: 'group', 'aria-label': 'Results drawn over the section' },
    select('Show', 'overlay', titles, overlay, (value) => {
      const known = titles.find(([id]) => id === value)?.[0];
      choose(known === undefined || known === 'none' ? {} : { ...chosen, overlay: known });
    }),
    loads !== undefined &&
      select(
        'under',
        'load',
        loads.choices.map(({ id, title }) => [id, title] as const),
        loads.shown,
        (load) => choose({ ...chosen, load }),
      ),
  );
}
