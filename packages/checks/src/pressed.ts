/** A straight member pressed along its length, with bending beside it. */
import { type ColumnStress, columnStress, type Step, thrustAndBending } from '@tautline/loads';
import type { MemberItem, Site } from '@tautline/shelter';
import { sectionOf } from '@tautline/structure';
import { type MemberLimit, memberLimit } from './resistance.ts';

export interface Pressed {
  /** N */
  readonly thrust: number;
  /** Pa */
  readonly bending: number;
  readonly loadCase: string;
  /** Whether it stays for months. */
  readonly steady: boolean;
  /** What age has left of the section there; the bending is that of the section that is left. */
  readonly aged?: readonly Step[];
}

export interface PressedUse {
  readonly load: Pressed;
  readonly limit: MemberLimit;
  readonly column: ColumnStress;
  readonly both: { readonly utilisation: number; readonly step: Step };
}

/** The load under which a member of this slenderness (K L / r) is used most; undefined without loads. */
export function mostPressed(
  site: Site,
  member: MemberItem,
  slenderness: number,
  wet: boolean,
  loads: readonly Pressed[],
): PressedUse | undefined {
  const { material } = member;
  const metal = material.family === 'steel' || material.family === 'aluminium';
  const limitsOf = (steady: boolean): Pick<PressedUse, 'limit' | 'column'> => {
    const limit = memberLimit(site, member, steady ? 'steady' : 'gust', wet);
    const column = columnStress({
      family: material.family,
      basis: site.basis,
      slenderness,
      modulus:
        steady && material.longTermModulus < material.modulus ? material.longTermModulus : limit.modulus,
      shortColumn: metal ? material.bendingStrength : limit.axial,
      crushing: limit.crushing,
    });
    return { limit, column };
  };
  const known = new Map<boolean, ReturnType<typeof limitsOf>>();
  let worst: PressedUse | undefined;
  for (const load of loads) {
    const limits = known.get(load.steady) ?? limitsOf(load.steady);
    known.set(load.steady, limits);
    const { limit, column } = limits;
    const both = thrustAndBending({
      axial: load.thrust / sectionOf(member).area / column.stress,
      bending: load.bending / limit.bending,
      family: material.family,
      basis: site.basis,
    });
    if (worst === undefined || both.utilisation > worst.both.utilisation)
      worst = { load, limit, column, both };
  }
  return worst;
}
