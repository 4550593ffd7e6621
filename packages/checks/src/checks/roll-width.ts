import type { Cover, Item } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, measured } from '../judge.ts';
import { setItem, setQuantity } from '../slots.ts';

/** Widest roll the covering can come from: the one the user named, else the widest sold. */
function rollOf(cover: Cover): number | undefined {
  if (cover.skin.kind === 'sheet') return undefined;
  return cover.rollWidth ?? Math.max(...cover.skin.rollWidths);
}

function run(input: CheckInput): Found[] {
  return input.shelter.covers.flatMap((cover) => {
    const roll = rollOf(cover);
    if (cover.place !== 'roof' || roll === undefined || !Number.isFinite(roll)) return [];
    return [
      judge({
        part: cover,
        utilisation: cover.developedWidth / roll,
        exact: true,
        demand: measured(cover.developedWidth, 'length'),
        capacity: measured(roll, 'length'),
        message: [
          'The film must be ',
          measured(cover.developedWidth, 'length'),
          ' wide to go over the frame and into its fastenings; ',
          cover.rollWidth === undefined ? 'the widest roll sold is ' : 'the roll said is ',
          measured(roll, 'length'),
          '.',
        ],
        source: 'derived',
        steps: [
          inWords(
            'b',
            'width needed',
            'b = length of the roof line + edge allowance at both sides',
            [given('e', 'edge allowance at one side', cover.fastening?.edgeAllowance ?? 0, 'length')],
            cover.developedWidth,
            'length',
            'derived',
          ),
          inWords(
            'b_roll',
            'width of the roll',
            'from the catalogue or the spec',
            [],
            roll,
            'length',
            'catalogue',
          ),
        ],
      }),
    ];
  });
}

export const rollWidth: Check = {
  id: 'roll-width',
  title: 'Roll width',
  nature: 'stock',
  asks: 'Is the roll of film wide enough to go over in one piece and still reach its fastenings?',
  matters:
    'A film that is a hand too narrow cannot be pulled tight, and a lap along the house leaks and lifts.',
  formula: 'u = b / b_roll',
  symbols: [
    {
      symbol: 'b',
      meaning: 'width needed over the frame with what goes into the fastenings',
      kind: 'length',
    },
    { symbol: 'b_roll', meaning: 'width of the roll', kind: 'length' },
  ],
  sources: ['derived', 'catalogue'],
  leavesOut: 'Film that is welded or taped from two widths.',
  mayBeAccepted: 'When two widths are lapped at the ridge and taped.',
  run,
  levers: (input, finding, stock) => {
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    if (cover === undefined || cover.skin.kind === 'sheet') return [];
    const wider = cover.skin.rollWidths
      .filter((width) => width >= cover.developedWidth)
      .sort((a, b) => a - b);
    const other = stock.items.filter(
      (entry): entry is Extract<Item, { kind: 'film' | 'mesh' }> =>
        entry.kind === cover.skin.kind &&
        entry.id !== cover.skin.id &&
        'rollWidths' in entry &&
        Math.max(...entry.rollWidths) >= cover.developedWidth,
    );
    return [
      {
        type: 'choice',
        options: wider.map((width) => ({
          title: ['Buy the roll that is ', measured(width, 'length'), ' wide'],
          edits: [setQuantity(cover.origin, 'roll', width, 'length')],
        })),
      },
      {
        type: 'choice',
        options: other.map((entry) => ({
          title: [`Use ${entry.title}`],
          edits: [setItem(cover.origin, 'with', entry.id)],
        })),
      },
    ];
  },
};
