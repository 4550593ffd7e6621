import {
  type Filled,
  type MemberItem,
  type Origin,
  type Part,
  quantityValue,
  type Shelter,
} from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, measured, step } from '../judge.ts';
import { rowsUnder } from '../rails.ts';
import { remark } from '../remark.ts';

interface FilledPart {
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly member: MemberItem;
  readonly filled: Filled;
  readonly noun: string;
  /** Top of the hollow over the ground, m. */
  readonly top: number;
}

function filledParts(shelter: Shelter): FilledPart[] {
  const { roof, sidePosts } = shelter;
  const list: FilledPart[] = [];
  if (roof.type === 'bows' && roof.filled !== undefined) {
    const { member, filled } = roof;
    list.push({ part: roof, member, filled, noun: 'bow', top: roof.springing + roof.rise });
  }
  const sides = sidePosts === undefined ? [] : [{ posts: sidePosts, noun: 'side post' }];
  for (const { posts, noun } of [...sides, ...rowsUnder(shelter)])
    if (posts.filled !== undefined)
      list.push({ part: posts, member: posts.member, filled: posts.filled, noun, top: posts.height });
  return list;
}

function onPart({ part, member, filled, noun, top }: FilledPart, coldest: number): Found {
  if (member.section.shape !== 'round-hollow')
    return remark(
      part,
      'fails',
      [`Each ${noun} of ${member.title} is solid: there is nothing in it to fill.`],
      'catalogue',
    );
  const { outside, wall } = member.section;
  const empty = Math.max(0, top - filled.upTo);
  const water = (Math.PI / 4) * (outside - 2 * wall) ** 2 * empty;
  const steps = [
    step(
      'V',
      'water the empty part above the filling holds',
      'V = π (d - 2 t)² (h - h_f) / 4',
      [
        given('d', 'outside diameter', outside, 'length'),
        given('t', 'wall', wall, 'thickness'),
        given('h', 'height of the hollow over the ground', top, 'length'),
        given('h_f', 'filled up to', filled.upTo, 'length'),
      ],
      water,
      'volume',
      'derived',
    ),
  ];
  const rots = filled.with === 'timber' && filled.member?.material.treated !== true;
  // A thumb's breadth at the top is closed by whatever sits on it.
  if (empty < 0.05)
    return remark(
      part,
      rots ? 'near its limit' : 'passes',
      [
        rots
          ? `The ${filled.member?.id ?? 'stick'} in each ${noun} is not treated, and rots in the damp of the pipe.`
          : `Each ${noun} is filled to its top: no water can stand in it.`,
      ],
      'practice',
      steps,
    );
  const freezes = coldest < 0;
  return remark(
    part,
    freezes ? 'fails' : 'near its limit',
    [
      `Each ${noun} is empty for `,
      measured(empty, 'length'),
      ' above its filling. Water that gets in cannot run out: up to ',
      measured(water, 'volume'),
      freezes
        ? ' freezes there at '
        : ' stands there, where rust and, below 0 °C, ice would work. The coldest day said has ',
      measured(coldest, 'temperature'),
      freezes ? ' and splits the pipe.' : '.',
      ' Cap it and drill a hole just above the filling, or fill it to the top.',
    ],
    'practice',
    steps,
  );
}

export const filledPipe: Check = {
  id: 'filled-pipe',
  title: 'Water in a filled pipe',
  nature: 'keeping',
  asks: 'Does water collect in a hollow post or bow above what it is filled with?',
  matters:
    'A filled foot is a cup without a drain. Ice splits plastic and steel alike, and a stick inside rots unseen.',
  formula: 'V = π/4 (d - 2 t)² (h - h_f), h_f < h and ϑ_cold < 0 °C',
  symbols: [
    { symbol: 'V', meaning: 'water that can stand above the filling', kind: 'volume' },
    { symbol: 'd, t', meaning: 'outside diameter and wall', kind: 'thickness' },
    { symbol: 'h, h_f', meaning: 'top of the hollow and of its filling over the ground', kind: 'length' },
    { symbol: 'ϑ_cold', meaning: 'coldest day', kind: 'temperature' },
  ],
  sources: ['practice', 'derived'],
  leavesOut:
    'Holes and caps, which the spec cannot say; hollow pipe that is not filled, open at its foot; weight and stiffness of the filling, which the frame counts.',
  mayBeAccepted: 'Where each pipe has a cap, and a drain hole just above its filling.',
  run: ({ shelter }: CheckInput) =>
    filledParts(shelter).map((filled) => onPart(filled, shelter.site.coldest)),
  levers: ({ shelter }, finding) => {
    const found = filledParts(shelter).find(({ part }) => part.id === finding.part);
    if (found === undefined || found.member.section.shape !== 'round-hollow') return [];
    const { origin } = found.part;
    return [
      {
        type: 'choice',
        options: [
          {
            title: ['Fill it to its top, ', measured(found.top, 'length')],
            edits: [toTop(origin, found.top)],
          },
        ],
      },
    ];
  },
};

const toTop = (block: Origin, top: number) => ({
  type: 'set' as const,
  block,
  word: 'filled',
  slots: { upTo: quantityValue(top, 'length', block) },
});
