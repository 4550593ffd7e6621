import {
  type Duration,
  HOURS,
  jointShare,
  lasts,
  levelOf,
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
import {
  heatFactors,
  modulusShare,
  relaxedShare,
  sectionOf,
  stormTemperature,
  temperatureUnder,
} from '@tautline/structure';
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
  /** How the bending stress was found, and how that of a thrust. */
  readonly steps: readonly Step[];
  readonly axialSteps: readonly Step[];
  readonly source: string;
  /** What the rules used do not cover of this material. */
  readonly notCovered: readonly string[];
}

/** Share of the short-term strength a pipe may be bent to while it goes up: common practice, no source. */
const buildingShare = 0.67;

const grown = ({ material: { family } }: MemberItem): boolean =>
  family === 'timber' || family === 'bamboo' || family === 'green-wood';
const plastic = ({ material: { family } }: MemberItem): boolean =>
  family === 'pvc' || family === 'polyethylene' || family === 'polycarbonate' || family === 'other';

/** From here on the rules for wood ask for less, °C (NDS table 2.3.3, 100 °F). */
const hotForWood = 38;

/** Temperature a member is judged at under loads that stay so long, °C. */
function judgedAt(site: Site, member: MemberItem, duration: Duration): number {
  return grown(member) ? stormTemperature : temperatureUnder(site, duration);
}

/**
 * What a member may be stressed to by a load that stays so long, in the heat that such a load meets or at another
 * `temperature` (°C). `wet` is for members in soil or in the rain.
 */
export function memberLimit(
  site: Site,
  member: MemberItem,
  duration: Duration,
  wet = false,
  temperature = judgedAt(site, member, duration),
): MemberLimit {
  const resistance = memberResistance(asked(site, member, duration, wet, temperature));
  const stays = duration === 'permanent' && plastic(member) ? mayStay(site, member, temperature) : undefined;
  const most = stays?.value ?? Number.POSITIVE_INFINITY;
  return {
    bending: Math.min(resistance.bending, most),
    axial: Math.min(resistance.compression, most),
    crushing: resistance.crushing,
    tension: Math.min(resistance.tension, most),
    modulus: resistance.modulus * columnShare(member, duration),
    steps: [...resistance.steps, ...(stays === undefined ? [] : [stays])],
    axialSteps: resistance.compressionSteps,
    source: resistance.source,
    notCovered: [
      ...resistance.notCovered,
      ...(grown(member) && site.hottest > hotForWood
        ? [
            'Wood and bamboo are judged as at 23 °C: NDS 2.3.3 asks for less where they stay hot, not where the sun warms them by day (from memory).',
          ]
        : []),
    ],
  };
}

/** The stress that the catalogue lets stay in a plastic, which bounds what it may have for good. */
function mayStay(site: Site, member: MemberItem, temperature: number): Step {
  const { strength } = heatFactors(member, temperature);
  const level = levelOf(site.basis);
  return step(
    'f_stay',
    'stress that may stay, which it may have at most',
    'f_stay = f_0 k_T · level',
    [
      given('f_0', 'by the catalogue', member.material.sustainedStrength, 'stress'),
      given('k_T', 'strength kept at that temperature', strength, 'ratio'),
      given('level', 'allowable to factored loads', level, 'ratio'),
    ],
    member.material.sustainedStrength * strength * level,
    'stress',
    'catalogue',
  );
}

/** What a member may be bent to on the cold day it goes up: for an hour, and in the builder's own hands. */
export function buildingLimit(site: Site, member: MemberItem): MemberLimit {
  const temperature = temperatureUnder(site, 'built');
  const { strength, modulus } = heatFactors(member, temperature);
  const may = member.material.bendingStrength * strength * buildingShare;
  const steps = [
    step(
      'f_built',
      'stress allowed while building',
      'f_built = 0.67 f_b k_T',
      [
        given('f_b', 'bending strength', member.material.bendingStrength, 'stress'),
        given('ϑ_cold', 'coldest day of building', temperature, 'temperature'),
        given('k_T', 'strength kept at that temperature', strength, 'ratio'),
      ],
      may,
      'stress',
      'practice',
    ),
  ];
  return {
    bending: may,
    axial: may,
    crushing: member.material.bendingStrength,
    tension: may,
    modulus: member.material.modulus * modulus,
    steps,
    axialSteps: steps,
    source: 'practice',
    notCovered: [],
  };
}

function asked(
  site: Site,
  member: MemberItem,
  duration: Duration,
  wet: boolean,
  temperature: number,
): MemberInput {
  const { material, section } = member;
  return {
    family: material.family,
    basis: site.basis,
    bendingStrength: material.bendingStrength,
    shearStrength: material.shearStrength,
    modulus: material.modulus,
    duration,
    temperature,
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

/**
 * The limit of a joint under each load on it; worked out once for each duration. At 23 °C: a coupler in the heat is not
 * looked at.
 */
export function jointLimits(
  site: Site,
  member: MemberItem,
  { momentCapacity, pullCapacity }: Pick<JointItem, 'momentCapacity' | 'pullCapacity'>,
): (load: { readonly duration: Duration }) => JointLimit {
  const { sectionModulus } = sectionOf(member);
  const known = new Map<Duration, JointLimit>();
  return ({ duration }) => {
    const found = known.get(duration);
    if (found !== undefined) return found;
    const { share, step: shareStep } = jointShare(asked(site, member, duration, false, stormTemperature));
    const { bending } = memberLimit(site, member, duration, false, stormTemperature);
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
  if (grown(member)) return lasts(duration) ? relaxedShare(member) : 1;
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
  const limits = members.flatMap((member) =>
    (['gust', 'season'] as const).map((duration) => memberLimit(shelter.site, member, duration)),
  );
  return [...new Set(limits.flatMap(({ notCovered }) => notCovered))];
}
