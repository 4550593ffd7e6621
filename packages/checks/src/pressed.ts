/** A straight member pressed along its length, with bending beside it. */
import {
  type BothUse,
  type ColumnStress,
  columnStress,
  type Duration,
  type Step,
  thrustAndBending,
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
  /** Temperature it is asked at, °C; that which the duration has where absent. */
  readonly temperature?: number;
  /** What age has left of the section there; the bending is that of the section that is left. */
  readonly aged?: readonly Step[];
}

export interface PressedUse {
  readonly load: Pressed;
  readonly limit: MemberLimit;
  readonly column: ColumnStress;
  readonly both: BothUse;
}

/**
 * What a member of this slenderness (K L / r) uses under one load after another; what it may take is worked out once
 * for each duration.
 */
export function pressedUse(
  site: Site,
  member: MemberItem,
  slenderness: number,
  wet: boolean,
): (load: Pressed) => PressedUse {
  const { material } = member;
  const { area } = sectionOf(member);
  const metal = material.family === 'steel' || material.family === 'aluminium';
  const limitsOf = ({ duration, temperature }: Pressed): Pick<PressedUse, 'limit' | 'column'> => {
    const limit = memberLimit(site, member, duration, wet, temperature);
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
  const known = new Map<string, ReturnType<typeof limitsOf>>();
  return (load) => {
    const key = `${load.duration} ${load.temperature}`;
    const limits = known.get(key) ?? limitsOf(load);
    known.set(key, limits);
    const { limit, column } = limits;
    const both = thrustAndBending({
      axial: load.thrust / area / column.stress,
      bending: load.bending / limit.bending,
      family: material.family,
      basis: site.basis,
      stocky: column.stocky,
    });
    return { load, limit, column, both };
  };
}

/** The load that uses most; the first of equals. */
export function mostPressed(
  use: (load: Pressed) => PressedUse,
  loads: readonly Pressed[],
): PressedUse | undefined {
  let worst: PressedUse | undefined;
  for (const load of loads) {
    const one = use(load);
    if (worst === undefined || one.both.utilisation > worst.both.utilisation) worst = one;
  }
  return worst;
}
