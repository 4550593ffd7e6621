import type { Bows, Part, Rafters } from '@tautline/shelter';
import { type FrameAnalysis, frameView, type HouseAnalysis } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { given, notChecked, percent, step } from '../judge.ts';
import { runCheck } from '../run-check.ts';
import { whyTheyDiffer } from '../tier-why.ts';
import { bowDeflection } from './bow-deflection.ts';
import { footBearing } from './foot-bearing.ts';
import { lateralFoot } from './lateral-foot.ts';
import { overSpan } from './over-span.ts';
import { pullOut } from './pull-out.ts';
import { railSpan } from './rail-span.ts';
import { weakCoupler } from './weak-coupler.ts';

/** Checks that judge nothing but the forces and movements of a frame, so that a frame of the whole house can be put before them. */
const compared: readonly Check[] = [
  overSpan,
  bowDeflection,
  weakCoupler,
  railSpan,
  pullOut,
  lateralFoot,
  footBearing,
];

/** From this share of the capacity on, in either tier, a difference is told: own choice. */
const governs = 0.5;
/** Difference that is told, as a share of the plane frame's: own choice. */
const told = 0.1;

interface Seen {
  readonly finding: Finding;
  /** Frame of the house it is worst in, from 1. */
  readonly frame: number;
}

/** Worst finding of each check and part over the frames that can differ: the two ends, their neighbour and the middle. */
function worstInHouse(
  input: CheckInput,
  roof: Bows | Rafters,
  analysis: FrameAnalysis,
  house: HouseAnalysis,
): Map<string, Seen> {
  const last = roof.stations.length - 1;
  const frames = new Set([0, Math.min(1, last), last >> 1, Math.max(0, last - 1), last]);
  const worst = new Map<string, Seen>();
  for (const index of frames) {
    const view = frameView(input.shelter, analysis, house, index);
    const seen: CheckInput = { ...input, frame: { ok: true, analysis: view } };
    for (const finding of compared.flatMap((check) => runCheck(check, seen))) {
      const key = `${finding.id}/${finding.part}`;
      const use = finding.utilisation;
      if (use === undefined || use <= (worst.get(key)?.finding.utilisation ?? -1)) continue;
      worst.set(key, { finding, frame: index + 1 });
    }
  }
  return worst;
}

function run(input: CheckInput): Found[] {
  const { roof } = input.shelter;
  const { house, frame } = input;
  if (house?.ok !== true || (roof.type !== 'bows' && roof.type !== 'rafters')) return [];
  if (!frame.ok) return [notChecked(roof, frame.reason)];
  const whole = worstInHouse(input, roof, frame.analysis, house.house);
  return compared
    .flatMap((check) => runCheck(check, input))
    .flatMap((plane): Found[] => {
      const seen = whole.get(`${plane.id}/${plane.part}`);
      const [one, all] = [plane.utilisation, seen?.finding.utilisation];
      if (seen === undefined || one === undefined || all === undefined) return [];
      if (Math.max(one, all) < governs || Math.abs(all - one) <= told * one) return [];
      return [difference(house.house, plane, one, seen, all)];
    });
}

function difference(
  house: HouseAnalysis,
  plane: Finding,
  one: number,
  { finding, frame }: Seen,
  all: number,
): Found {
  const part: Pick<Part, 'id' | 'origin'> = { id: plane.part, origin: plane.origin };
  // Where the plane frame passes and the whole house does not, that must not go unseen.
  const missed = all > 1 && one <= 1;
  const title = compared.find((check) => check.id === plane.id)?.title ?? plane.id;
  return {
    verdict: missed ? 'fails' : 'passes',
    severity: missed ? 'warning' : 'information',
    part: part.id,
    origin: part.origin,
    related: [],
    message: [
      `${title} (${plane.part}): the typical frame by itself uses `,
      percent(one),
      ' of what it may, and the whole house in space ',
      percent(all),
      ` at frame ${frame}${finding.loadCase === undefined ? '' : ` under ${finding.loadCase}`}.`,
      ...whyTheyDiffer(house, { one, all, finding, frame: frame - 1 }),
    ],
    utilisation: all,
    ...(finding.loadCase === undefined ? {} : { loadCase: finding.loadCase }),
    source: 'house',
    steps: [
      step(
        'Δ',
        'difference of the two, told where it is more than a tenth of the typical frame',
        'Δ = u_house - u_frame',
        [
          given('u_frame', 'typical frame in its plane', one, 'percent'),
          given('u_house', 'whole house', all, 'percent'),
        ],
        all - one,
        'percent',
        'house',
      ),
      ...finding.steps,
    ],
    ...(finding.demand === undefined ? {} : { demand: finding.demand }),
    ...(finding.capacity === undefined ? {} : { capacity: finding.capacity }),
  };
}

export const tierDifference: Check = {
  id: 'tier-difference',
  title: 'Whole house against typical frame',
  asks: 'Does the whole house in space tell the same as the typical frame by itself?',
  matters:
    'Purlins and rails share loads between frames, end frames carry less roof and more wind along: the frame by itself does not know.',
  formula: '|u_house - u_frame| > 0.1 u_frame',
  symbols: [
    { symbol: 'u_frame', meaning: 'utilisation by the typical frame in its plane', kind: 'percent' },
    { symbol: 'u_house', meaning: 'utilisation in the worst frame of the whole house', kind: 'percent' },
  ],
  sources: ['house', 'frame'],
  leavesOut:
    'Looked at only in the full analysis. Film as a brace, doors in the ends, splices of purlins; checks below half of their capacity in both.',
  mayBeAccepted: 'When the lower of the two was the one trusted on purpose, with a reason.',
  needs: 'house',
  appliesTo: ({ roof }) => roof.type === 'bows' || roof.type === 'rafters',
  run,
  levers: () => [],
};
