import type { FilmItem } from '@tautline/shelter';
import type { Check } from '../check.ts';
import { given, inWords, judge, measured } from '../judge.ts';
import { setItem } from '../slots.ts';

/** Julian year, s: by definition. */
const year = 365.25 * 24 * 3600;

export const filmGrade: Check = {
  id: 'film-grade',
  title: 'Film grade',
  nature: 'keeping',
  asks: 'Does the film last at least one full year of sun?',
  matters:
    'Construction film has no stabiliser against sunlight. It is brittle in half a year, and tears in the first gust after that.',
  formula: 'u = 1 yr / t_life',
  symbols: [{ symbol: 't_life', meaning: 'expected life in full sun', kind: 'time' }],
  sources: ['practice'],
  leavesOut: 'Shading, chemicals that eat the stabiliser, heat at the pipes.',
  mayBeAccepted: 'For a cover that comes off within the season.',
  run: (input) =>
    input.shelter.covers.flatMap((cover) => {
      const { skin } = cover;
      if (skin.kind !== 'film') return [];
      return [
        judge({
          part: cover,
          utilisation: year / skin.life,
          demand: measured(year, 'time'),
          capacity: measured(skin.life, 'time'),
          message: [
            `${skin.title} lasts about `,
            measured(skin.life, 'time'),
            ' in full sun; a cover that stays on needs one full year.',
          ],
          source: 'practice',
          steps: [
            inWords(
              't_life',
              'expected life in full sun',
              'from the catalogue',
              [given('t', 'thickness', skin.thickness, 'film-thickness')],
              skin.life,
              'time',
              'practice',
            ),
          ],
        }),
      ];
    }),
  levers: (input, finding, stock) => {
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    if (cover?.skin.kind !== 'film') return [];
    const own = cover.skin.thickness;
    const better = stock.items
      .filter((entry): entry is FilmItem => entry.kind === 'film' && entry.grade === 'greenhouse')
      .sort((a, b) => Math.abs(a.thickness - own) - Math.abs(b.thickness - own));
    return [
      {
        type: 'choice',
        options: better.map((entry) => ({
          title: [`Use ${entry.title}`],
          edits: [setItem(cover.origin, 'with', entry.id)],
        })),
      },
    ];
  },
};
