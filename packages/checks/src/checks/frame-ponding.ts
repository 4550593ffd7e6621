import type { MemberItem, SpecNode } from '@tautline/shelter';
import { itemValue, quantityValue, specNode, wordValue } from '@tautline/shelter';
import { gravity, sectionOf } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { closer, stouter, tighter } from '../levers.ts';

function run(input: CheckInput): Finding[] {
  const { shelter } = input;
  const roof = shelter.roof;
  if (roof.type !== 'bows') return [];
  if (!input.frame.ok) return [notChecked(framePonding.id, roof, input.frame.reason)];
  const { ponding, film, noPonding } = input.frame.analysis;
  if (noPonding !== undefined) return [notChecked(framePonding.id, roof, noPonding)];
  if (ponding === undefined || film === undefined)
    return [notChecked(framePonding.id, roof, 'the roof has no film on it')];
  if (ponding.verdict === 'no answer')
    return [notChecked(framePonding.id, roof, 'the frame analysis found no answer with water on the crown')];
  if (ponding.verdict === 'drains') return [];
  const runsAway = ponding.verdict === 'runs away';
  const tipping = Math.max(ponding.reserve, 1e-3) * ponding.firstWater;
  return [
    judge({
      id: framePonding.id,
      part: roof,
      utilisation: 1 / Math.max(ponding.reserve, 1e-3),
      demand: measured(ponding.firstWater / gravity, 'mass'),
      capacity: measured(tipping / gravity, 'mass'),
      loadCase: 'rain standing in a pocket of the film at the crown',
      message: runsAway
        ? [
            'A pond at the crown runs away: a pocket of the film holds ',
            measured(ponding.firstWater / gravity, 'mass'),
            ` of water on each bow, and from `,
            measured(tipping / gravity, 'mass'),
            ` on the ${roof.member.title} sinks faster than the water rises.`,
          ]
        : [
            'A pocket of the film at the crown holds ',
            measured(ponding.firstWater / gravity, 'mass'),
            ' of water on each bow; the crown sinks ',
            measured(ponding.crownFall, 'length'),
            ' and the pond comes to rest. It would run away from ',
            measured(tipping / gravity, 'mass'),
            ' on.',
          ],
      source: 'frame-ponding',
      steps: [
        step(
          'W_0',
          'water in the first pocket, on one bow',
          'W_0 = γ V(sag, undeflected crown)',
          [given('s', 'spacing of the bows', roof.spacing, 'length')],
          ponding.firstWater / gravity,
          'mass',
          'frame-ponding',
        ),
        ...ponding.trail.map((entry, index) =>
          step(
            `γV_${index + 1}`,
            'water the pocket would hold',
            'γ V(shape under W)',
            [
              given('W', 'water on the bow', entry.water / gravity, 'mass'),
              given('δ', 'fall of the crown', entry.crownFall, 'length'),
            ],
            entry.held / gravity,
            'mass',
            'frame-ponding',
          ),
        ),
        step(
          'λ',
          'how many times as large the pocket could be before the pond runs away',
          'λ = max W / γV(W)',
          [],
          ponding.reserve,
          'ratio',
          'frame-ponding',
        ),
      ],
    }),
  ];
}

export const framePonding: Check = {
  id: 'frame-ponding',
  title: 'Frame ponding',
  asks: 'When rain stands in a pocket of the film at the crown, does the bow hold it, or sink so that more water gathers until it gives?',
  matters:
    'This is how limber arches die: a pond, a flatter crown, a larger pond, and in the morning the house is on the ground.',
  formula: 'u = 1 / λ, λ = max over W of W / γV(W)',
  symbols: [
    { symbol: 'W', meaning: 'water standing on one bow', kind: 'mass' },
    {
      symbol: 'V(W)',
      meaning: 'volume the pocket has once the bow has bent under W',
      kind: 'volume',
    },
    {
      symbol: 'λ',
      meaning: 'how many times as large the pocket could be',
      kind: 'ratio',
    },
  ],
  sources: ['frame-ponding'],
  leavesOut: 'Water that sits off the crown, hail, and bows that stand unevenly.',
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
  title: readonly (string | { value: number; kind: string })[];
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
