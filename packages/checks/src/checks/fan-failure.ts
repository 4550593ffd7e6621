import { fasteningPull, filmStress } from '@tautline/loads';
import { WATER } from '@tautline/mechanics';
import type { Cover, FilmItem, Inflated, MemberItem, Shelter } from '@tautline/shelter';
import {
  fullTrough,
  gravity,
  rainTemperature,
  sectionOf,
  sidewaysSection,
  type Trough,
  troughWith,
} from '@tautline/structure';
import type { Check, CheckInput, Lever } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, measured, notChecked, step } from '../judge.ts';
import { memberLimit } from '../resistance.ts';
import { setQuantity } from '../slots.ts';

/** What gives way first when the films fill, with the share that a trough takes of it. */
interface Weak {
  readonly what: string;
  readonly use: (trough: Trough) => number;
}

function weakLinks(shelter: Shelter, cover: Cover, film: FilmItem): Weak[] {
  const sheet =
    film.thickness * cover.layers * filmStress(film.yieldStress, rainTemperature, 'days').allowable;
  const links: Weak[] = [
    { what: `${film.title} is stretched for good`, use: (trough) => trough.pull / sheet },
  ];
  const { fastening, fasteningSpacing } = cover;
  const apart = fastening?.per === 'length' ? 1 : fasteningSpacing;
  if (fastening !== undefined && apart !== undefined) {
    const held = fasteningPull(fastening.holds / apart, rainTemperature, 'days').allowable;
    links.push({ what: `${fastening.title} lets the film go`, use: (trough) => trough.pull / held });
  }
  const rail = shelter.eaveRail;
  if (rail !== undefined && rail.member.kind !== 'cable')
    links.push({
      what: `the rail of ${rail.member.title} bends in`,
      use: railUse(shelter, rail.member, rail.span),
    });
  return links;
}

/** Bending of a rail between two posts from the side and from above, over its strength under water that stands for days. */
function railUse(shelter: Shelter, member: MemberItem, span: number): Weak['use'] {
  const { bending } = memberLimit(shelter.site, member, 'days');
  const sideways = sidewaysSection(member).sectionModulus;
  const upright = sectionOf(member).sectionModulus;
  return ({ across, down }) => ((across / sideways + down / upright) * span * span) / 8 / bending;
}

/** Most water, m2 of cross-section, that all links stand; by halving, as the pull grows with the water. */
function mostWater(links: readonly Weak[], span: number, sag: number): number {
  const stands = (area: number): boolean => links.every(({ use }) => use(troughWith(span, sag, area)) <= 1);
  let low = 0;
  let high = fullTrough(span, sag);
  if (stands(high)) return high;
  for (let pass = 0; pass < 40; pass++) {
    const middle = (low + high) / 2;
    if (stands(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function onRoof(shelter: Shelter, roof: Inflated): Found {
  const cover = shelter.covers.find((entry) => entry.place === 'roof');
  if (cover?.skin.kind !== 'film') return notChecked(roof, 'no film was said for the roof');
  const { span, hang: sag, answered } = roof;
  const links = weakLinks(shelter, cover, cover.skin);
  const most = mostWater(links, span, sag);
  const brim = fullTrough(span, sag);
  const rain = shelter.site.rain * answered;
  const fallen = troughWith(span, sag, rain * span);
  const limit = troughWith(span, sag, most);
  const first = links.reduce((a, b) => (b.use(limit) > a.use(limit) ? b : a));
  const bearable = most / span;
  // A trough that stands full to the brim lets the rest run over.
  const utilisation = most >= brim ? Math.max(...links.map(({ use }) => use(limit))) : rain / bearable;
  return judge({
    part: roof,
    utilisation,
    demand: measured(rain, 'length'),
    capacity: measured(bearable, 'length'),
    loadCase: 'fan stopped in the rain',
    message:
      most >= brim
        ? [
            'When the fan stops the films hang down and stand full of water to the brim, ',
            measured(limit.depth, 'length'),
            ' deep.',
          ]
        : [
            'When the fan stops the films hang down like a tank: in the ',
            measured(answered, 'time'),
            ' until somebody is there ',
            measured(rain, 'length'),
            ' of rain may fall, and from ',
            measured(bearable, 'length'),
            ` on ${first.what}.`,
          ],
    source: 'parabola',
    steps: [
      step(
        'h',
        'rain that falls before anybody is there',
        'h = i t',
        [
          given('i', 'rain', shelter.site.rain, 'rain-rate'),
          given('t', 'until somebody is there', answered, 'time'),
        ],
        rain,
        'length',
        'derived',
      ),
      step(
        'b',
        'width of the water',
        'b = S ∛(A / A_f), A = min(h S, A_f), A_f = 2/3 S d',
        [
          given('S', 'span between the rails', span, 'length'),
          given('d', 'hang of the inner film, on which the outer comes to lie', sag, 'length'),
        ],
        fallen.width,
        'length',
        'derived',
      ),
      step(
        'H',
        'pull of the films across',
        'H = W (S / 2 - 3 b / 16) / d, W = ρ g min(h S, 2/3 S d) / 2',
        [
          given('ρ', 'density of water', WATER / gravity, 'density'),
          given('g', 'gravity, N/kg', gravity, 'ratio'),
        ],
        fallen.across,
        'line-load',
        'parabola',
      ),
      ...links.map((link, index) =>
        inWords(
          `u_${index + 1}`,
          link.what,
          'from T = √(H² + (W/2)²), or M = H L² / 8 of the rail',
          [],
          link.use(fallen),
          'percent',
          'parabola',
        ),
      ),
      inWords(
        'h_max',
        'rain from which the first of them gives',
        'largest h with all u ≤ 1',
        [],
        bearable,
        'length',
        'derived',
      ),
    ],
  });
}

function run(input: CheckInput): Found[] {
  const { roof } = input.shelter;
  return roof.type === 'inflated' ? [onRoof(input.shelter, roof)] : [];
}

export const fanFailure: Check = {
  id: 'fan-failure',
  title: 'Fan stopped in the rain',
  asks: 'Does the roof stand the rain that falls between the fan stopping and somebody being there?',
  matters:
    'Without air the two films hang down and hold every drop: a tank of tonnes that pulls rails and posts in.',
  formula: 'u = i t / h_max, h_max where the films, their fastening or the rail reach their limit',
  symbols: [
    { symbol: 'i', meaning: 'rain', kind: 'rain-rate' },
    { symbol: 't', meaning: 'time until somebody is there', kind: 'time' },
    { symbol: 'h_max', meaning: 'depth of rain that the weakest link stands', kind: 'length' },
  ],
  sources: ['parabola', 'practice:film-creep', 'beam-table'],
  leavesOut:
    'Stretch of the films, which deepens the trough and lets it hold more; water that runs to the lower end; posts, ties and feet under the pull; hail and snow.',
  mayBeAccepted:
    'When the films can be let down or slit from the ground in minutes, and somebody always hears the fan stop.',
  run,
  levers,
};

/** Somebody there sooner, then a film that hangs deeper and so pulls less. */
function levers(input: CheckInput): Lever[] {
  const { roof } = input.shelter;
  if (roof.type !== 'inflated') return [];
  const minute = 60;
  return [
    {
      type: 'number',
      from: roof.answered,
      towards: 2 * minute,
      steps: { metric: minute, us: minute },
      title: (value) => ['Have somebody there within ', measured(value, 'time')],
      edits: (value) => [setQuantity(roof.origin, 'answered', value, 'time')],
    },
    {
      type: 'number',
      from: roof.hang,
      towards: roof.span / 4,
      steps: { metric: 0.05, us: 0.0254 },
      title: (value) => ['Let the inner film hang ', measured(value, 'length')],
      edits: (value) => [setQuantity(roof.origin, 'hang', value, 'length')],
    },
  ];
}
