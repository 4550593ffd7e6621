import type { Pond } from '@tautline/mechanics';
import type { KindName } from '@tautline/quantity';
import type { MemberItem, SpecNode } from '@tautline/shelter';
import { itemValue, quantityValue, specNode, wordValue } from '@tautline/shelter';
import { type FramePonding, pocketDepth, pullAt, rainTemperature, sectionOf } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found, MessagePiece } from '../finding.ts';
import { given, inWords, judge, measured, notChecked, step } from '../judge.ts';
import { closer, stouter, tighter } from '../levers.ts';

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const roof = shelter.roof;
  if (roof.type !== 'bows') return [];
  if (!input.frame.ok) return [notChecked(roof, input.frame.reason)];
  const { ponding, film, noPonding } = input.frame.analysis;
  if (noPonding !== undefined) return [notChecked(roof, noPonding)];
  if (ponding === undefined || film === undefined) return [notChecked(roof, 'the roof has no film on it')];
  if (ponding.verdict === 'no answer')
    return [notChecked(roof, `the frame analysis found no answer with water in the film: ${ponding.reason}`)];
  if (ponding.verdict === 'drains') return [];
  const { first, rest, path, reserve, tipping } = ponding;
  if (first === undefined) return [];
  const bent = path.find(({ volume }) => volume === tipping)?.holds ?? first.volume;
  return [
    judge({
      part: roof,
      utilisation: 1 / Math.max(reserve, 1e-3),
      demand: measured(bent, 'water'),
      capacity: measured(tipping, 'water'),
      loadCase: 'rain standing in a pocket of the film',
      message: rest === undefined ? runaway(ponding, first, roof.member.title) : atRest(ponding, rest),
      source: 'frame-ponding',
      steps: [
        inWords(
          'V_0',
          'water that the first pocket holds, on one bow',
          'V_0 = b ∫ m dx up to the brim, before the bows give under it; m = d - f/3, and 2/3 d √(d/f) where d < f',
          [
            given('b', 'spacing of the bows', roof.spacing, 'length'),
            given(
              'f',
              'sag of the film that standing water can pull',
              pocketDepth(film, pullAt(film, rainTemperature)),
              'length',
            ),
            given('d', 'greatest depth of the water, half way between two bows', first.depth, 'length'),
          ],
          first.volume,
          'water',
          'frame-ponding',
        ),
        ...path.map((entry, index) =>
          inWords(
            `V_p,${index + 1}`,
            'what the pocket holds up to its brim on the shape bent by the water',
            'V_p = b ∫ m dx up to the brim of the bent shape',
            [
              given('V', 'water on the bow', entry.volume, 'water'),
              given('d', 'its greatest depth', entry.depth, 'length'),
            ],
            entry.holds,
            'water',
            'frame-ponding',
          ),
        ),
        ...(rest === undefined
          ? []
          : [
              inWords(
                'V_rest',
                'water at rest on one bow',
                'V = V_p(V): the water stands just up to its brim',
                [
                  given('d', 'its greatest depth', rest.depth, 'length'),
                  given('δ', 'how far the roof sinks', ponding.fall, 'length'),
                ],
                rest.volume,
                'water',
                'frame-ponding',
              ),
            ]),
        (ponding.atLeast ? inWords : step)(
          'λ',
          'how many times the water that the pocket holds the bows bear',
          ponding.atLeast ? 'λ ≥ max V / V_p, followed no further' : 'λ = V / V_p',
          [
            given('V', 'water on the bow', tipping, 'water'),
            given('V_p', 'what the pocket holds then', bent, 'water'),
          ],
          reserve,
          'ratio',
          'frame-ponding',
        ),
      ],
    }),
  ];
}

const onABow = ' on each bow';

function runaway({ ended, tipping, path }: FramePonding, first: Pond, title: string): MessagePiece[] {
  const pocket = [
    'Rain standing in the film runs away with the bows: the first pocket holds ',
    measured(first.volume, 'water'),
    `${onABow}, `,
    measured(first.depth, 'length'),
    ' deep',
  ];
  if (tipping === 0) return [...pocket, `, and the ${title} does not bear the first of it.`];
  return ended === 'gives way'
    ? [
        ...pocket,
        `. The ${title} sinks under it, the pocket grows, and at about `,
        measured(path.at(-1)?.volume ?? tipping, 'water'),
        ' the bows give way.',
      ]
    : [
        ...pocket,
        '. From about ',
        measured(tipping, 'water'),
        ` on the ${title} sinks so fast that the pocket never fills.`,
      ];
}

const atRest = ({ fall, reserve, atLeast }: FramePonding, rest: Pond): MessagePiece[] => [
  'Rain fills a pocket of the film to ',
  measured(rest.volume, 'water'),
  `${onABow}, `,
  measured(rest.depth, 'length'),
  ' deep; the roof sinks ',
  measured(fall, 'length'),
  `, and the pond runs over its brim. The bows bear ${atLeast ? 'at least ' : ''}`,
  measured(reserve, 'ratio'),
  ' times what the pocket holds.',
];

export const framePonding: Check = {
  id: 'frame-ponding',
  title: 'Frame ponding',
  asks: 'When rain stands in a pocket of the film, do the bows hold it until it runs over, or do they sink so that more water gathers until they give?',
  matters:
    'This is how limber arches die: a pond, a flatter crown, a larger pond, and in the morning the house is on the ground.',
  formula: 'u = 1 / λ, λ = max over V of V / V_p(V)',
  symbols: [
    { symbol: 'V', meaning: 'water standing on one bow, raised in steps, in balance at each', kind: 'water' },
    {
      symbol: 'V_p(V)',
      meaning: 'what the pocket of the film holds up to its brim once the bow has bent under V',
      kind: 'water',
    },
    {
      symbol: 'm',
      meaning:
        'mean depth from bow to bow, where the film hangs f below the bows and the water is d deep half way',
      kind: 'length',
    },
    {
      symbol: 'λ',
      meaning:
        'how many times the water of its pocket a bow bears: above 1 the pond fills, runs over and stays',
      kind: 'ratio',
    },
  ],
  sources: ['frame-ponding'],
  leavesOut:
    'Whether the bow breaks under the pond, rain that ends before the pocket is full, water that two pockets pass to each other, hail, and bows that stand unevenly.',
  mayBeAccepted: 'Never for a house people work in during rain.',
  run,
  levers,
};

/** A ridge under the crown first, then stouter pipe, closer bows, tighter film. */
function levers(input: CheckInput, _finding: Finding, stock: Stock): Lever[] {
  const { roof, ridge, covers } = input.shelter;
  if (roof.type !== 'bows') return [];
  const cover = covers.find((entry) => entry.place === 'roof');
  const result: Lever[] =
    ridge === undefined ? [{ type: 'choice', options: ridgeOptions(input, stock) }] : [];
  result.push(stouter(roof, stock), closer(roof, 'bows'));
  if (cover?.skin.kind === 'film')
    result.push(tighter(cover, 0.2 * cover.skin.yieldStress * cover.skin.thickness));
  return result;
}

/** A galvanised pipe on posts every second or every third bow, the lightest pipe that stays within. */
function ridgeOptions(
  input: CheckInput,
  stock: Stock,
): {
  title: readonly (string | { value: number; kind: KindName })[];
  edits: readonly {
    type: 'add';
    block: typeof input.shelter.origin;
    node: SpecNode;
  }[];
}[] {
  const { shelter } = input;
  const origin = shelter.origin;
  const pipes = stock.items
    .filter((entry): entry is MemberItem => entry.kind === 'pipe' && entry.material.family === 'steel')
    .sort((a, b) => sectionOf(a).secondMoment - sectionOf(b).secondMoment);
  const post = stock.items.find(
    (entry): entry is MemberItem =>
      entry.kind === 'lumber' &&
      entry.section.shape === 'rectangle' &&
      entry.section.depth === entry.section.breadth,
  );
  if (post === undefined) return [];
  const options = [];
  for (const bays of [2, 1]) {
    for (const pipe of pipes) {
      const spacing = shelter.roof.spacing * bays;
      const posts = specNode('posts', origin, {}, [
        specNode('of', origin, { item: itemValue(post.id, origin) }),
        specNode('spaced', origin, { value: quantityValue(spacing, 'length', origin) }),
        specNode('foot', origin, { kind: wordValue('hole', origin) }),
      ]);
      const ridge = specNode('ridge', origin, { form: wordValue('pipe', origin) }, [
        specNode('of', origin, { item: itemValue(pipe.id, origin) }),
        posts,
      ]);
      options.push({
        title: [`Carry the crown on a ridge of ${pipe.title} on posts every `, measured(spacing, 'length')],
        edits: [{ type: 'add' as const, block: origin, node: ridge }],
      });
    }
  }
  return options;
}
