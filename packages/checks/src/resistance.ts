import { memberResistance, type Step } from '@tautline/loads';
import type { MemberItem, Site } from '@tautline/shelter';
import { stormTemperature } from '@tautline/structure';

/** Stresses the load basis allows in a member, Pa, with how they were found. */
export interface MemberLimit {
  readonly bending: number;
  readonly axial: number;
  readonly steps: readonly Step[];
  readonly source: string;
}

/** What a member may be stressed to by a load that stays (crop, water, weight) or by a gust. */
export function memberLimit(site: Site, member: MemberItem, stay: 'steady' | 'gust'): MemberLimit {
  const { material, section } = member;
  const resistance = memberResistance({
    family: material.family,
    basis: site.basis,
    bendingStrength: material.bendingStrength,
    shearStrength: material.shearStrength,
    modulus: material.modulus,
    duration: stay === 'gust' ? 'gust' : 'season',
    temperature: stormTemperature,
    ...(material.heat === undefined ? {} : { heat: material.heat }),
    ...(section.shape === 'rectangle' ? {} : { outside: section.outside }),
    ...(section.shape === 'round-hollow' ? { wall: section.wall } : {}),
  });
  return {
    bending: resistance.bending,
    axial: resistance.compression,
    steps: resistance.steps,
    source: resistance.source,
  };
}
