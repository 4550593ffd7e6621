import { filmStress, levelOf } from '@tautline/loads';
import type { Cover, FilmItem, Shelter } from '@tautline/shelter';
import { pullAt, stormTemperature } from '@tautline/structure';
import { filmAgeing, leftOf } from '../ageing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { renewed, strappedDown } from '../film-levers.ts';
import { filmLoad, gustPull } from '../film-pull.ts';
import type { Finding, Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { setItem, setQuantity } from '../slots.ts';

/** Stress of the film in a gust over what it may have on a day; `scale` multiplies the wind pressure. */
export function filmGustUse(
  shelter: Shelter,
  cover: Cover,
  scale: number,
  on: string | undefined,
): number | undefined {
  const load = filmLoad(shelter, cover);
  if ('reason' in load) return undefined;
  const { film } = load.panel;
  const { share } = leftOf(filmAgeing(cover, on));
  const { allowable } = filmStress(film.yieldStress, stormTemperature, 'gust');
  return gustPull(load, scale).pull / film.thickness / (allowable * share * levelOf(shelter.site.basis));
}

function onCover(shelter: Shelter, cover: Cover, on: string | undefined): Found[] {
  const load = filmLoad(shelter, cover);
  if ('reason' in load) return [notChecked(cover, load.reason)];
  const { film } = load.panel;
  const level = levelOf(shelter.site.basis);
  const gust = gustPull(load);
  const inGust = filmStress(film.yieldStress, stormTemperature, 'gust');
  // In the cold the film shrinks onto the frame and stays so for weeks.
  const cold = load.fan > 0 ? load.resting : pullAt(load.panel, shelter.site.coldest).pull;
  const inCold = filmStress(film.yieldStress, shelter.site.coldest, 'weeks');
  const left = leftOf(filmAgeing(cover, on));
  const gustUse = gust.pull / film.thickness / (inGust.allowable * level);
  const coldUse = cold / film.thickness / inCold.allowable;
  const windy = gustUse >= coldUse;
  const stress = (windy ? gust.pull : cold) / film.thickness;
  const fresh = windy ? inGust.allowable * level : inCold.allowable;
  const allowed = fresh * left.share;
  const pull = windy ? gust.pull : cold;
  return [
    judge({
      part: cover,
      utilisation: stress / allowed,
      demand: measured(stress, 'stress'),
      capacity: measured(allowed, 'stress'),
      loadCase: windy ? 'gust on the film' : 'the coldest day',
      message: [
        `${film.title} is pulled to `,
        measured(pull, 'line-load'),
        windy ? ` when ${gust.what}, a stress of ` : ' on the coldest day, a stress of ',
        measured(stress, 'stress'),
        '; it may have ',
        measured(allowed, 'stress'),
        '.',
      ],
      source: windy ? 'membrane-arc' : 'practice:film-creep',
      steps: [
        ...load.steps,
        ...(windy
          ? gust.steps
          : [
              step(
                'T',
                'pull left in the film on the coldest day',
                'T = 0.5 T_0 + E t α (ϑ_fit - ϑ_cold)',
                [
                  given('T_0', 'pull when put on', cover.tension, 'line-load'),
                  given('E t', 'stretch stiffness', load.panel.stiffness, 'line-load'),
                  given('ϑ_cold', 'coldest', shelter.site.coldest, 'temperature'),
                ],
                cold,
                'line-load',
                'practice',
              ),
            ]),
        step(
          'σ',
          'stress of the film',
          'σ = T / t',
          [given('t', 'thickness', film.thickness, 'film-thickness')],
          stress,
          'stress',
          'derived',
        ),
        windy ? inGust.step : inCold.step,
        ...(windy && level !== 1
          ? [
              step(
                'σ_a,f',
                'stress allowed under factored loads',
                'σ_a,f = σ_a · level',
                [given('level', 'allowable to factored loads', level, 'ratio')],
                fresh,
                'stress',
                'practice:film-creep',
              ),
            ]
          : []),
        ...left.steps,
        ...(left.steps.length === 0
          ? []
          : [
              step(
                'σ_η',
                'stress the film may have at its age',
                'σ_η = η σ_a',
                [
                  given('η', 'strength left', left.share, 'percent'),
                  given('σ_a', 'of new film', fresh, 'stress'),
                ],
                allowed,
                'stress',
                'practice',
              ),
            ]),
      ],
    }),
  ];
}

function run(input: CheckInput): Found[] {
  return input.shelter.covers
    .filter((cover) => cover.place === 'roof' && cover.skin.kind === 'film')
    .flatMap((cover) => onCover(input.shelter, cover, input.on));
}

export const filmStressCheck: Check = {
  id: 'film-stress',
  title: 'Film stress',
  asks: 'Does the film stay below the pull at which it stretches for good, in a gust and in the cold?',
  matters:
    'Film that has been overstretched once is loose ever after; loose film flaps, and flapping film tears.',
  formula: 'u = T / (t η σ_a), T = p R for a film that suction lifts',
  symbols: [
    { symbol: 'p', meaning: 'suction on the film in the edge strip, near an end', kind: 'pressure' },
    { symbol: 'R', meaning: 'radius of the arc the film makes between its edges', kind: 'length' },
    { symbol: 't', meaning: 'thickness', kind: 'film-thickness' },
    { symbol: 'σ_a', meaning: 'stress it may have when new, for that time and heat', kind: 'stress' },
    {
      symbol: 'η',
      meaning: 'strength left at its age, 0.5^(t / t_life); 1 where that is not known',
      kind: 'percent',
    },
  ],
  sources: [
    'membrane-arc',
    'parabola',
    'practice:film-creep',
    'asce7-16:30.3-8',
    'en1991-1-4:7.2.5',
    'en13206:life',
    'practice',
  ],
  leavesOut:
    'Corners, where suction is highest over a small patch; that suction over a whole strip from side to side is less than on a small area, which is what the values of the edge strip are for; holes, folds and stitched edges; film of the sides and ends (wall-cover); gusts while it is hot and soft.',
  mayBeAccepted: 'When the film is declared sacrificial and comes off before the frame is in danger.',
  run,
  levers,
};

/** New film, thicker film, straps over it, a lighter pull. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
  if (cover?.skin.kind !== 'film') return [];
  const { thickness } = cover.skin;
  const thicker = stock.items
    .filter(
      (entry): entry is FilmItem =>
        entry.kind === 'film' && entry.grade === 'greenhouse' && entry.thickness > thickness,
    )
    .sort((a, b) => a.thickness - b.thickness);
  return [
    ...renewed(cover, input.on),
    {
      type: 'choice',
      options: thicker.map((entry) => ({
        title: [`Use ${entry.title}`],
        edits: [setItem(cover.origin, 'with', entry.id)],
      })),
    },
    ...strappedDown(cover, stock),
    {
      type: 'number',
      from: cover.tension,
      towards: cover.tension / 4,
      steps: { metric: 10, us: 14.593903 },
      title: (value) => ['Pull the film to only ', measured(value, 'line-load')],
      edits: (value) => [setQuantity(cover.origin, 'tension', value, 'line-load')],
    },
  ];
}
