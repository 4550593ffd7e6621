import type { UseAtGust } from '../details.ts';
import { element } from './dom.ts';

const words = { reached: 'limit reached', near: 'near its limit', holds: 'holds' } as const;
const signs = { reached: '×', near: '!', holds: '' } as const;
const classes = { reached: 'fails', near: 'near', holds: '' } as const;

/** How near each part is to its limit at the gust that is drawn, `said` in a sentence; a click goes to its line. */
export function usesView(uses: readonly UseAtGust[], said: string, go: (part: string) => void): HTMLElement {
  const body = element('tbody', {});
  for (const one of uses) {
    const fill = element('span', { class: 'fill' });
    fill.style.setProperty('width', `${Math.min(100, Math.max(0, one.use / 1.5) * 100)}%`);
    body.append(
      element(
        'tr',
        { class: classes[one.state] },
        element(
          'th',
          { scope: 'row' },
          element('span', { class: `flag ${classes[one.state]}`, 'aria-hidden': 'true' }, signs[one.state]),
          element(
            'button',
            { type: 'button', class: 'link', title: 'Go to its line', click: () => go(one.part) },
            one.what,
          ),
          one.meant && element('span', { class: 'quiet' }, ' (meant to give way)'),
        ),
        element('td', {}, element('code', {}, one.check)),
        element(
          'td',
          { class: 'value' },
          element(
            'span',
            { class: 'used' },
            element(
              'span',
              { class: 'meter', 'aria-hidden': 'true' },
              fill,
              element('span', { class: 'tick' }),
            ),
            one.useText,
            element('span', { class: 'unseen' }, `, ${words[one.state]}`),
          ),
        ),
      ),
    );
  }
  return element(
    'div',
    { class: 'uses' },
    element('p', { class: 'quiet', role: 'status' }, said.replace(/ (limits? (is|are) reached): .*/, ' $1.')),
    element(
      'table',
      {},
      element('caption', { class: 'unseen' }, 'What would happen, and what share of its limit is reached'),
      body,
    ),
  );
}
