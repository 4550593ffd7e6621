import { fasteningPull as allowedPull, levelOf } from '@tautline/loads';
import type { KindName } from '@tautline/quantity';
import type { Cover, FasteningItem, Shelter } from '@tautline/shelter';
import { stormTemperature } from '@tautline/structure';
import { edgeAgeing, fastenerAgeing, leftOf } from '../ageing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { heldPerMetre } from '../fastening-hold.ts';
import { renewed, renewedHold } from '../film-levers.ts';
import { type FilmLoad, filmLoad, liftedPull, strapSuction } from '../film-pull.ts';
import type { Finding } from '../finding.ts';
import { given, measured, step } from '../judge.ts';
import { type Limit, type Told, unknown } from '../limit.ts';
import { setItem, setQuantity } from '../slots.ts';

type Straps = NonNullable<FilmLoad['straps']>;

/** Pull on the film's edges, N/m, and on one strap, N, in a gust; `scale` multiplies the wind pressure. */
function pulls(load: FilmLoad, scale: number): { edge: number; radius: number; strap?: number } {
  const { pull, radius } = liftedPull(load, load.fan + scale * load.suction.edge);
  if (load.straps === undefined) return { edge: pull + load.inner, radius };
  // Straps take the lift of the film between them; the edges keep what the film rests at.
  const lift = scale * strapSuction(load, load.straps.spacing);
  const lifted = liftedPull(load, lift);
  return {
    edge: load.resting + load.inner,
    radius: lifted.radius,
    strap: lift * lifted.radius * load.straps.spacing,
  };
}

/** What is left of straps on a day: they are as old as the film unless their own day is said. */
function strapLeft(cover: Cover, { item, since }: Straps, on: string | undefined) {
  return leftOf(fastenerAgeing(item, since ?? cover.installed, on));
}

const roofFilms = ({ covers }: Shelter): readonly Cover[] =>
  covers.filter((cover) => cover.place === 'roof' && cover.skin.kind === 'film');

function limits({ shelter, on }: CheckInput): Limit[] {
  return roofFilms(shelter).flatMap((cover) => {
    const load = filmLoad(shelter, cover);
    if ('reason' in load) return [unknown(cover, load.reason)];
    const { straps } = load;
    return [
      ofEdge(shelter, cover, load, on),
      ...(straps === undefined ? [] : [ofStrap(shelter, cover, load, straps, on)]),
    ];
  });
}

/**
 * What holds the edges. Old film tears out of its fastening: the edge holds no larger share than is left of the film,
 * or of old clips.
 */
function ofEdge(shelter: Shelter, cover: Cover, load: FilmLoad, on: string | undefined): Limit {
  const { fastening } = cover;
  if (fastening === undefined) return unknown(cover, 'what holds the edges of the film was not said');
  const holds = heldPerMetre(cover, fastening);
  if (typeof holds !== 'number') return unknown(cover, holds.reason);
  const level = levelOf(shelter.site.basis);
  const allowed = allowedPull(holds, stormTemperature, 'gust');
  const left = leftOf(edgeAgeing(cover, on));
  const capacity = allowed.allowable * level * left.share;
  return {
    by: 'pressure',
    part: cover,
    gives: `${fastening.title} lets the film go`,
    sacrificial: cover.sacrificial === true,
    use: (factor) => {
      const found = pulls(load, factor);
      return {
        utilisation: found.edge / capacity,
        loadCase:
          load.straps === undefined
            ? 'gust on the film along its edge'
            : 'pull of the film, straps take the gust',
        tell: () => tellEdge(fastening, load, factor, found, { allowed, level, left }),
      };
    },
  };
}

/** What a fastening may hold in a gust, and what is left of it at its age. */
interface Hold {
  readonly allowed: ReturnType<typeof allowedPull>;
  readonly level: number;
  readonly left: ReturnType<typeof leftOf>;
}

function tellEdge(
  fastening: FasteningItem,
  load: FilmLoad,
  scale: number,
  found: { edge: number; radius: number },
  { allowed, level, left }: Hold,
): Told {
  const fresh = allowed.allowable * level;
  const capacity = fresh * left.share;
  const strapped = load.straps !== undefined;
  return {
    demand: measured(found.edge, 'line-load'),
    capacity: measured(capacity, 'line-load'),
    message: [
      'The film pulls at its edge with ',
      measured(found.edge, 'line-load'),
      `; ${fastening.title} may hold `,
      measured(capacity, 'line-load'),
      '.',
    ],
    source: 'membrane-arc',
    steps: [
      ...load.steps,
      step(
        'T',
        strapped ? 'pull left in the film' : 'pull of the lifted film at its edge',
        load.fan > 0
          ? strapped
            ? 'T = T_o + T_i'
            : 'T = (p_fan + p) R + T_i'
          : strapped
            ? 'T = T_l'
            : 'T = p R',
        [
          given('p', 'suction in the edge strip', scale * load.suction.edge, 'pressure'),
          given('R', 'radius of the arc of the film', found.radius, 'length'),
          ...(strapped && load.fan === 0
            ? [given('T_l', 'left of what it was put on with', load.resting, 'line-load')]
            : []),
          ...(load.fan > 0 ? [given('p_fan', 'pressure of the fan', load.fan, 'pressure')] : []),
        ],
        found.edge,
        'line-load',
        'membrane-arc',
      ),
      allowed.step,
      step(
        'F_a,level',
        'at the level of the combinations',
        'F_a · level',
        [given('level', 'allowable to factored loads', level, 'ratio')],
        fresh,
        'line-load',
        'practice:film-creep',
      ),
      ...left.steps,
      ...(left.steps.length === 0
        ? []
        : [
            step(
              'F_η',
              'what the edge may hold at the age of the film, which tears out of it, or of its clips',
              'F_η = η F_a',
              [
                given(
                  'η',
                  'strength left in the film, or in clips where that is less',
                  left.share,
                  'percent',
                ),
                given('F_a', 'when new', fresh, 'line-load'),
              ],
              capacity,
              'line-load',
              'practice',
            ),
          ]),
    ],
  };
}

/** The strap next to an end, which the lifted film pulls most. */
function ofStrap(
  shelter: Shelter,
  cover: Cover,
  load: FilmLoad,
  straps: Straps,
  on: string | undefined,
): Limit {
  const level = levelOf(shelter.site.basis);
  const allowed = allowedPull(straps.item.holds, stormTemperature, 'gust');
  const left = strapLeft(cover, straps, on);
  const capacity = allowed.allowable * level * left.share;
  return {
    by: 'pressure',
    part: { id: `${cover.id}/straps`, origin: straps.origin },
    gives: `${straps.item.title} gives`,
    sacrificial: cover.sacrificial === true,
    use: (factor) => {
      const { strap = 0, radius } = pulls(load, factor);
      return {
        utilisation: strap / capacity,
        loadCase: 'gust on the film near an end',
        tell: () => tellStrap(straps, load, factor, { strap, radius }, { allowed, level, left }),
      };
    },
  };
}

function tellStrap(
  straps: Straps,
  load: FilmLoad,
  scale: number,
  found: { radius: number; strap: number },
  { allowed, level, left }: Hold,
): Told {
  const capacity = allowed.allowable * level * left.share;
  return {
    demand: measured(found.strap, 'force'),
    capacity: measured(capacity, 'force'),
    message: [
      'The lifted film pulls the strap next to an end to ',
      measured(found.strap, 'force'),
      `; ${straps.item.title} may hold `,
      measured(capacity, 'force'),
      '.',
    ],
    source: 'membrane-arc',
    steps: [
      ...load.steps,
      step(
        'p',
        'mean suction on what the strap next to an end holds down',
        'p = p_m + min(1, a / s) (p_e - p_m)',
        [
          given('p_e', 'suction in the edge strip', scale * load.suction.edge, 'pressure'),
          given('p_m', 'suction in the middle', scale * load.suction.middle, 'pressure'),
          given('a', 'width of the edge strip', load.edgeWidth, 'length'),
          given('s', 'distance between straps', straps.spacing, 'length'),
        ],
        scale * strapSuction(load, straps.spacing),
        'pressure',
        'membrane-arc',
      ),
      step(
        'F',
        'pull of one strap',
        'F = p R s',
        [
          given('p', 'mean suction on the film', scale * strapSuction(load, straps.spacing), 'pressure'),
          given('R', 'radius of the arc of the film', found.radius, 'length'),
          given('s', 'distance between straps', straps.spacing, 'length'),
        ],
        found.strap,
        'force',
        'membrane-arc',
      ),
      { ...allowed.step, kind: 'force', inputs: allowed.step.inputs.map(asForce) },
      ...left.steps,
      step(
        'F_η',
        'pull the strap may have at its age and the level of the combinations',
        'F_η = η F_a · level',
        [
          given('η', 'strength left in the strap', left.share, 'percent'),
          given('level', 'allowable to factored loads', level, 'ratio'),
        ],
        capacity,
        'force',
        'practice',
      ),
    ],
  };
}

/** A strap's rated pull is a force, not a force per metre. */
function asForce<T extends { readonly kind: KindName }>(input: T): T {
  return input.kind === 'line-load' ? { ...input, kind: 'force' } : input;
}

export const fasteningPull: Check = {
  id: 'fastening-pull',
  title: 'Film fastenings',
  asks: 'Do channels, boards, clips and straps hold the film that a gust tries to lift off?',
  matters: 'Film goes at its edge first; once an edge flies, the whole sheet follows in minutes.',
  formula: 'u = T / η F_a, T = p R; for a strap u = p R s / F_a',
  symbols: [
    { symbol: 'T', meaning: 'pull of the film at its edge', kind: 'line-load' },
    { symbol: 'p', meaning: 'suction on the film', kind: 'pressure' },
    { symbol: 'R', meaning: 'radius of the arc the film makes between its edges', kind: 'length' },
    { symbol: 's', meaning: 'distance between straps', kind: 'length' },
    { symbol: 'F_a', meaning: 'what the fastening may hold of new film', kind: 'line-load' },
    {
      symbol: 'η',
      meaning:
        'strength left in the film, which tears out of its fastening, or in the clips or straps; 1 where the age is not known',
      kind: 'percent',
    },
  ],
  sources: [
    'membrane-arc',
    'practice:film-creep',
    'asce7-16:30.3-8',
    'en1991-1-4:7.2.5',
    'en13206:life',
    'wstda:sun',
    'practice:fastener-life',
    'practice',
  ],
  leavesOut:
    'The screws that hold the channel or board, corners of the roof, what a strap is tied to, and edges that were cut or heated.',
  mayBeAccepted: 'When the film is meant to come off first, and is declared sacrificial.',
  appliesTo: (shelter) => roofFilms(shelter).length > 0,
  limits,
  levers,
};

/** Closer pieces or straps, then a fastening that holds more. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const cover = input.shelter.covers.find((entry) => finding.part.startsWith(entry.id));
  if (cover === undefined) return [];
  const onStraps = finding.part.endsWith('/straps');
  const load = filmLoad(input.shelter, cover);
  const straps = 'reason' in load ? undefined : load.straps;
  const item = onStraps ? straps?.item : cover.fastening;
  const origin = onStraps && straps !== undefined ? straps.origin : cover.origin;
  if (item === undefined) return [];
  const word = onStraps ? 'strapped' : 'fastened';
  const every = onStraps ? straps?.spacing : cover.fasteningSpacing;
  const fits = (entry: FasteningItem): boolean =>
    onStraps
      ? (entry.form === 'strap' || entry.form === 'rope') && entry.holds > item.holds
      : (entry.form === 'channel' || entry.form === 'board') &&
        (item.per === 'piece' || entry.holds > item.holds);
  const stronger = stock.items
    .filter((entry): entry is FasteningItem => entry.kind === 'fastening' && fits(entry))
    .sort((a, b) => a.holds - b.holds);
  const others: Lever = {
    type: 'choice',
    options: stronger.map((entry) => ({
      title: [`Hold it with ${entry.title}`],
      edits: [setItem(origin, word, entry.id)],
    })),
  };
  const fresh = onStraps
    ? renewedHold(origin, word, item, straps?.since ?? cover.installed, input.on)
    : [
        ...renewed(cover, input.on),
        ...renewedHold(origin, word, item, cover.fastenedSince ?? cover.installed, input.on),
      ];
  if (every === undefined || item.per !== 'piece') return [...fresh, others];
  return [
    ...fresh,
    {
      type: 'number',
      from: every,
      towards: every / 6,
      steps: { metric: 0.05, us: 0.0254 },
      title: (value) => [`Set ${item.title} every `, measured(value, 'length')],
      edits: (value) => [setQuantity(origin, word, value, 'length')],
    },
    others,
  ];
}
