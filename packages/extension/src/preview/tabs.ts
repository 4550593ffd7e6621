import { element } from './dom.ts';

export interface Tab {
  readonly id: string;
  readonly title: string;
  /** Shown beside the title when it is not zero. */
  readonly count?: number;
}

/** Tabs of one sheet: arrow keys go round, as a screen reader expects of a tab list. */
export function tabStrip(tabs: readonly Tab[], chosen: string, choose: (id: string) => void): HTMLElement {
  const strip = element('div', {
    role: 'tablist',
    class: 'tabs',
    'aria-label': 'Views',
  });
  for (const [index, tab] of tabs.entries()) {
    const on = tab.id === chosen;
    strip.append(
      element(
        'button',
        {
          type: 'button',
          role: 'tab',
          id: `tab-${tab.id}`,
          'data-key': `tab-${tab.id}`,
          'aria-selected': String(on),
          'aria-controls': 'panel',
          tabindex: on ? 0 : -1,
          click: () => choose(tab.id),
          keydown: (event) => {
            const step = stepOf((event as KeyboardEvent).key, index, tabs.length);
            const next = step === undefined ? undefined : tabs[step];
            if (next !== undefined) {
              event.preventDefault();
              choose(next.id);
              document.getElementById(`tab-${next.id}`)?.focus();
            }
          },
        },
        tab.title,
        tab.count !== undefined && tab.count > 0 && element('span', { class: 'count' }, String(tab.count)),
      ),
    );
  }
  return strip;
}

function stepOf(key: string, index: number, count: number): number | undefined {
  switch (key) {
    case 'ArrowRight':
      return (index + 1) % count;
    case 'ArrowLeft':
      return (index + count - 1) % count;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return undefined;
  }
}
