/** A straight member pressed along its length, with bending beside it. */
import {
  type ColumnStress,
  columnStress,
  type Duration,
  type Step,
  thrustAndBending,
  thrustAndBendingUse,
} from '@tautline/loads';
import type { MemberItem, Site } from '@tautline/shelter';
import { sectionOf } from '@tautline/structure';
import { type MemberLimit, memberLimit } from './resistance.ts';

export interface Pressed {
  /** N */
  readonly thrust: number;
  /** Pa */
  readonly bending: number;
  readonly loadCase: string;
  readonly duration: Duration;
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
  const { area } = sectionOf(member);
  const metal = material.family === 'steel' || material.family === 'aluminium';
  const limitsOf = (duration: Duration): Pick<PressedUse, 'limit' | 'column'> => {
    const limit = memberLimit(site, member, duration, wet);
    const column = columnStress({
      family: material.family,
      basis: site.basis,
      slenderness,
      modulus: limit.modulus,
      shortColumn: metal ? material.bendingStrength : limit.axial,
      crushing: limit.crushing,
    });
    return { limit, column };
  };
  const known = new Map<Duration, ReturnType<typeof limitsOf>>();
  const together = ({ thrust, bending }: Pressed, { limit, column }: ReturnType<typeof limitsOf>) => ({
    axial: thrust / area / column.stress,
    bending: bending / limit.bending,
    family: material.family,
    basis: site.basis,
  });
  let worst: { readonly load: Pressed; readonly use: number } | undefined;
  for (const load of loads) {
    const limits = known.get(load.duration) ?? limitsOf(load.duration);
    known.set(load.duration, limits);
    const use = thrustAndBendingUse(together(load, limits));
    if (worst === undefined || use > worst.use) worst = { load, use };
  }
  if (worst === undefined) return undefined;
  const { load } = worst;
  const limits = known.get(load.duration) ?? limitsOf(load.duration);
  return { load, ...limits, both: thrustAndBending(together(load, limits)) };
}
