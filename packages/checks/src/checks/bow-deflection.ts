import { lasts } from '@tautline/loads';
import { clearHeightAt, type Requirement, type Shelter, type Thing, tieUndersideAt } from '@tautline/shelter';
import { type FrameAnalysis, type Response, roofHeightAt, stateIn } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, measured, notChecked } from '../judge.ts';
import { higher, risen } from '../levers.ts';
import { setQuantity } from '../slots.ts';

interface Asked {
  readonly height: number;
  /** Places across the house, m from the left side, that must all be that high. */
  readonly over: readonly number[];
  readonly what: string;
  readonly part: Pick<Requirement, 'id' | 'origin'>;
}

/** Parts the width of a thing is looked at in: frames bend, so the lowest place need not be an edge. Own choice. */
const parts = 4;

/** The top of a thing with the room to keep free above it, over its whole width. */
function overThing(thing: Thing): Asked {
  const over = thing.lefts.flatMap((left) =>
    Array.from({ length: parts + 1 }, (_, n) => left + (thing.width * n) / parts),
  );
  const what =
    thing.clearance > 0 ? `the ${thing.name} with the room to keep free above it` : `the ${thing.name}`;
  return { height: thing.height + thing.clearance, over, what, part: thing };
}

/** Heights somebody asked for: required headroom, crops, and what stands under the roof. */
function askedHeights(shelter: Shelter): Asked[] {
  const crops = shelter.crops
    .filter((crop) => crop.height > 0)
    .map((crop) => ({
      height: crop.height,
      over: [crop.fromSide, shelter.width - crop.fromSide],
      what: crop.name,
      part: crop,
    }));
  const middle = shelter.width / 2;
  const required = shelter.requirements
    .filter(
      (entry) => entry.subject === 'headroom' && (entry.comparison === '>=' || entry.comparison === '>'),
    )
    .map((entry) => ({
      height: entry.value,
      over: [entry.at ?? middle, shelter.width - (entry.at ?? middle)],
      what: 'the headroom asked for',
      part: entry,
    }));
  const things = shelter.things.filter((thing) => thing.height > 0).map(overThing);
  return [...required, ...crops, ...things];
}

interface Lowest {
  readonly response: Response;
  readonly height: number;
  readonly at: number;
  /** A tie across is lower there than the roof. */
  readonly tied: boolean;
}

/** What comes down lowest at x: a tie as built, or the roof under the response in use (not a storm) that lowers it most. */
function lowest(analysis: FrameAnalysis, shelter: Shelter, x: number): Lowest | undefined {
  const tie = tieUndersideAt(shelter, x) ?? Number.POSITIVE_INFINITY;
  let worst: Lowest | undefined;
  for (const response of analysis.responses) {
    if (!lasts(response.load.duration) || response.status !== 'holds') continue;
    const roof = roofHeightAt(stateIn(analysis.states, response.condition), response, x);
    if (roof === undefined) continue;
    const height = Math.min(roof, tie);
    if (worst === undefined || height < worst.height) worst = { response, height, at: x, tied: tie < roof };
  }
  return worst;
}

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  if (shelter.roof.type === 'cap') return askedHeights(shelter).flatMap((asked) => underCap(shelter, asked));
  if (!input.frame.ok) return [notChecked(shelter, input.frame.reason)];
  const { analysis } = input.frame;
  const asked = askedHeights(shelter);
  if (asked.length === 0) {
    const none = 'no crop height, no thing under the roof and no required headroom was said';
    return [notChecked(shelter.roof, none)];
  }
  return asked.map(({ height, over, what, part }) => {
    const found = over.flatMap((x) => lowest(analysis, shelter, x) ?? []);
    const worst = found.reduce<Lowest | undefined>(
      (least, one) => (least !== undefined && least.height <= one.height ? least : one),
      undefined,
    );
    if (worst === undefined) return notChecked(part, 'the frame does not reach over this place or gives way');
    return judge({
      part,
      utilisation: height / Math.max(worst.height, 1e-6),
      demand: measured(height, 'length'),
      capacity: measured(worst.height, 'length'),
      loadCase: worst.response.load.title,
      exact: true,
      message: [
        'There are ',
        measured(worst.height, 'length'),
        ' of height at ',
        measured(nearestSide(worst.at, shelter), 'length'),
        worst.tied
          ? ' from the side, under the tie across'
          : ` from the side under ${worst.response.load.title}, after creep`,
        `; for ${what} it takes `,
        measured(height, 'length'),
        '.',
      ],
      source: worst.tied ? 'derived' : 'frame',
      steps: [
        inWords(
          'y',
          worst.tied ? 'underside of the tie there' : 'height of the bent roof line there',
          worst.tied ? 'as built' : 'from the frame analysis with the long-term modulus',
          [given('x', 'distance from the side', nearestSide(worst.at, shelter), 'length')],
          worst.height,
          'length',
          worst.tied ? 'derived' : 'frame',
        ),
        inWords('h', `height for ${what}`, 'as said', [], height, 'length', 'derived'),
      ],
    });
  });
}

const nearestSide = (x: number, { width }: Shelter): number => Math.min(x, width - x);

/** A rigid cap does not settle: its height is that of its shape. */
function underCap(shelter: Shelter, { height, over, what, part }: Asked): Found[] {
  const heights = over.map((x) => ({ x, y: clearHeightAt(shelter, x) ?? Number.POSITIVE_INFINITY }));
  const least = heights.reduce((low, one) => (one.y < low.y ? one : low));
  const there = Number.isFinite(least.y) ? least.y : undefined;
  const at = nearestSide(least.x, shelter);
  if (there === undefined) return [notChecked(part, 'the cap does not reach over this place')];
  return [
    judge({
      part,
      utilisation: height / Math.max(there, 1e-6),
      demand: measured(height, 'length'),
      capacity: measured(there, 'length'),
      exact: true,
      message: [
        'There are ',
        measured(there, 'length'),
        ' of height under the cap at ',
        measured(at, 'length'),
        ` from the side; for ${what} it takes `,
        measured(height, 'length'),
        '.',
      ],
      source: 'derived',
      steps: [
        inWords(
          'y',
          'height of the cap there',
          'from the geometry',
          [given('x', 'distance from the side', at, 'length')],
          there,
          'length',
          'derived',
        ),
        inWords('h', `height for ${what}`, 'as said', [], height, 'length', 'derived'),
      ],
    }),
  ];
}

export const bowDeflection: Check = {
  id: 'bow-deflection',
  title: 'Deflection against headroom',
  asks: 'Once the roof has settled under its own weight, the crop and the years, is there still room for the crop, for what stands there and for a head?',
  matters:
    'Bows sag with time. Film that comes down to the crop scorches it, and a low side row is not picked.',
  formula: 'u = h / y',
  symbols: [
    { symbol: 'h', meaning: 'height asked for', kind: 'length' },
    {
      symbol: 'y',
      meaning: 'height of the roof line after deflection, or of a tie across that is lower',
      kind: 'length',
    },
  ],
  sources: ['frame', 'derived'],
  leavesOut:
    'Sway in gusts, which passes; the thickness of the pipe; the sag of ties; purlins and rails along the house; ground that is not level.',
  mayBeAccepted: 'When the beds lie further in than the row that was said.',
  run,
  levers: (input) => {
    const { roof, sidePosts: posts } = input.shelter;
    if (roof.type === 'bows' && posts === undefined) return [higher(roof)];
    if (roof.type === 'cap') return [risen(roof)];
    if (posts === undefined) return [];
    return [
      {
        type: 'number',
        from: posts.height,
        towards: posts.height * 2,
        steps: { metric: 0.05, us: 0.0254 },
        title: (value) => ['Make the side posts ', measured(value, 'length'), ' high'],
        edits: (value) => [setQuantity(posts.origin, 'height', value, 'length')],
      },
    ];
  },
};
