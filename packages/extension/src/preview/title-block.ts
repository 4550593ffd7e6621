import type { PreviewShelter } from '@tautline/language/protocol';
import { element } from './dom.ts';
import { shownName } from './shown-name.ts';
import { type Standing, standingOf } from './standing.ts';

/** The strip at the foot of the sheet: what it is, and the few facts one looks for first. */
export function titleBlock(shelter: PreviewShelter, file: string, toFindings: () => void): HTMLElement {
  const cell = (label: string, value: string): HTMLElement =>
    element('div', { class: 'cell' }, element('dt', {}, label), element('dd', {}, value));
  const standing = shelter.findings.map(standingOf);
  const count = (which: Standing): number => standing.filter((one) => one === which).length;
  const [fails, watched, unknown] = [
    count('fails'),
    count('near'),
    shelter.notChecked.length + count('unknown'),
  ];
  return element(
    'dl',
    { class: 'title-block' },
    cell(file, shelter.title === '' ? shownName(shelter.name) : shelter.title),
    ...shelter.facts.map((fact) => cell(fact.label, fact.value)),
    element(
      'div',
      { class: 'cell tally' },
      element('dt', {}, 'Checks'),
      element(
        'dd',
        {},
        element(
          'button',
          {
            type: 'button',
            class: 'link',
            'data-key': 'tally',
            click: toFindings,
          },
          element('span', { class: fails > 0 ? 'fails' : '' }, `${fails} ${fails === 1 ? 'fails' : 'fail'}`),
          ' · ',
          element('span', { class: watched > 0 ? 'near' : '' }, `${watched} to watch`),
          ' · ',
          element('span', {}, `${unknown} not checked`),
        ),
      ),
    ),
  );
}
