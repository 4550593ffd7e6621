import { postRows, quantityValue, type Shelter } from '@tautline/shelter';
import type { Check, CheckInput, Lever } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, length, measured, step } from '../judge.ts';
import { setQuantity } from '../slots.ts';

/** Share of a whole bay under which the last one looks like a slip: own choice. */
const least = 0.5;

/** Steps that a grower sets out by, m: own choice. */
const handy = { metric: 0.01, us: 0.0254 };

/** Numbers of bays to try for a handy spacing, from what there are now upwards: own choice. */
const more = 4;

type Row = Pick<Shelter['roof'], 'id' | 'origin' | 'spacing' | 'stations'> & { readonly noun: string };

/** Frames, and posts with places of their own. */
function rowsOf(shelter: Shelter): readonly Row[] {
  const { roof } = shelter;
  const noun = roof.type === 'inflated' ? 'frames' : roof.type === 'cap' ? 'caps' : roof.type;
  const posts = postRows(shelter).map((row): Row => ({ ...row, noun: 'posts' }));
  const rows: readonly Row[] = [{ ...roof, noun }, ...posts];
  // Rows that one line of the spec spaces are told once.
  return rows.filter(
    (row, index) =>
      rows.findIndex(({ origin, spacing }) => origin === row.origin && spacing === row.spacing) === index,
  );
}

const lastOf = ({ stations }: Row): number => (stations.at(-1) ?? 0) - (stations.at(-2) ?? 0);

function run({ shelter }: CheckInput): Found[] {
  return rowsOf(shelter).flatMap((row) => {
    const last = lastOf(row);
    const { spacing, noun } = row;
    // One bay shorter than the spacing is a small house, not a last bay.
    if (row.stations.length < 3) return [];
    // An even half is half, whatever the units make of it.
    const utilisation = Math.round((1e6 * (least * spacing)) / last) / 1e6;
    return [
      judge({
        part: row,
        utilisation,
        demand: measured(least * spacing, 'length'),
        capacity: measured(last, 'length'),
        mild: true,
        exact: true,
        message: [
          `The ${noun} stand every `,
          length(spacing),
          utilisation > 1 ? ', and the last bay is only ' : ', and the last bay is ',
          length(last),
          ...(last >= spacing * (1 - 1e-6)
            ? ['.']
            : [': they do not come out even over the length of ', length(shelter.length), '.']),
        ],
        source: 'practice',
        steps: [
          step(
            'b',
            'last bay',
            'b = L − n s',
            [
              given('L', 'length of the house', shelter.length, 'length'),
              given('n', 'whole bays before it', row.stations.length - 2, 'count'),
              given('s', 'from one to the next', spacing, 'length'),
            ],
            last,
            'length',
            'derived',
          ),
        ],
      }),
    ];
  });
}

export const lastBay: Check = {
  id: 'last-bay',
  title: 'Short last bay',
  nature: 'paperwork',
  asks: 'Do the frames and posts come out even over the length of the house?',
  matters:
    'A bay of a hand’s breadth costs a whole frame, and looks like a slip of the tape: often a length or a spacing was meant that divides.',
  formula: 'u = 0.5 s / b',
  symbols: [
    { symbol: 's', meaning: 'from one frame or post to the next', kind: 'length' },
    { symbol: 'b', meaning: 'what is left over for the last bay', kind: 'length' },
  ],
  sources: ['practice', 'derived'],
  leavesOut: 'Bays that differ on purpose, for a door or a gate.',
  mayBeAccepted: 'When the house must end where it does, and the short bay serves as a porch or a store.',
  run,
  levers: ({ shelter }, finding, { system = 'metric' }) => {
    const row = rowsOf(shelter).find(({ id }) => id === finding.part);
    return row === undefined ? [] : [even(row, shelter, handy[system]), ...lengths(row, shelter)];
  },
};

/** The widest handy spacing that is no wider and leaves a last bay like the others, else one that is cut to it. */
function even(row: Row, shelter: Shelter, by: number): Lever {
  const bays = Math.ceil(shelter.length / row.spacing - 1e-6);
  const options = Array.from({ length: more }, (_, k) => shelter.length / (bays + k));
  const whole = options.find((s) => Math.abs(s / by - Math.round(s / by)) < 1e-6);
  // Rounded up, the last bay is a little shorter and none is left over.
  const spacing = whole ?? Math.ceil(options[0]! / by - 1e-6) * by;
  const value = Number(spacing.toPrecision(12));
  return {
    type: 'choice',
    options: [
      {
        title: [`Space the ${row.noun} `, length(value), ' apart'],
        edits: [setQuantity(row.origin, 'spaced', value, 'length')],
      },
    ],
  };
}

/** The house a little shorter or longer, to a whole number of bays: one lever each. */
function lengths(row: Row, shelter: Shelter): Lever[] {
  const { origin, width } = shelter;
  const bays = row.stations.length - 2;
  return [bays, bays + 1].map((count) => {
    const value = Number((count * row.spacing).toPrecision(12));
    return {
      type: 'choice',
      options: [
        {
          title: ['Make the house ', length(value), ' long'],
          edits: [
            {
              type: 'set',
              block: origin,
              word: 'footprint',
              slots: {
                width: quantityValue(width, 'length', origin),
                length: quantityValue(value, 'length', origin),
              },
            },
          ],
        },
      ],
    };
  });
}
