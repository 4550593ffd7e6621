import type { PreviewName } from '@tautline/language/protocol';
import { element } from './dom.ts';
import { shownName } from './shown-name.ts';
import { type Tab, tabStrip } from './tabs.ts';

export interface HeadActions {
  /** Another shelter of the file. */
  readonly choose: (shelter: string) => void;
  readonly open: (tab: string) => void;
  readonly save: () => void;
}

/** Which shelter it is, a way to save what is on show, and the tabs. */
export function sheetHead(
  shelter: string,
  all: readonly PreviewName[],
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

/** The name of the shelter; where there are several, a list to choose from. */
export function chooser(
  shelter: string,
  all: readonly PreviewName[],
  choose: HeadActions['choose'],
): HTMLElement {
  if (all.length < 2) {
    return element('h1', {}, shownName(shelter));
  }
  const select = element('select', {
    'aria-label': 'Shelter',
    'data-key': 'shelter',
    change: (event) => choose((event.target as HTMLSelectElement).value),
  });
  for (const { name } of all) {
    select.append(element('option', { value: name, selected: name === shelter }, shownName(name)));
  }
  return select;
}
