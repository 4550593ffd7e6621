import { element } from './dom.ts';

/** What every sheet says, whatever the results are. */
const cautions: readonly (readonly [string, string])[] = [
  ['Height', 'Work on ladders and bows is work at height. A bow is not a ladder.'],
  ['Film in wind', 'Film is a sail while it goes on. Do not cover in wind.'],
  ['Below ground', 'Look for buried cables and pipes before driving stakes, stubs or posts.'],
  ['Overhead', 'Keep conduit, rail and long pipe away from power lines.'],
  ['Sprung parts', 'Bent pipe and spring wire whip back when they slip.'],
  ['Fumes', 'Cement and primer for plastic pipe give off fumes. Work in moving air.'],
  ['Dust', 'Cut ends are sharp; dust of treated timber is not for lungs.'],
  ['Heat', 'It gets hot under film. Drink, and do not work there at noon.'],
  ['Storm', 'A shelter is no refuge in a storm.'],
];

export function cautionsView(open: boolean, onToggle: (open: boolean) => void): HTMLElement {
  const list = element('dl', {});
  for (const [title, text] of cautions) {
    list.append(element('dt', {}, title), element('dd', {}, text));
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
