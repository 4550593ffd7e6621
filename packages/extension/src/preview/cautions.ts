import { cautionsAbout } from '@tautline/book/cautions';
import { element } from './dom.ts';

/** What every sheet says, whatever the results are. */
export function cautionsView(open: boolean, onToggle: (open: boolean) => void): HTMLElement {
  const list = element('dl', {});
  for (const { about, text } of cautionsAbout) {
    list.append(element('dt', {}, about), element('dd', {}, text));
  }
  const view = element(
    'details',
    { class: 'cautions', open },
    element(
      'summary',
      {},
      element('strong', {}, 'A screening aid.'),
      ' Local codes, permits and a licensed engineer decide. Height, wind, buried services, power lines: ',
      element('span', { class: 'link' }, 'cautions'),
    ),
    list,
  );
  view.addEventListener('toggle', () => onToggle(view.open));
  return view;
}
