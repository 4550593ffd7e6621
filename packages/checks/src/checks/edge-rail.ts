import type { MemberItem, Rail, Shelter } from '@tautline/shelter';
import {
  type FrameAnalysis,
  headsOf,
  type Response,
  sectionOf,
  sidewaysSection,
  weightPerLength,
} from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { closer } from '../levers.ts';
import { memberLimit } from '../resistance.ts';

/** What the films bring a metre of rail, N/m, both positive, and the share of its strength that takes. */
interface EdgeUse {
  readonly response: Response;
  readonly sideways: number;
  readonly upright: number;
  readonly utilisation: number;
}

/** The combination that takes most of the rail between two posts a span (m) apart; undefined without blown-up films. */
export function worstEdge(
  shelter: Shelter,
  analysis: Pick<FrameAnalysis, 'states' | 'responses'>,
  member: MemberItem,
  span: number,
): EdgeUse | undefined {
  const { roof, site } = shelter;
  if (roof.type !== 'inflated') return undefined;
  const { system } = analysis.states.built;
  const heads = headsOf(roof, system);
  const own = weightPerLength(member);
  let worst: EdgeUse | undefined;
  for (const response of analysis.responses) {
    if (response.load.use === 'service') continue;
    const limit = memberLimit(site, member, response.load.duration);
    for (const { node, fx, fy } of response.load.points) {
      if (node !== heads.left && node !== heads.right) continue;
      const sideways = Math.abs(fx) / system.tributary;
      const upright = Math.abs(fy / system.tributary - own);
      const bending = (load: number, modulus: number): number => (load * span * span) / 8 / modulus;
      const stress =
        bending(sideways, sidewaysSection(member).sectionModulus) +
        bending(upright, sectionOf(member).sectionModulus);
      const utilisation = stress / limit.bending;
      if (worst === undefined || utilisation > worst.utilisation)
        worst = { response, sideways, upright, utilisation };
    }
  }
  return worst;
}

function onRail(shelter: Shelter, analysis: FrameAnalysis, rail: Rail, member: MemberItem): Found {
  const span = rail.span;
  const worst = worstEdge(shelter, analysis, member, span);
  if (worst === undefined) return notChecked(rail, 'the films bring it no load in this model');
  const { load } = worst.response;
  const limit = memberLimit(shelter.site, member, load.duration);
  const flat = sidewaysSection(member).sectionModulus;
  const stress = worst.utilisation * limit.bending;
  return judge({
    part: rail,
    utilisation: worst.utilisation,
    demand: measured(stress, 'stress'),
    capacity: measured(limit.bending, 'stress'),
    loadCase: load.title,
    message: [
      `The films pull the rail of ${member.title} inwards with `,
      measured(worst.sideways, 'line-load'),
      ' over ',
      measured(span, 'length'),
      ' between its posts, which stresses it to ',
      measured(stress, 'stress'),
      ` under ${load.title}; it may take `,
      measured(limit.bending, 'stress'),
      '.',
    ],
    source: 'beam-table',
    steps: [
      step(
        'w_h',
        'pull of both films across the rail',
        'w_h = p (R_o cos α_o + R_i cos α_i), wind and snow on top',
        [],
        worst.sideways,
        'line-load',
        'membrane-arc',
      ),
      step(
        'w_v',
        'load up or down on the rail',
        'from balance of the films',
        [],
        worst.upright,
        'line-load',
        'frame',
      ),
      step(
        'σ',
        'bending stress, both ways added',
        'σ = w_h L² / 8 W_h + w_v L² / 8 W_v',
        [
          given('L', 'distance between posts', span, 'length'),
          given('W_h', 'section modulus against a pull from the side', flat, 'section-modulus'),
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
  });
}

function run(input: CheckInput): Found[] {
  const { shelter, frame } = input;
  if (shelter.roof.type !== 'inflated') return [];
  const rail = shelter.eaveRail;
  if (rail === undefined || rail.member.kind === 'cable')
    return [notChecked(shelter.roof, 'no rail was said that holds the edges of the films')];
  if (!frame.ok) return [notChecked(rail, frame.reason)];
  return [onRail(shelter, frame.analysis, rail, rail.member)];
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
  run,
  levers: (input) => {
    const { eaveRail, sidePosts } = input.shelter;
    if (eaveRail === undefined || eaveRail.member.kind === 'cable' || sidePosts === undefined) return [];
    return [closer(sidePosts, 'posts')];
  },
};
