import type { Inflated, MemberItem, Rail, Shelter } from '@tautline/shelter';
import {
  type FrameAnalysis,
  headsOf,
  type Response,
  sectionOf,
  sidewaysSection,
  weightPerLength,
} from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { closer } from '../levers.ts';
import { type Limit, type Told, type Use, unknown, worstOf } from '../limit.ts';
import { limitsUnder, type MemberLimit } from '../resistance.ts';

function limits({ shelter, frame }: CheckInput): Limit[] {
  const { roof, eaveRail: rail } = shelter;
  if (roof.type !== 'inflated' || !frame.ok) return [];
  if (rail === undefined || rail.member.kind === 'cable')
    return [unknown(roof, 'no rail was said that holds the edges of the films')];
  return [
    {
      by: 'frame',
      part: rail,
      gives: 'the films bend the rail inwards past its strength',
      sacrificial: rail.sacrificial === true,
      unasked: 'the films bring it no load in this model',
      use: edgeUse(shelter, roof, frame.analysis.states.built.system, rail, rail.member),
    },
  ];
}

/** What the films bring a metre of rail, N/m, both positive. */
interface EdgeLoad {
  readonly sideways: number;
  readonly upright: number;
}

/** The harder pulled of the two rails in one response. */
function edgeUse(
  { site }: Shelter,
  roof: Inflated,
  system: FrameAnalysis['states']['built']['system'],
  rail: Rail,
  member: MemberItem,
): (response: Response) => Use | undefined {
  const heads = headsOf(roof, system);
  const own = weightPerLength(member);
  const limitUnder = limitsUnder(site, member);
  const flat = sidewaysSection(member).sectionModulus;
  const tall = sectionOf(member).sectionModulus;
  const bending = (load: number, modulus: number): number => (load * rail.span ** 2) / 8 / modulus;
  return ({ load }) => {
    const limit = limitUnder(load);
    return worstOf(
      load.points
        .filter(({ node }) => node === heads.left || node === heads.right)
        .map(({ fx, fy }) => {
          const on: EdgeLoad = {
            sideways: Math.abs(fx) / system.tributary,
            upright: Math.abs(fy / system.tributary - own),
          };
          const stress = bending(on.sideways, flat) + bending(on.upright, tall);
          return {
            utilisation: stress / limit.bending,
            loadCase: load.title,
            tell: () => tell(rail, member, on, stress, limit, load.title),
          };
        }),
    );
  };
}

function tell(
  { span }: Rail,
  member: MemberItem,
  { sideways, upright }: EdgeLoad,
  stress: number,
  limit: MemberLimit,
  loadCase: string,
): Told {
  return {
    demand: measured(stress, 'stress'),
    capacity: measured(limit.bending, 'stress'),
    message: [
      `The films pull the rail of ${member.title} inwards with `,
      measured(sideways, 'line-load'),
      ' over ',
      measured(span, 'length'),
      ' between its posts, which stresses it to ',
      measured(stress, 'stress'),
      ` under ${loadCase}; it may take `,
      measured(limit.bending, 'stress'),
      '.',
    ],
    source: 'beam-table',
    steps: [
      inWords(
        'w_h',
        'pull of both films across the rail',
        'w_h = p (R_o cos α_o + R_i cos α_i), wind and snow on top',
        [],
        sideways,
        'line-load',
        'membrane-arc',
      ),
      inWords(
        'w_v',
        'load up or down on the rail',
        'from balance of the films',
        [],
        upright,
        'line-load',
        'frame',
      ),
      step(
        'σ',
        'bending stress, both ways added',
        'σ = |w_h| L² / (8 W_h) + |w_v| L² / (8 W_v)',
        [
          given('L', 'distance between posts', span, 'length'),
          given(
            'W_h',
            'section modulus against a pull from the side',
            sidewaysSection(member).sectionModulus,
            'section-modulus',
          ),
          given(
            'W_v',
            'section modulus against a load from above',
            sectionOf(member).sectionModulus,
            'section-modulus',
          ),
        ],
        stress,
        'stress',
        'beam-table',
      ),
      ...limit.steps,
    ],
  };
}

export const edgeRail: Check = {
  id: 'edge-rail',
  title: 'Rail under blown-up films',
  asks: 'Does the rail that holds the edges of two blown-up films stand their pull inwards?',
  matters:
    'A blown-up roof pulls its two sides together; a rail on its narrow side bends in between the posts.',
  formula: 'u = (w_h L² / 8 W_h + w_v L² / 8 W_v) / f_b',
  symbols: [
    { symbol: 'w_h', meaning: 'pull of the films across the rail', kind: 'line-load' },
    { symbol: 'w_v', meaning: 'load up or down', kind: 'line-load' },
    { symbol: 'L', meaning: 'distance between posts', kind: 'length' },
    { symbol: 'W_h, W_v', meaning: 'section modulus from the side and from above', kind: 'section-modulus' },
    { symbol: 'f_b', meaning: 'bending stress the load basis allows', kind: 'stress' },
  ],
  sources: ['membrane-arc', 'beam-table', 'frame'],
  leavesOut:
    'How the rail is fixed to its posts, twisting by a film that pulls at its edge, joints of the rail.',
  mayBeAccepted: 'When boards or struts hold the rail between the posts that the spec does not name.',
  needs: 'frame',
  appliesTo: ({ roof }) => roof.type === 'inflated',
  limits,
  levers: (input) => {
    const { eaveRail, sidePosts } = input.shelter;
    if (eaveRail === undefined || eaveRail.member.kind === 'cable' || sidePosts === undefined) return [];
    return [closer(sidePosts, 'posts')];
  },
};
