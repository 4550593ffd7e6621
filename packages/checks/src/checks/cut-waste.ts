import type { Bows, Rafters } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, length, measured, percent, step } from '../judge.ts';
import { setQuantity } from '../slots.ts';
import { pieces } from './stock-length.ts';

/** Share of what is bought that may fall off: less than a piece just longer than half a length wastes; common practice, no source. */
const most = 0.45;

interface Cut {
  readonly piece: number;
  /** Length sold that leaves least of it, and how many pieces come out of one, m. */
  readonly stock: number;
  readonly count: number;
}

/** Each piece of one frame with the length it is best cut from; undefined where one comes out of none. */
function cutsOf(frame: Bows | Rafters): Cut[] | undefined {
  const { stockLengths } = frame.member;
  const places = frame.joints.map(({ at }) => at);
  const cuts = pieces(frame, places).map((piece): Cut | undefined => {
    const ways = stockLengths
      .filter((stock) => stock >= piece - 1e-6)
      .map((stock) => ({ piece, stock, count: Math.floor(stock / piece + 1e-6) }));
    return ways.reduce<Cut | undefined>(
      (best, way) => (best !== undefined && best.stock / best.count <= way.stock / way.count ? best : way),
      undefined,
    );
  });
  const found = cuts.filter((cut) => cut !== undefined);
  return found.length === cuts.length ? found : undefined;
}

function run({ shelter: { roof } }: CheckInput): Found[] {
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const { member } = roof;
  // Boards of a lamination are staggered, and their butts are not known.
  if (member.section.shape === 'rectangle' && (member.section.laminations ?? 1) > 1) return [];
  const cuts = cutsOf(roof);
  // A piece longer than any stock is what stock-length tells.
  if (cuts === undefined || cuts.length === 0) return [];
  const used = cuts.reduce((sum, { piece }) => sum + piece, 0);
  const bought = cuts.reduce((sum, { stock, count }) => sum + stock / count, 0);
  const waste = Math.max(0, 1 - used / bought);
  const noun = roof.type === 'bows' ? 'bow' : 'rafter';
  return [
    judge({
      part: roof,
      utilisation: waste / most,
      demand: percent(waste),
      capacity: percent(most),
      mild: true,
      exact: true,
      message: [
        `Each ${noun} takes `,
        length(used),
        ` of ${member.title}, cut from `,
        length(bought),
        ' of what is bought: ',
        percent(waste),
        ' falls off, unless the offcuts serve elsewhere.',
      ],
      source: 'derived',
      steps: [
        inWords(
          'l_b',
          `bought for one ${noun}`,
          'l_b = Σ l_stock / ⌊l_stock / l⌋',
          [
            given('l', 'its longest piece', Math.max(...cuts.map(({ piece }) => piece)), 'length'),
            given('N', 'its pieces', cuts.length, 'count'),
          ],
          bought,
          'length',
          'derived',
        ),
        step(
          'w',
          'share that falls off',
          'w = 1 - l_u / l_b',
          [given('l_u', 'used', used, 'length')],
          waste,
          'percent',
          'derived',
        ),
      ],
    }),
  ];
}

export const cutWaste: Check = {
  id: 'cut-waste',
  title: 'Cutting waste',
  nature: 'stock',
  asks: 'Do bows and rafters come out of the lengths sold without throwing much of them away?',
  matters: 'A bow a hand longer than half a pipe costs twice its pipe.',
  formula: 'w = 1 - Σ l / Σ (l_stock / ⌊l_stock / l⌋), u = w / 0.45',
  symbols: [
    { symbol: 'l', meaning: 'length of a piece', kind: 'length' },
    { symbol: 'l_stock', meaning: 'length sold that leaves least of it', kind: 'length' },
    { symbol: 'w', meaning: 'share that falls off', kind: 'percent' },
  ],
  sources: ['derived', 'practice'],
  leavesOut:
    'Pieces of different length cut from one pipe, offcuts that serve as purlins or stakes, stock on hand: the cut list counts with them, and wastes less; saw cuts and what goes into joints.',
  mayBeAccepted: 'Where the cut list finds a use for the offcuts.',
  run,
  levers: ({ shelter: { roof } }) => {
    if (roof.type !== 'bows' || roof.sizedBy !== 'length' || roof.joints.length > 0) return [];
    const [cut] = cutsOf(roof) ?? [];
    if (cut === undefined) return [];
    const driven = 2 * roof.legDriven;
    // A little shorter, so that one more comes out of each length; or the whole of it used.
    const lengths = [cut.stock / (cut.count + 1), cut.stock / cut.count].map((piece) => piece - driven);
    return [
      {
        type: 'choice',
        options: lengths
          .filter((size) => size > 0.8 * roof.length && size > roof.span)
          .map((size) => ({
            title: ['Make the bows ', measured(size, 'length'), ' long'],
            edits: [setQuantity(roof.origin, 'length', size, 'length')],
          })),
      },
    ];
  },
};
