import type { PreviewShelter } from '@tautline/language/protocol';
import { element } from './dom.ts';
import { type Tab, tabStrip } from './tabs.ts';

export interface HeadActions {
  /** Another shelter of the file. */
  readonly choose: (shelter: string) => void;
  readonly open: (tab: string) => void;
  readonly save: () => void;
}

/** Which shelter it is, a way to save what is on show, and the tabs. */
export function sheetHead(
  shelter: PreviewShelter,
  all: readonly PreviewShelter[],
  tabs: readonly Tab[],
  chosen: string,
  { choose, open, save }: HeadActions,
): HTMLElement {
  return element(
    'header',
    {},
    chooser(shelter, all, choose),
    element('button', { type: 'button', class: 'link save', 'data-key': 'save', click: save }, 'Save as...'),
    tabStrip(tabs, chosen, open),
  );
}

function chooser(
  shelter: PreviewShelter,
  all: readonly PreviewShelter[],
  choose: HeadActions['choose'],
): HTMLElement {
  if (all.length < 2) {
    return element('h1', {}, shelter.name.replaceAll('_', ' '));
  }
  const select = element('select', {
    'aria-label': 'Shelter',
    'data-key': 'shelter',
    change: (event) => choose((event.target as HTMLSelectElement).value),
  });
  for (const { name } of all) {
    select.append(
      element('option', { value: name, selected: name === shelter.name }, name.replaceAll('_', ' ')),
    );
  }
  return select;
}
