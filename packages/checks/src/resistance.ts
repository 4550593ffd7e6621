import { memberResistance, type Step } from '@tautline/loads';
import { type Foot, type MemberItem, postRows, railsUnder, type Shelter, type Site } from '@tautline/shelter';
import { stormTemperature } from '@tautline/structure';

/** Stresses the load basis allows in a member, Pa, with how they were found. */
export interface MemberLimit {
  readonly bending: number;
  readonly axial: number;
  /** Compressive strength of the material itself, Pa. */
  readonly crushing: number;
  readonly tension: number;
  /** Modulus under this load, Pa: what is left of it in the heat. */
  readonly modulus: number;
  readonly steps: readonly Step[];
  readonly source: string;
  /** What the rules used do not cover of this material. */
  readonly notCovered: readonly string[];
}

/**
 * What a member may be stressed to by a load that stays (crop, water, weight) or by a gust. `wet` is for
 * members in soil or in the rain.
 */
export function memberLimit(
  site: Site,
  member: MemberItem,
  stay: 'steady' | 'gust',
  wet = false,
): MemberLimit {
  const { material, section } = member;
  const resistance = memberResistance({
    family: material.family,
    basis: site.basis,
    bendingStrength: material.bendingStrength,
    shearStrength: material.shearStrength,
    modulus: material.modulus,
    duration: stay === 'gust' ? 'gust' : 'season',
    temperature: stormTemperature,
    wet,
    ...(material.heat === undefined ? {} : { heat: material.heat }),
    ...(section.shape === 'rectangle' ? {} : { outside: section.outside }),
    ...(section.shape === 'round-hollow' ? { wall: section.wall } : {}),
  });
  return {
    bending: resistance.bending,
    axial: resistance.compression,
    crushing: resistance.crushing,
    tension: resistance.tension,
    modulus: resistance.modulus,
    steps: resistance.steps,
    source: resistance.source,
    notCovered: resistance.notCovered,
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
