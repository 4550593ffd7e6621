import { clearHeightAt, type Requirement, type Shelter } from '@tautline/shelter';
import { type FrameAnalysis, type Response, roofHeightAt } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { higher, risen } from '../levers.ts';
import { setQuantity } from '../slots.ts';

interface Asked {
  readonly height: number;
  readonly at: number;
  readonly what: string;
  readonly part: Pick<Requirement, 'id' | 'origin'>;
}

/** Heights somebody asked for: crops under the roof, and required headroom. */
function askedHeights(shelter: Shelter): Asked[] {
  const crops = shelter.crops
    .filter((crop) => crop.height > 0)
    .map((crop) => ({
      height: crop.height,
      at: crop.fromSide,
      what: crop.name,
      part: crop,
    }));
  const required = shelter.requirements
    .filter(
      (entry) => entry.subject === 'headroom' && (entry.comparison === '>=' || entry.comparison === '>'),
    )
    .map((entry) => ({
      height: entry.value,
      at: entry.at ?? shelter.width / 2,
      what: 'the headroom asked for',
      part: entry,
    }));
  return [...required, ...crops];
}

/** The response in use (not a storm) under which the roof comes down lowest at x. */
function lowest(analysis: FrameAnalysis, x: number): { response: Response; height: number } | undefined {
  let worst: { response: Response; height: number } | undefined;
  for (const response of analysis.responses) {
    if (!response.load.sustained || response.status !== 'holds') continue;
    const height = roofHeightAt(analysis.states[response.condition], response, x);
    if (height !== undefined && (worst === undefined || height < worst.height)) worst = { response, height };
  }
  return worst;
}

function run(input: CheckInput): Finding[] {
  const { shelter } = input;
  if (shelter.roof.type === 'cap') return askedHeights(shelter).flatMap((asked) => underCap(shelter, asked));
  if (!input.frame.ok) return [notChecked(bowDeflection.id, shelter, input.frame.reason)];
  const { analysis } = input.frame;
  const asked = askedHeights(shelter);
  if (asked.length === 0) {
    return [notChecked(bowDeflection.id, shelter.roof, 'no crop height and no required headroom was said')];
  }
  return asked.map(({ height, at, what, part }) => {
    const left = lowest(analysis, at);
    const right = lowest(analysis, shelter.width - at);
    const worst = left !== undefined && right !== undefined && right.height < left.height ? right : left;
    if (worst === undefined)
      return notChecked(bowDeflection.id, part, 'the frame does not reach over this place or gives way');
    return judge({
      id: bowDeflection.id,
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
        measured(at, 'length'),
        ` from the side under ${worst.response.load.title}, after creep; ${what} needs `,
        measured(height, 'length'),
        '.',
      ],
      source: 'frame',
      steps: [
        step(
          'y',
          'height of the bent roof line there',
          'from the frame analysis with the long-term modulus',
          [given('x', 'distance from the side', at, 'length')],
          worst.height,
          'length',
          'frame',
        ),
        step('h', `height for ${what}`, 'as said', [], height, 'length', 'derived'),
      ],
    });
  });
}

/** A rigid cap does not settle: its height is that of its shape. */
function underCap(shelter: Shelter, { height, at, what, part }: Asked): Finding[] {
  const there = clearHeightAt(shelter, at);
  if (there === undefined)
    return [notChecked(bowDeflection.id, part, 'the cap does not reach over this place')];
  return [
    judge({
      id: bowDeflection.id,
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
        ` from the side; ${what} needs `,
        measured(height, 'length'),
        '.',
      ],
      source: 'derived',
      steps: [
        step(
          'y',
          'height of the cap there',
          'from the geometry',
          [given('x', 'distance from the side', at, 'length')],
          there,
          'length',
          'derived',
        ),
        step('h', `height for ${what}`, 'as said', [], height, 'length', 'derived'),
      ],
    }),
  ];
}

export const bowDeflection: Check = {
  id: 'bow-deflection',
  title: 'Deflection against headroom',
  asks: 'Once the roof has settled under its own weight, the crop and the years, is there still room for the crop and for a head?',
  matters:
    'Bows sag with time. Film that comes down to the crop scorches it, and a low side row is not picked.',
  formula: 'u = h / y',
  symbols: [
    { symbol: 'h', meaning: 'height asked for', kind: 'length' },
    {
      symbol: 'y',
      meaning: 'height of the roof line after deflection',
      kind: 'length',
    },
  ],
  sources: ['frame', 'derived'],
  leavesOut: 'Sway in gusts, which passes; the thickness of the pipe; ground that is not level.',
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
