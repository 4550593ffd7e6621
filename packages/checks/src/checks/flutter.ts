import { flutterTension } from '@tautline/loads';
import { filmPanel, pullAt, pullKept, stormTemperature } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { tighter } from '../levers.ts';

/** A wind that blows on many days: the top of Beaufort 5, m/s (force 6 begins at 10.8: published tables of the scale). */
const everydayWind = 10.7;
/** Half the density of air at sea level, kg/m3: q = 0.613 V² (ASCE 7-16 26.10.2). */
const halfDensity = 0.613;

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const { roof } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  return shelter.covers
    .filter((cover) => cover.place === 'roof')
    .flatMap((cover) => {
      const panel = filmPanel(cover, roof.spacing);
      if (panel === undefined) return [];
      if (cover.layers === 2)
        return [notChecked(cover, 'flapping of two films with air between is not covered')];
      const sides = shelter.opening.sides === 'open' && roof.springing > 0 ? 2 : 1;
      const span = cover.straps === undefined ? roof.spacing : Math.min(roof.spacing, cover.straps.spacing);
      const pressure = halfDensity * everydayWind ** 2;
      const needed = flutterTension(pressure, span, sides);
      const { pull } = pullAt(panel, stormTemperature);
      const from = everydayWind * Math.sqrt(pull / needed.tension);
      return [
        judge({
          part: cover,
          utilisation: needed.tension / Math.max(pull, 1e-6),
          demand: measured(needed.tension, 'line-load'),
          capacity: measured(pull, 'line-load'),
          loadCase: 'a fresh breeze along the house',
          mild: true,
          message: [
            ...(pull > 0
              ? ['The film begins to flap in a wind of ', measured(from, 'speed'), ' along the house']
              : ['The film hangs slack and flaps in any wind along the house']),
            ': it takes a pull of ',
            measured(needed.tension, 'line-load'),
            ' to lie still in a fresh breeze, and ',
            ...(pull > 0 ? [measured(pull, 'line-load'), ' is left in it.'] : ['none is left in it.']),
          ],
          source: 'nielsen:1963',
          steps: [
            step(
              'q',
              'velocity pressure of a fresh breeze',
              'q = ½ ρ V²',
              [
                given('ρ', 'air', 2 * halfDensity, 'density'),
                given('V', 'top of Beaufort 5', everydayWind, 'speed'),
              ],
              pressure,
              'pressure',
              'beaufort',
            ),
            needed.step,
            step(
              'T_1',
              'pull left in the film after a season',
              'T_1 = max(0, k T_0 - E t α (ϑ - ϑ_fit))',
              [
                given('T_0', 'pull when put on', cover.tension, 'line-load'),
                given('k', 'share of the pull kept (from memory)', pullKept, 'ratio'),
                given('E t', 'stretch stiffness', panel.stiffness, 'line-load'),
                given('α', 'thermal expansion', panel.film.expansion, 'expansion'),
                given('ϑ', 'in a breeze', stormTemperature, 'temperature'),
                given('ϑ_fit', 'put on at', cover.fittedAt, 'temperature'),
              ],
              pull,
              'line-load',
              'practice',
            ),
          ],
        }),
      ];
    });
}

export const flutter: Check = {
  id: 'flutter',
  title: 'Flapping film',
  asks: 'Is the film tight enough to lie still in the breezes of an ordinary week?',
  matters: 'Film that flaps chafes through where it touches the frame, long before any storm.',
  formula: 'u = T_f / T_1, T_f = 1.727 q s (half of it where wind is on one side only)',
  symbols: [
    { symbol: 'q', meaning: 'velocity pressure of a fresh breeze', kind: 'pressure' },
    { symbol: 's', meaning: 'distance between frames or straps', kind: 'length' },
    { symbol: 'T_1', meaning: 'pull left in the film', kind: 'line-load' },
  ],
  sources: ['nielsen:1963', 'beaufort', 'practice'],
  leavesOut:
    'The pull that suction itself puts into the film, edges and laps, film of the sides, storms (see film-stress and fastening-pull).',
  mayBeAccepted: 'For a cover that comes off within the season, or where straps or cords lie over each bay.',
  run,
  levers: (input, finding) => {
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    return cover?.skin.kind === 'film'
      ? [tighter(cover, 0.2 * cover.skin.yieldStress * cover.skin.thickness)]
      : [];
  },
};
