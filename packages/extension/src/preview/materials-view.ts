import type { PreviewShelter } from '@tautline/language/protocol';
import { element } from './dom.ts';

/** What to buy. */
export function materialsView(shelter: PreviewShelter): HTMLElement {
  if (shelter.materials.length === 0) {
    return element(
      'div',
      { class: 'pages' },
      element('p', { class: 'empty' }, 'No materials could be counted yet.'),
    );
  }
  const priced = shelter.materials.some((row) => row.cost !== '');
  const body = element('tbody', {});
  const foot = element('tfoot', {});
  for (const row of shelter.materials) {
    (row.sum ? foot : body).append(
      element(
        'tr',
        {},
        element('th', { scope: 'row' }, row.title, row.note !== '' && element('small', {}, row.note)),
        element('td', { class: 'value' }, row.quantity),
        priced && element('td', { class: 'value' }, row.cost === '' ? 'no price' : row.cost),
      ),
    );
  }
  const head = element(
    'tr',
    {},
    element('th', { scope: 'col' }, 'Item'),
    element('th', { scope: 'col', class: 'value' }, 'Quantity'),
    priced && element('th', { scope: 'col', class: 'value' }, 'Cost'),
  );
  return element(
    'div',
    { class: 'pages' },
    element('table', { class: 'materials' }, element('thead', {}, head), body, foot),
    !priced &&
      element(
        'p',
        { class: 'quiet' },
        'No prices are known: say what things cost in a price list and import it.',
      ),
  );
}
