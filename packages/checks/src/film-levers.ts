/** Changes of a film that several checks may ask for. */
import { type Cover, dateValue, type FasteningItem, type Origin } from '@tautline/shelter';
import type { Lever, Stock } from './check.ts';
import { setDay, setItem } from './slots.ts';

/** New film of the same sort on the day of the check; none where its age is not known. */
export function renewed(cover: Cover | undefined, on: string | undefined): Lever[] {
  if (cover?.installed === undefined || on === undefined || cover.installed >= on) return [];
  return [
    {
      type: 'choice',
      options: [
        {
          title: [`Put on new ${cover.skin.kind}, and say \`installed ${on}\``],
          edits: [setDay(cover.origin, 'installed', on)],
        },
      ],
    },
  ];
}

/** New straps, ropes or clips of the same sort on the day of the check, where the sun takes of them. */
export function renewedHold(
  block: Origin,
  word: string,
  item: FasteningItem,
  since: string | undefined,
  on: string | undefined,
): Lever[] {
  if (item.life === undefined || since === undefined || on === undefined || since >= on) return [];
  return [
    {
      type: 'choice',
      options: [
        {
          title: [`Put new ${item.title} on, and say \`since ${on}\``],
          edits: [{ type: 'set', block, word, slots: { since: dateValue(on, block) } }],
        },
      ],
    },
  ];
}

/** Straps or ropes over a film that has none, one between every two frames, the weakest first. */
export function strappedDown(cover: Cover, stock: Stock): Lever[] {
  if (cover.straps !== undefined || cover.place !== 'roof') return [];
  const straps = stock.items
    .filter(
      (entry): entry is FasteningItem =>
        entry.kind === 'fastening' && (entry.form === 'strap' || entry.form === 'rope'),
    )
    .sort((a, b) => a.holds - b.holds);
  return [
    {
      type: 'choice',
      options: straps.map((entry) => ({
        title: [`Strap the film down between every two frames: ${entry.title}`],
        edits: [setItem(cover.origin, 'strapped', entry.id)],
      })),
    },
  ];
}
