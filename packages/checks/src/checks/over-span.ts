import { type Foot, lengthOf, type MemberItem, type Part, type Shelter } from '@tautline/shelter';
import { type FrameAnalysis, type SectionForce, sectionOf, stormTemperature } from '@tautline/structure';
import { type MemberAgeing, memberAgeing } from '../ageing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, MessagePiece } from '../finding.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { closer, flatter, stouter, thinner, tiedHeads } from '../levers.ts';
import { type FrameLimit, type Limit, type Told, worstOf } from '../limit.ts';
import { inSoil } from '../resistance.ts';
import { bendingForces, type Look, looksAt } from '../springing.ts';
import { type StressedPlace, worstPlaceIn } from '../stress.ts';

/** Nearer to the end than this is told as at the foot, m: own choice. */
const atTheFoot = 0.02;

interface Framed {
  readonly part: Part;
  readonly member: MemberItem;
  readonly noun: string;
  /** What gives at the limit, where it is more than bending. */
  readonly gives?: string;
  readonly foot?: Foot;
  /** Length of a bow, which has a foot at both ends, m. */
  readonly total?: number;
}

/** Members of the typical frame: the bow or rafter, the tie between two rafters, and the posts under them. */
function framed({ roof, sidePosts }: Shelter): readonly Framed[] {
  const members: Framed[] = [];
  if (roof.type === 'bows')
    members.push({
      part: roof,
      member: roof.member,
      noun: 'bow',
      total: lengthOf(roof.line),
      ...(roof.foot === undefined ? {} : { foot: roof.foot }),
    });
  if (roof.type === 'rafters') {
    members.push({ part: roof, member: roof.member, noun: 'rafter' });
    if (roof.tie !== undefined)
      members.push({
        part: roof.tie,
        member: roof.tie.member,
        noun: 'tie between the rafters',
        gives: 'the tie between the rafters is pulled or pressed past its strength',
      });
  }
  if (sidePosts !== undefined)
    members.push({ part: sidePosts, member: sidePosts.member, noun: 'side post', foot: sidePosts.foot });
  return members;
}

function limits({ shelter, frame, on }: CheckInput): Limit[] {
  if (!frame.ok) return [];
  const { states } = frame.analysis;
  return framed(shelter).map((member) => ofMember(shelter, member, states, on));
}

/** The member at the place along it that is used most. */
function ofMember(
  shelter: Shelter,
  framed: Framed,
  states: FrameAnalysis['states'],
  on: string | undefined,
): FrameLimit {
  const { part, member, noun, foot, total } = framed;
  const { sprung } = states.built.system;
  const looks = looksAt(shelter.site, member, states, { wet: inSoil(foot), sprung });
  const ageing = memberAgeing(shelter, on, member, foot, total);
  return {
    by: 'frame',
    part,
    gives: framed.gives ?? `the ${noun} bends past its strength`,
    sacrificial: part.sacrificial === true,
    unasked: 'the frame analysis has no forces for this part',
    use: (response) => {
      const found = looks(response).flatMap((look) => {
        const { limit } = look;
        const forces = bendingForces(look);
        const worst = worstPlaceIn(
          { ...response, forces },
          part.id,
          member,
          ({ axialStress, bendingStress, force }) =>
            (axialStress / limit.axial + bendingStress / limit.bending) / ageing.shareAt(force.at),
        );
        if (worst === undefined) return [];
        const { place, use } = worst;
        const springing = look.springing?.[forces.indexOf(place.force)];
        return [
          {
            utilisation: use,
            loadCase: response.load.title,
            tell: () => tell(framed, place, use, { look, springing, hot: shelter.site.hottest }, ageing),
          },
        ];
      });
      return worstOf(found);
    },
  };
}

interface Asked {
  readonly look: Look;
  /** At the place that is told. */
  readonly springing: SectionForce | undefined;
  /** °C */
  readonly hot: number;
}

/** How much of a stress is the springing of the bows. */
function ofWhich(own: number, combined: number, whose: string): readonly MessagePiece[] {
  return own <= combined
    ? [', ', measured(own, 'stress'), ` of it by ${whose} springing`]
    : [`; ${whose} springing by itself is `, measured(own, 'stress'), ', which the load eases'];
}

function tell(
  { member, noun }: Framed,
  { force, bendingStress, axialStress, response }: StressedPlace,
  utilisation: number,
  { look, springing, hot }: Asked,
  ageing: MemberAgeing,
): Told {
  const { limit } = look;
  const whose = noun === 'bow' ? 'its own' : 'the bows’';
  const section = sectionOf(member);
  const left = ageing.shareAt(force.at);
  const allowed = limit.bending * left;
  const combined = utilisation * allowed;
  const sprung =
    springing === undefined
      ? undefined
      : Math.abs(springing.moment) / section.sectionModulus + Math.abs(springing.axial) / section.area;
  return {
    demand: measured(combined, 'stress'),
    capacity: measured(allowed, 'stress'),
    message: [
      `The ${noun} of ${member.title} is stressed to `,
      measured(combined, 'stress'),
      ...(force.at < atTheFoot ? [' at its foot'] : [' at ', measured(force.at, 'length'), ' from its foot']),
      ` under ${response.load.title}`,
      ...(look.relaxed === true
        ? [', in a heat of ', measured(hot, 'temperature'), ` in which ${whose} springing has relaxed`]
        : sprung === undefined
          ? []
          : ofWhich(sprung, combined, whose)),
      '; it may take ',
      measured(allowed, 'stress'),
      ...(left < 1 ? [', ', measured(left, 'percent'), ' of what sound stock may'] : []),
      '.',
    ],
    source: limit.source,
    steps: [
      inWords(
        'M',
        look.relaxed === true ? 'bending by the loads' : 'bending, locked-in bending included',
        'from the frame analysis',
        [given('s', 'place', force.at, 'length')],
        force.moment,
        'moment',
        'frame',
      ),
      inWords(
        'N',
        'force along the member (tension positive)',
        'from the frame analysis',
        [],
        force.axial,
        'force',
        'frame',
      ),
      step(
        'σ_b',
        'bending stress',
        'σ_b = |M| / W',
        [given('W', 'section modulus', section.sectionModulus, 'section-modulus')],
        bendingStress,
        'stress',
        'timoshenko:beam',
      ),
      step(
        'σ_n',
        'axial stress',
        'σ_n = |N| / A',
        [given('A', 'area', section.area, 'area')],
        axialStress,
        'stress',
        'timoshenko:beam',
      ),
      ...(sprung === undefined || look.relaxed === true
        ? []
        : [
            step(
              'σ_0',
              'of both, by the springing of the bow itself, years later',
              'σ_0 = |M_0| / W + |N_0| / A',
              [
                given('M_0', 'bending locked in', springing!.moment, 'moment'),
                given('N_0', 'thrust locked in', springing!.axial, 'force'),
                given('ϑ', 'temperature', stormTemperature, 'temperature'),
              ],
              sprung,
              'stress',
              'timoshenko:beam',
            ),
          ]),
      ...limit.steps,
      ...limit.axialSteps,
      ...ageing.stepsAt(force.at),
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
  };
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
  leavesOut:
    'Buckling along the house between purlins, local damage, holes and notches, the end frames; for plastic, a storm or a person on a pipe still hot from the sun, and a storm in the first days, before the springing has relaxed.',
  mayBeAccepted: 'For a part declared sacrificial, when the rest was checked without it.',
  needs: 'frame',
  appliesTo: (shelter) => framed(shelter).length > 0,
  limits,
  levers,
};

/** Closer frames, stouter stock, and for a sprung bow, whose own bending counts, a flatter arch or thinner pipe. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { roof, sidePosts } = input.shelter;
  if (sidePosts !== undefined && finding.part === sidePosts.id)
    return [...tiedHeads(input.shelter), stouter(sidePosts, stock), closer(sidePosts, 'posts')];
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  if (roof.type === 'rafters' && finding.part === roof.tie?.id) return [stouter(roof.tie, stock)];
  const sprung =
    roof.type === 'bows' && roof.shape === 'elastic' ? [flatter(roof), thinner(roof, stock)] : [];
  return [closer(roof, roof.type === 'bows' ? 'bows' : 'rafters'), stouter(roof, stock), ...sprung];
}
