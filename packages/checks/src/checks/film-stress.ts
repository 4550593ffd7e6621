import { filmStress, levelOf, type Step } from '@tautline/loads';
import type { Cover, FilmItem, Shelter } from '@tautline/shelter';
import { pullAt, pullKept, stormTemperature } from '@tautline/structure';
import { filmAgeing, leftOf } from '../ageing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { renewed, strappedDown } from '../film-levers.ts';
import { type FilmLoad, filmLoad, gustPull } from '../film-pull.ts';
import type { Finding } from '../finding.ts';
import { given, measured, step } from '../judge.ts';
import { type Limit, type Told, type Use, unknown } from '../limit.ts';
import { setItem, setQuantity } from '../slots.ts';

const roofFilms = ({ covers }: Shelter): readonly Cover[] =>
  covers.filter((cover) => cover.place === 'roof' && cover.skin.kind === 'film');

function limits({ shelter, on }: CheckInput): Limit[] {
  return roofFilms(shelter).map((cover) => {
    const load = filmLoad(shelter, cover);
    return 'reason' in load ? unknown(cover, load.reason) : ofFilm(shelter, cover, load, on);
  });
}

/** One pull of the film against what it may have for that long at that temperature. */
interface Pulled {
  /** N/m */
  readonly pull: number;
  readonly loadCase: string;
  /** Told between the film and its stress: ` when suction lifts it`. */
  readonly when: string;
  readonly may: ReturnType<typeof filmStress>;
  /** Allowable to the level of the combinations. */
  readonly level: number;
  readonly source: string;
  readonly steps: readonly Step[];
}

function ofFilm(shelter: Shelter, cover: Cover, load: FilmLoad, on: string | undefined): Limit {
  const { site } = shelter;
  const { film } = load.panel;
  const inGust = filmStress(film.yieldStress, stormTemperature, 'gust');
  const left = leftOf(filmAgeing(cover, on));
  const use = (pulled: Pulled): Use => {
    const stress = pulled.pull / film.thickness;
    const allowed = pulled.may.allowable * pulled.level * left.share;
    return {
      utilisation: stress / allowed,
      loadCase: pulled.loadCase,
      tell: () => tell(film, load, pulled, stress, left),
    };
  };
  return {
    by: 'pressure',
    part: cover,
    gives: 'the film is stretched for good',
    sacrificial: cover.sacrificial === true,
    use: (factor) => {
      const gust = gustPull(load, factor);
      return use({
        pull: gust.pull,
        loadCase: 'gust on the film',
        when: ` when ${gust.what}, a stress of `,
        may: inGust,
        level: levelOf(site.basis),
        source: 'membrane-arc',
        steps: gust.steps,
      });
    },
    calm: [use(inCold(shelter, cover, load))],
  };
}

/** In the cold the film shrinks onto the frame and stays so for weeks. */
function inCold({ site }: Shelter, cover: Cover, load: FilmLoad): Pulled {
  const { film } = load.panel;
  const pull = load.fan > 0 ? load.resting : pullAt(load.panel, site.coldest).pull;
  return {
    pull,
    loadCase: 'the coldest day',
    when: ' on the coldest day, a stress of ',
    may: filmStress(film.yieldStress, site.coldest, 'weeks'),
    level: 1,
    source: 'practice:film-creep',
    steps: [
      step(
        'T',
        'pull left in the film on the coldest day',
        'T = max(0, k T_0 + E t α (ϑ_fit - ϑ_cold))',
        [
          given('T_0', 'pull when put on', cover.tension, 'line-load'),
          given('E t', 'stretch stiffness', load.panel.stiffness, 'line-load'),
          given('k', 'share of the pull kept (from memory)', pullKept, 'ratio'),
          given('α', 'thermal expansion', film.expansion, 'expansion'),
          given('ϑ_fit', 'put on at', cover.fittedAt, 'temperature'),
          given('ϑ_cold', 'coldest', site.coldest, 'temperature'),
        ],
        pull,
        'line-load',
        'practice',
      ),
    ],
  };
}

function tell(
  film: FilmItem,
  load: FilmLoad,
  { pull, when, may, level, source, steps }: Pulled,
  stress: number,
  left: ReturnType<typeof leftOf>,
): Told {
  const fresh = may.allowable * level;
  const allowed = fresh * left.share;
  return {
    demand: measured(stress, 'stress'),
    capacity: measured(allowed, 'stress'),
    message: [
      `${film.title} is pulled to `,
      measured(pull, 'line-load'),
      when,
      measured(stress, 'stress'),
      '; it may have ',
      measured(allowed, 'stress'),
      '.',
    ],
    source,
    steps: [
      ...load.steps,
      ...steps,
      step(
        'σ',
        'stress of the film',
        'σ = T / t',
        [given('t', 'thickness', film.thickness, 'film-thickness')],
        stress,
        'stress',
        'derived',
      ),
      may.step,
      ...(level === 1
        ? []
        : [
            step(
              'σ_a,f',
              'stress allowed under factored loads',
              'σ_a,f = σ_a · level',
              [given('level', 'allowable to factored loads', level, 'ratio')],
              fresh,
              'stress',
              'practice:film-creep',
            ),
          ]),
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
  };
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
  appliesTo: (shelter) => roofFilms(shelter).length > 0,
  limits,
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
