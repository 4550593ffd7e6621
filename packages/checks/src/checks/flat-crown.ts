import { type CurvePoint, crownOf } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, length, measured, step } from '../judge.ts';
import { higher, risen } from '../levers.ts';

/** Slope below which drops stay on film, as rise to run: 1:10, common practice, no source. */
const sheds = 0.1;

/** Share of the span that may be so flat: a quarter, which an arch as high as a tenth of its span has; common practice, no source. */
const share = 0.25;

/** Width about the crown over which the line is flatter than `sheds`, m; a dip between two shoulders counts whole. */
function flatWidth(line: readonly CurvePoint[]): number {
  const limit = Math.atan(sheds);
  const flat = line.filter(({ angle }) => Math.abs(angle) < limit);
  const first = flat[0];
  const last = flat.at(-1);
  if (first === undefined || last === undefined) return 0;
  // The slope turns evenly between two points, so the edge lies within the stretch beside the last flat point.
  const edge = (point: CurvePoint): number =>
    Math.abs(point.curvature) < 1e-9
      ? 0
      : Math.max(0, limit - Math.abs(point.angle)) / Math.abs(point.curvature);
  return last.x - first.x + edge(first) + edge(last);
}

function run({ shelter }: CheckInput): Found[] {
  const { roof, covers } = shelter;
  const cover = covers.find(({ place, skin }) => place === 'roof' && skin.kind === 'film');
  if (cover === undefined || (roof.type !== 'bows' && roof.type !== 'inflated')) return [];
  if (roof.type === 'bows' && roof.shape === 'pointed') return [];
  const flat = flatWidth(roof.line);
  const most = share * roof.span;
  return [
    judge({
      part: roof,
      utilisation: flat / most,
      demand: length(flat),
      capacity: length(most),
      message: [
        'As built, before any load, ',
        length(flat),
        ' of the crown are flatter than ',
        measured(sheds, 'slope'),
        '; on a roof of ',
        length(roof.span),
        ' no more than ',
        length(most),
        ' should be.',
      ],
      source: 'practice',
      steps: [
        inWords(
          'b',
          'width of the crown that is flatter than film sheds water from',
          'b: |tan θ| < m on the line as built',
          [
            given('m', 'slope that sheds water (common practice, no source)', sheds, 'slope'),
            given('rise', 'rise of the roof', roof.rise, 'length'),
            given('R', 'radius at the crown', radiusAt(roof.line), 'length'),
          ],
          flat,
          'length',
          'derived',
        ),
        step(
          'b_max',
          'width that may be so flat',
          'b_max = S / 4',
          [given('S', 'span of the roof', roof.span, 'length')],
          most,
          'length',
          'practice',
        ),
      ],
    }),
  ];
}

/** Radius at the crown, m; a straight stretch counts as very large. */
function radiusAt(line: readonly CurvePoint[]): number {
  return 1 / Math.max(Math.abs(crownOf(line).curvature), 1e-6);
}

export const flatCrown: Check = {
  id: 'flat-crown',
  title: 'Flat crown',
  asks: 'Is the arch as built round enough at its crown that rain finds a slope before it finds a hollow?',
  matters:
    'A wide flat at the top of an arch is a flat roof: the first pond sits there, and what bends under it gets flatter still.',
  formula: 'u = b / (S / 4)',
  symbols: [
    { symbol: 'b', meaning: 'width of the crown that is flatter than 1:10', kind: 'length' },
    { symbol: 'S', meaning: 'span of the roof', kind: 'length' },
  ],
  sources: ['derived', 'practice'],
  leavesOut:
    'Sag of the film and how tight it is (film-ponding), bending under water (frame-ponding), straight rafters (rafter-ponding), films of a blown-up roof whose fan stands still (fan-failure).',
  mayBeAccepted: 'Where a wire or batten under the film along the crown makes a ridge of it.',
  run,
  levers: ({ shelter: { roof } }) =>
    roof.type === 'bows' ? [higher(roof)] : roof.type === 'inflated' ? [risen(roof)] : [],
};
