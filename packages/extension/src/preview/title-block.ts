import type { PreviewShelter } from '@tautline/language/protocol';
import { element } from './dom.ts';
import { shownName } from './shown-name.ts';

/** The strip at the foot of the sheet: what it is, and the few facts one looks for first. */
export function titleBlock(shelter: PreviewShelter, file: string, toFindings: () => void): HTMLElement {
  const cell = (label: string, value: string): HTMLElement =>
    element('div', { class: 'cell' }, element('dt', {}, label), element('dd', {}, value));
  const open = shelter.findings.filter((one) => one.accepted === undefined);
  const fails = open.filter((one) => one.verdict === 'fails').length;
  const near = open.filter((one) => one.verdict === 'near its limit').length;
  const unknown = shelter.notChecked.length + open.filter((one) => one.verdict === 'not checked').length;
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
          element('span', { class: near > 0 ? 'near' : '' }, `${near} near`),
          ' · ',
          element('span', {}, `${unknown} not checked`),
        ),
      ),
    ),
  );
}
