import type { PlainPlace, PreviewFinding, PreviewShelter } from '@tautline/language/protocol';
import { element } from './dom.ts';
import { isOpen, type Standing, standingOf } from './standing.ts';

export interface FindingActions {
  readonly go: (place: PlainPlace) => void;
  readonly calculation: (finding: PreviewFinding) => void;
  readonly writeAssumed: () => void;
}

const order: Readonly<Record<Standing, number>> = { fails: 0, near: 1, unknown: 2, passes: 3, accepted: 4 };

/** What fails, what is to be watched, what was assumed, what was not checked, what passes. */
export function findingsView(shelter: PreviewShelter, actions: FindingActions): HTMLElement {
  const sorted = [...shelter.findings].sort(
    (one, other) =>
      order[standingOf(one)] - order[standingOf(other)] || (other.utilisation ?? 0) - (one.utilisation ?? 0),
  );
  const those = (which: Standing): PreviewFinding[] => sorted.filter((one) => standingOf(one) === which);
  const [open, accepted] = [sorted.filter(isOpen), those('accepted')];
  const [passes, unknown] = [those('passes'), those('unknown')];
  return element(
    'div',
    { class: 'pages' },
    open.length === 0
      ? element('p', { class: 'empty' }, 'Nothing of what was checked fails or is to be watched.')
      : list(open, actions),
    section('Accepted by you', accepted.length, list(accepted, actions)),
    section('Assumed', shelter.assumed.length, assumed(shelter, actions)),
    section('Not checked', unknown.length + shelter.notChecked.length, notChecked(shelter, unknown, actions)),
    section('Passes', passes.length, list(passes, actions), false),
  );
}

function section(title: string, count: number, body: HTMLElement, open = true): HTMLElement | undefined {
  if (count === 0) {
    return undefined;
  }
  return element(
    'details',
    { class: 'group', open },
    element('summary', {}, element('h2', {}, title, ' ', element('span', { class: 'count' }, String(count)))),
    body,
  );
}

function list(findings: readonly PreviewFinding[], actions: FindingActions): HTMLElement {
  const made = element('ol', { class: 'findings' });
  for (const finding of findings) {
    made.append(card(finding, actions));
  }
  return made;
}

function card(finding: PreviewFinding, actions: FindingActions): HTMLElement {
  const old = finding.old === true ? 'as before the last edits' : undefined;
  const details = [old, finding.loadCase, finding.source].filter((text) => text !== undefined).join(' · ');
  return element(
    'li',
    { class: `finding ${standingOf(finding)}` },
    element(
      'div',
      { class: 'finding-head' },
      element('span', { class: 'verdict' }, finding.word),
      element('code', {}, finding.id),
      finding.utilisation !== undefined && meter(finding.utilisation),
    ),
    element(
      'button',
      {
        type: 'button',
        class: 'message',
        title: 'Go to its line',
        click: () => actions.go(finding.place),
      },
      finding.message,
    ),
    finding.accepted !== undefined && element('p', { class: 'quiet' }, `Because: ${finding.accepted}`),
    element(
      'p',
      { class: 'quiet' },
      details,
      details !== '' && ' · ',
      element(
        'button',
        {
          type: 'button',
          class: 'link',
          click: () => actions.calculation(finding),
        },
        'calculation',
      ),
    ),
  );
}

/** Demand over capacity: the bar ends at 150 %, the tick stands at the limit. */
function meter(utilisation: number): HTMLElement {
  const bar = element('span', { class: 'meter', 'aria-hidden': 'true' });
  const fill = element('span', { class: 'fill' });
  fill.style.setProperty('width', `${Math.min(100, Math.max(0, utilisation / 1.5) * 100)}%`);
  bar.append(fill, element('span', { class: 'tick' }));
  return element(
    'span',
    { class: 'used' },
    bar,
    utilisation > 10 ? 'more than 10 times' : `${Math.round(utilisation * 100)} % used`,
  );
}

function assumed(shelter: PreviewShelter, actions: FindingActions): HTMLElement {
  const body = element('tbody', {});
  for (const one of shelter.assumed) {
    body.append(
      element(
        'tr',
        {},
        element(
          'td',
          {},
          element(
            'button',
            {
              type: 'button',
              class: 'link',
              click: () => actions.go(one.place),
            },
            one.what,
          ),
        ),
        element('td', { class: 'value' }, one.value),
      ),
    );
  }
  return element(
    'div',
    {},
    element('table', {}, body),
    element(
      'button',
      { type: 'button', class: 'action', click: actions.writeAssumed },
      'Write these into the text',
    ),
  );
}

function notChecked(
  shelter: PreviewShelter,
  unknown: readonly PreviewFinding[],
  actions: FindingActions,
): HTMLElement {
  const body = element('dl', { class: 'not-checked' });
  for (const one of unknown) {
    body.append(
      element(
        'dt',
        {},
        element('button', { type: 'button', class: 'link', click: () => actions.go(one.place) }, one.id),
      ),
      element('dd', {}, one.message),
    );
  }
  for (const one of shelter.notChecked) {
    body.append(element('dt', {}, one.what), element('dd', {}, one.why));
  }
  return body;
}
