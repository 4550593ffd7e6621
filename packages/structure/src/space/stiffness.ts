import type { Material, MemberItem } from '@tautline/shelter';
import { sectionOf } from '../system/member.ts';

/** What a straight piece of a member resists with in space. SI. */
export interface Stiffness {
  /** N */
  readonly EA: number;
  /** Bent through its depth, and across it, N·m2. */
  readonly EIdeep: number;
  readonly EIflat: number;
  /** Twisted, N·m2. */
  readonly GJ: number;
}

const grown: readonly Material['family'][] = ['timber', 'bamboo', 'green-wood'];
const plastic: readonly Material['family'][] = ['pvc', 'polyethylene', 'polycarbonate'];

/**
 * Shear modulus over Young's modulus: 1/16 along the grain (EN 338 tables keep E/G = 16), else 1 / 2(1 + ν)
 * with ν = 0.38 for plastics and 0.3 for metals. From memory.
 */
export function shearShare(material: Material): number {
  if (grown.includes(material.family)) return 1 / 16;
  return 1 / (2 * (1 + poisson(material)));
}

/** Poisson's ratio as used for twisting. From memory. */
export function poisson(material: Material): number {
  return plastic.includes(material.family) ? 0.38 : 0.3;
}

/** Stiffness of a member of a modulus (Pa) that already has its temperature and its age in it. */
export function stiffnessOf(item: MemberItem, modulus: number): Stiffness {
  const section = sectionOf(item);
  const G = modulus * shearShare(item.material);
  const { shape } = item.section;
  if (shape !== 'rectangle')
    return {
      EA: modulus * section.area,
      EIdeep: modulus * section.secondMoment,
      EIflat: modulus * section.secondMoment,
      GJ: 2 * G * section.secondMoment,
    };
  const { depth, breadth } = item.section;
  return {
    EA: modulus * section.area,
    EIdeep: modulus * section.secondMoment,
    EIflat: (modulus * depth * breadth ** 3) / 12,
    GJ: G * torsionOfRectangle(depth, breadth),
  };
}

/** J of a rectangle, m4: a b³ (1/3 - 0.21 b/a (1 - b⁴ / 12 a⁴)), a the longer side. Roark's tables, from memory. */
export function torsionOfRectangle(depth: number, breadth: number): number {
  const a = Math.max(depth, breadth);
  const b = Math.min(depth, breadth);
  return a * b ** 3 * (1 / 3 - 0.21 * (b / a) * (1 - (b / a) ** 4 / 12));
}
