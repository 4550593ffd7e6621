import {
  type Duration,
  HOURS,
  jointShare,
  lasts,
  type MemberInput,
  memberResistance,
  type Step,
} from '@tautline/loads';
import {
  type Foot,
  type JointItem,
  type MemberItem,
  postRows,
  railsUnder,
  type Shelter,
  type Site,
} from '@tautline/shelter';
import { modulusShare, relaxedShare, sectionOf, stormTemperature } from '@tautline/structure';
import { given, step } from './judge.ts';

/** Stresses the load basis allows in a member, Pa, with how they were found. */
export interface MemberLimit {
  readonly bending: number;
  readonly axial: number;
  /** Compressive strength of the material itself, Pa. */
  readonly crushing: number;
  readonly tension: number;
  /** Modulus that keeps a column of it straight under this load, Pa: what heat and creep leave of it. */
  readonly modulus: number;
  readonly steps: readonly Step[];
  readonly source: string;
  /** What the rules used do not cover of this material. */
  readonly notCovered: readonly string[];
}

/**
 * What a member may be stressed to by a load that stays so long. `wet` is for members in soil or in the rain.
 */
export function memberLimit(site: Site, member: MemberItem, duration: Duration, wet = false): MemberLimit {
  const resistance = memberResistance(asked(site, member, duration, wet));
  return {
    bending: resistance.bending,
    axial: resistance.compression,
    crushing: resistance.crushing,
    tension: resistance.tension,
    modulus: resistance.modulus * columnShare(member, duration),
    steps: resistance.steps,
    source: resistance.source,
    notCovered: resistance.notCovered,
  };
}

function asked(site: Site, member: MemberItem, duration: Duration, wet: boolean): MemberInput {
  const { material, section } = member;
  return {
    family: material.family,
    basis: site.basis,
    bendingStrength: material.bendingStrength,
    shearStrength: material.shearStrength,
    modulus: material.modulus,
    duration,
    temperature: stormTemperature,
    wet,
    ...(material.heat === undefined ? {} : { heat: material.heat }),
    ...(section.shape === 'rectangle' ? {} : { outside: section.outside }),
    ...(section.shape === 'round-hollow' ? { wall: section.wall } : {}),
  };
}

/** What a joint in a member may be counted on for, by the factors of what it joins. */
export interface JointLimit {
  /** N·m; no more than the member itself may be bent with. */
  readonly moment: number;
  /** N */
  readonly pull: number;
  readonly steps: readonly Step[];
}

/** The limit of a joint under each load on it; worked out once for each duration. */
export function jointLimits(
  site: Site,
  member: MemberItem,
  { momentCapacity, pullCapacity }: Pick<JointItem, 'momentCapacity' | 'pullCapacity'>,
): (load: { readonly duration: Duration }) => JointLimit {
  const limitUnder = limitsUnder(site, member);
  const { sectionModulus } = sectionOf(member);
  const known = new Map<Duration, JointLimit>();
  return (load) => {
    const { duration } = load;
    const found = known.get(duration);
    if (found !== undefined) return found;
    const { share, step: shareStep } = jointShare(asked(site, member, duration, false));
    const { bending } = limitUnder(load);
    const moment = Math.min(share * momentCapacity, bending * sectionModulus);
    const pull = share * pullCapacity;
    const limit: JointLimit = {
      moment,
      pull,
      steps: [
        shareStep,
        step(
          'M_a',
          'bending it may be counted on for, no more than what it joins',
          'M_a = min(φ_j M_j, f_b W)',
          [
            given('M_j', 'bending at which it gives', momentCapacity, 'moment'),
            given('f_b', 'bending stress the member may have', bending, 'stress'),
            given('W', 'section modulus of the member', sectionModulus, 'section-modulus'),
          ],
          moment,
          'moment',
          'catalogue',
        ),
        step(
          'N_a',
          'pull it may be counted on for',
          'N_a = φ_j N_j',
          [given('N_j', 'pull at which it comes apart', pullCapacity, 'force')],
          pull,
          'force',
          'catalogue',
        ),
      ],
    };
    known.set(duration, limit);
    return limit;
  };
}

/**
 * Share of the modulus that a column has left. A plastic one creeps with every hour. Wood is taken at its long-term
 * modulus under what stays for months (own choice: NDS 3.7 and EN 1995 6.3.2 ask for no creep), and at its full one
 * under snow and less, as both have it.
 */
function columnShare(member: MemberItem, duration: Duration): number {
  const { family } = member.material;
  const grown = family === 'timber' || family === 'bamboo' || family === 'green-wood';
  if (grown) return lasts(duration) ? relaxedShare(member) : 1;
  return modulusShare(member, HOURS[duration]);
}

/** What a member may be stressed to under each load on it; worked out once for each duration. */
export function limitsUnder(
  site: Site,
  member: MemberItem,
  wet = false,
): (load: { readonly duration: Duration }) => MemberLimit {
  const known = new Map<Duration, MemberLimit>();
  return ({ duration }) => {
    const limit = known.get(duration) ?? memberLimit(site, member, duration, wet);
    known.set(duration, limit);
    return limit;
  };
}

/** Feet whose member stands in the soil itself, and so in the wet. */
export function inSoil(foot: Foot | undefined): boolean {
  return foot !== undefined && ['driven', 'hole', 'poked', 'concrete'].includes(foot.kind) && foot.driven > 0;
}

/** What the rules of resistance leave open for the members of a shelter, each once. */
export function materialsNotCovered(shelter: Shelter): readonly string[] {
  const { roof, eaveRail, purlins } = shelter;
  const under = railsUnder(shelter);
  const members = [
    ...(roof.type === 'bows' || roof.type === 'rafters' ? [roof.member] : []),
    ...postRows(shelter).map(({ member }) => member),
    ...[eaveRail, ...under, ...purlins].flatMap((rail) =>
      rail === undefined || rail.member.kind === 'cable' ? [] : [rail.member],
    ),
  ];
  return [...new Set(members.flatMap((member) => memberLimit(shelter.site, member, 'gust').notCovered))];
}
