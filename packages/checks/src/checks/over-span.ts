import { DURATIONS } from '@tautline/loads';
import { type Foot, lengthOf, type MemberItem, type Part } from '@tautline/shelter';
import { sectionOf } from '@tautline/structure';
import { memberAgeing } from '../ageing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { closer, flatter, stouter, thinner, tiedHeads } from '../levers.ts';
import { inSoil, type MemberLimit, memberLimit } from '../resistance.ts';
import { givingWay, type StressedPlace, worstPlace } from '../stress.ts';

/** Nearer to the end than this is told as at the foot, m: own choice. */
const atTheFoot = 0.02;

interface Framed {
  readonly part: Part;
  readonly member: MemberItem;
  readonly noun: string;
  readonly foot?: Foot;
  /** Length of a bow, which has a foot at both ends, m. */
  readonly total?: number;
}

/** Members of the typical frame: the bow or rafter, and the posts under it. */
function framed(input: CheckInput): readonly Framed[] {
  const { roof, sidePosts } = input.shelter;
  const members: Framed[] = [];
  if (roof.type === 'bows')
    members.push({
      part: roof,
      member: roof.member,
      noun: 'bow',
      total: lengthOf(roof.line),
      ...(roof.foot === undefined ? {} : { foot: roof.foot }),
    });
  if (roof.type === 'rafters') members.push({ part: roof, member: roof.member, noun: 'rafter' });
  if (sidePosts !== undefined)
    members.push({ part: sidePosts, member: sidePosts.member, noun: 'side post', foot: sidePosts.foot });
  return members;
}

function run(input: CheckInput): Found[] {
  if (!input.frame.ok) return [notChecked(input.shelter, input.frame.reason)];
  const { analysis } = input.frame;
  const failing = givingWay(analysis);
  return framed(input).map(({ part, member, noun, foot, total }) => {
    if (failing !== undefined && part === input.shelter.roof) {
      if (failing.status === 'no answer') {
        return notChecked(part, `the frame analysis found no answer under ${failing.load.title}`);
      }
      return judge({
        part,
        utilisation: 1 / Math.max(failing.reached, 1e-3),
        demand: measured(1, 'percent'),
        capacity: measured(failing.reached, 'percent'),
        loadCase: failing.load.title,
        message: [
          `The frame gives way at `,
          measured(failing.reached, 'percent'),
          ` of ${failing.load.title}: ${member.title} is too limber for this ${noun}.`,
        ],
        source: failing.load.source,
        steps: [
          step(
            'λ',
            'share of the load at which the frame loses its stiffness',
            'det K(λ) = 0 along the load path',
            [],
            failing.reached,
            'percent',
            'timoshenko:stability',
          ),
        ],
      });
    }
    const wet = inSoil(foot);
    const limits = new Map(
      DURATIONS.map((duration) => [duration, memberLimit(input.shelter.site, member, duration, wet)]),
    );
    const ageing = memberAgeing(input.shelter, input.on, member, foot, total);
    const limitOf = (place: StressedPlace): MemberLimit => limits.get(place.response.load.duration)!;
    const use = (place: StressedPlace): number => {
      const limit = limitOf(place);
      const fresh = place.axialStress / limit.axial + place.bendingStress / limit.bending;
      return fresh / ageing.shareAt(place.force.at);
    };
    const worst = worstPlace(analysis, part.id, member, use);
    if (worst === undefined) return notChecked(part, 'the frame analysis has no forces for this part');
    const limit = limitOf(worst);
    const utilisation = use(worst);
    const section = sectionOf(member);
    const left = ageing.shareAt(worst.force.at);
    const allowed = limit.bending * left;
    const combined = utilisation * allowed;
    return judge({
      part,
      utilisation,
      demand: measured(combined, 'stress'),
      capacity: measured(allowed, 'stress'),
      loadCase: worst.response.load.title,
      message: [
        `The ${noun} of ${member.title} is stressed to `,
        measured(combined, 'stress'),
        ...(worst.force.at < atTheFoot
          ? [' at its foot']
          : [' at ', measured(worst.force.at, 'length'), ' from its foot']),
        ` under ${worst.response.load.title}; it may take `,
        measured(allowed, 'stress'),
        ...(left < 1 ? [', ', measured(left, 'percent'), ' of what sound stock may'] : []),
        '.',
      ],
      source: limit.source,
      steps: [
        step(
          'M',
          'bending, locked-in bending included',
          'from the frame analysis',
          [given('s', 'place', worst.force.at, 'length')],
          worst.force.moment,
          'moment',
          'frame',
        ),
        step(
          'N',
          'force along the member (tension positive)',
          'from the frame analysis',
          [],
          worst.force.axial,
          'force',
          'frame',
        ),
        step(
          'σ_b',
          'bending stress',
          'σ_b = |M| / W',
          [given('W', 'section modulus', section.sectionModulus, 'section-modulus')],
          worst.bendingStress,
          'stress',
          'timoshenko:beam',
        ),
        step(
          'σ_n',
          'axial stress',
          'σ_n = |N| / A',
          [given('A', 'area', section.area, 'area')],
          worst.axialStress,
          'stress',
          'timoshenko:beam',
        ),
        ...limit.steps,
        ...ageing.stepsAt(worst.force.at),
        step(
          'u',
          'utilisation',
          left < 1 ? 'u = (σ_n / f_n + σ_b / f_b) / η' : 'u = σ_n / f_n + σ_b / f_b',
          [
            given('f_n', 'axial stress allowed', limit.axial, 'stress'),
            given('f_b', 'bending stress allowed', limit.bending, 'stress'),
            ...(left < 1 ? [given('η', 'strength left there', left, 'percent')] : []),
          ],
          utilisation,
          'percent',
          limit.source,
        ),
      ],
    });
  });
}

export const overSpan: Check = {
  id: 'over-span',
  title: 'Over-span',
  asks: 'Does the bow, rafter or post carry its bending and thrust in the worst combination of weight, crop, snow and wind?',
  matters:
    'A member that spans too far for its size bends past its strength in the first real gust, and takes the film with it.',
  formula: 'u = (σ_n / f_n + σ_b / f_b) / η',
  symbols: [
    {
      symbol: 'σ_b',
      meaning: 'bending stress, with the locked-in part',
      kind: 'stress',
    },
    { symbol: 'σ_n', meaning: 'stress along the member', kind: 'stress' },
    {
      symbol: 'f_b, f_n',
      meaning: 'stresses the load basis allows',
      kind: 'stress',
    },
    {
      symbol: 'η',
      meaning: 'strength that rot has left near the soil, 1 elsewhere and where the age is not known',
      kind: 'percent',
    },
  ],
  sources: ['frame', 'practice:wood-in-soil', 'janssen:bamboo-life', 'uni-tr-5'],
  leavesOut: 'Buckling along the house between purlins, local damage, holes and notches, the end frames.',
  mayBeAccepted: 'For a part declared sacrificial, when the rest was checked without it.',
  run,
  levers,
};

/** Closer frames, stouter stock, and for a sprung bow, whose own bending counts, a flatter arch or thinner pipe. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { roof, sidePosts } = input.shelter;
  if (sidePosts !== undefined && finding.part === sidePosts.id)
    return [...tiedHeads(input.shelter), stouter(sidePosts, stock), closer(sidePosts, 'posts')];
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const sprung =
    roof.type === 'bows' && roof.shape === 'elastic' ? [flatter(roof), thinner(roof, stock)] : [];
  return [closer(roof, roof.type === 'bows' ? 'bows' : 'rafters'), stouter(roof, stock), ...sprung];
}
