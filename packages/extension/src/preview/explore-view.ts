import type { ExploreAnswer, Explored, ExploredVariant } from '@tautline/language/protocol';
import { element } from './dom.ts';

export interface ExploreActions {
  readonly explore: () => void;
  readonly write: (number: number) => void;
}

/** What may vary: a button that has it worked out, then every variant with what it comes to; `old` after an edit. */
export function exploreView(
  answer: ExploreAnswer | 'under way' | undefined,
  chart: readonly HTMLElement[],
  old: boolean,
  { explore, write }: ExploreActions,
): HTMLElement[] {
  const start = element(
    'button',
    { type: 'button', class: 'action', 'data-key': 'explore', click: explore },
    answer !== undefined && answer !== 'under way' && 'variants' in answer
      ? 'Work them out again'
      : 'Work out every variant',
  );
  if (answer === undefined || answer === 'under way' || 'why' in answer) {
    const text =
      answer === 'under way'
        ? 'Every variant is being worked out. The notice at the corner of the window tells how far it is, and can stop it.'
        : answer === undefined
          ? 'A line such as `vary bows spaced from 3 ft to 5 ft by 6 in` says what may vary. Every combination is checked and counted; the text stays as it is until you write one of them into it.'
          : answer.why;
    return [
      element(
        'div',
        { class: 'pages' },
        element('p', { class: 'empty', role: 'status' }, ...coded(text)),
        answer !== 'under way' && element('p', { class: 'middle' }, start),
      ),
    ];
  }
  const changed =
    old &&
    element(
      'p',
      { class: 'stale', role: 'status' },
      element('strong', {}, 'Stale'),
      ' The text has changed since these variants were worked out.',
    );
  return [
    ...(changed ? [changed] : []),
    ...chart,
    element('div', { class: 'variants' }, table(answer, write), start),
  ];
}

/** What stands between backticks as code. */
const coded = (text: string): (string | HTMLElement)[] =>
  text.split('`').map((piece, index) => (index % 2 === 1 ? element('code', {}, piece) : piece));

function table(explored: Explored, write: (number: number) => void): HTMLElement {
  const { axes, variants, of } = explored;
  const rank = ({ best, holds }: ExploredVariant): number => (best ? 0 : holds ? 1 : 2);
  const rows = [...variants].sort((a, b) => rank(a) - rank(b) || a.number - b.number);
  const body = element('tbody', {});
  for (const one of rows) {
    body.append(
      element(
        'tr',
        { 'data-variant': one.number },
        element('th', { scope: 'row' }, `${one.best ? '● ' : one.holds ? '○ ' : '× '}${one.number}`),
        element(
          'td',
          {},
          element(
            'button',
            {
              type: 'button',
              class: 'link',
              'data-key': `write ${one.number}`,
              'aria-label': `Write variant ${one.number} into the text`,
              click: () => write(one.number),
            },
            'write into text',
          ),
        ),
        ...one.values.map((value) => element('td', {}, value)),
        element('td', { class: one.holds ? '' : 'fails' }, one.verdict),
        ...[one.costText, one.gustText, one.headroomText, one.usedText].map((text) =>
          element('td', { class: 'value' }, text ?? '—'),
        ),
      ),
    );
  }
  const head = element(
    'tr',
    {},
    ...['', '', ...axes, 'verdict'].map((name) => element('th', { scope: 'col' }, name)),
    ...['cost', 'first failure at', 'headroom', 'most used'].map((name) =>
      element('th', { scope: 'col', class: 'value' }, name),
    ),
  );
  return element(
    'table',
    {},
    element(
      'caption',
      {},
      `${variants.length === of ? `All ${of}` : `${variants.length} of ${of}`} variants; ● no other beats it, ○ nothing fails, × something fails`,
    ),
    element('thead', {}, head),
    body,
  );
}
