/** Stock items as resolved from the catalogue: plain readonly data, SI units (m, N, Pa, kg, s, K differences). */
import type { Origin } from './origin.ts';

/** What a material is made of; checks that depend on behaviour (creep, rot, rust, heat) look here. */
export type MaterialFamily =
  | 'pvc'
  | 'polyethylene'
  | 'steel'
  | 'aluminium'
  | 'timber'
  | 'bamboo'
  | 'green-wood'
  | 'glass-fibre'
  | 'polycarbonate'
  | 'concrete'
  | 'other';

export interface Material {
  readonly id: string;
  readonly title: string;
  readonly family: MaterialFamily;
  readonly source: string;
  readonly origin: Origin;
  /** kg/m3 */
  readonly density: number;
  /** Short-term modulus at 23 °C, Pa. */
  readonly modulus: number;
  /** Long-term (creep) modulus at 23 °C, Pa; equal to `modulus` for elastic metals. */
  readonly longTermModulus: number;
  /** Bending stress at which the member is taken as failed (yield, or characteristic strength), Pa. */
  readonly bendingStrength: number;
  /** Bending stress that may stay locked in for years, Pa (creep, stress relaxation). */
  readonly sustainedStrength: number;
  /** Shear strength across the section, Pa. */
  readonly shearStrength: number;
  /** Compressive strength perpendicular to the grain or wall, Pa, where it matters. */
  readonly bearingStrength?: number;
  /** Coefficient of thermal expansion, 1/K. */
  readonly expansion?: number;
  /** Strength and stiffness factors by temperature, ascending: [°C, strength factor, modulus factor]. */
  readonly heat?: readonly (readonly [number, number, number])[];
  readonly treated?: boolean;
}

export interface RoundHollow {
  readonly shape: 'round-hollow';
  readonly outside: number;
  readonly wall: number;
}
export interface RoundSolid {
  readonly shape: 'round-solid';
  readonly outside: number;
  /** Outside diameter at the thin end, for poles that taper. */
  readonly tip?: number;
}
export interface Rectangle {
  readonly shape: 'rectangle';
  /** Depth in the plane of bending, and breadth across it. */
  readonly depth: number;
  readonly breadth: number;
  /** Laminations through the depth (1 for a solid board). */
  readonly laminations?: number;
}
export type SectionShape = RoundHollow | RoundSolid | Rectangle;

export interface PricePoint {
  /** In the currency of the project. */
  readonly amount: number;
  /** What the amount buys: a stock length (m), an area (m2), a count of pieces, a pack of them, a length from the roll. */
  readonly per: { readonly unit: 'length' | 'area' | 'piece' | 'pack' | 'volume'; readonly value: number };
  readonly origin: Origin;
}

interface ItemBase {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly origin: Origin;
  readonly prices: readonly PricePoint[];
}

/** Anything that carries bending: pipe, conduit, rail, rod, pole, lumber. */
export interface MemberItem extends ItemBase {
  readonly kind: 'pipe' | 'rod' | 'pole' | 'lumber';
  readonly section: SectionShape;
  readonly material: Material;
  /** Lengths sold, ascending, m. */
  readonly stockLengths: readonly number[];
  /** Least centreline radius of a cold bend with the usual bender, m; absent: not to be bent cold. */
  readonly leastBendRadius?: number;
  /** One end is swaged or belled so that lengths slide together; insertion depth, m. */
  readonly swage?: number;
  readonly galvanised?: boolean;
  /** Ids of what it is like and as large outside as: what is made for those takes hold of it, too. */
  readonly takenFor?: readonly string[];
}

/** Whether a joint says that it is made for a member, or for one that the member is like and as large outside as. */
export const madeFor = (
  { fits }: Pick<JointItem, 'fits'>,
  { id, takenFor = [] }: Pick<MemberItem, 'id' | 'takenFor'>,
): boolean => fits?.some((one) => one === id || takenFor.includes(one)) === true;

export interface CableItem extends ItemBase {
  readonly kind: 'cable';
  readonly diameter: number;
  readonly breakingLoad: number;
  readonly modulus: number;
  /** Metallic area, m2. */
  readonly area: number;
  readonly massPerLength: number;
}

export interface FilmItem extends ItemBase {
  readonly kind: 'film';
  readonly thickness: number;
  readonly density: number;
  /** 'greenhouse' carries UV stabiliser; 'construction' does not. */
  readonly grade: 'greenhouse' | 'construction';
  /** Expected life in full sun, s. */
  readonly life: number;
  /** Stress at which the film yields, Pa (machine direction, 23 °C). */
  readonly yieldStress: number;
  readonly modulus: number;
  readonly expansion: number;
  /** Light transmitted when new, 0..1. */
  readonly light: number;
  readonly rollWidths: readonly number[];
  readonly rollLengths: readonly number[];
}

export interface MeshItem extends ItemBase {
  readonly kind: 'mesh';
  /** Open area share, 0..1. */
  readonly porosity: number;
  readonly massPerArea: number;
  readonly strength: number;
  readonly life: number;
  readonly shade: number;
  readonly rollWidths: readonly number[];
  readonly rollLengths: readonly number[];
}

export interface SheetItem extends ItemBase {
  readonly kind: 'sheet';
  readonly massPerArea: number;
  readonly thickness: number;
  readonly coverWidth: number;
  readonly stockLengths: readonly number[];
  /** Greatest span between purlins, m. */
  readonly greatestSpan: number;
  /** Stress at which it yields or breaks, Pa; what a gust does to it is not worked out without. */
  readonly strength?: number;
  /** Waves of a corrugated sheet: from the top of one to the foot of the next, and from top to top, m. */
  readonly waves?: { readonly depth: number; readonly pitch: number };
  readonly light: number;
  readonly life: number;
}

/** Joins member to member. */
export interface JointItem extends ItemBase {
  readonly kind: 'coupler' | 'fitting';
  /** socket and sleeve join in line; cross, tee, corner and peak join at an angle. */
  readonly form:
    | 'socket'
    | 'sleeve'
    | 'cross'
    | 'tee'
    | 'corner'
    | 'peak'
    | 'lashing'
    | 'bolt'
    | 'plate'
    | 'clamp';
  /** Moment it carries before it gives, N·m. */
  readonly momentCapacity: number;
  /** Force it carries along the member before it pulls apart, N. */
  readonly pullCapacity: number;
  /** Rotational stiffness, N·m/rad; Infinity is not allowed, leave it out for a rigid joint. */
  readonly stiffness?: number;
  /** Angle between its sockets, rad: a straight cross has 180° in line, a peak fitting e.g. 120°. */
  readonly angle?: number;
  /** How far the angle may be off before the fitting is strained, rad. */
  readonly angleTolerance?: number;
  /** Length taken into the joint from each piece, m. */
  readonly insertion: number;
  /** Ids of the members it is made for; absent when its entry does not say. */
  readonly fits?: readonly string[];
  /** Length of cord that tying one takes, m, and the cord; it is not bought then, but tied. */
  readonly cordLength?: number;
  readonly cord?: SupplyItem;
}

/** Holds film or mesh to the frame. */
export interface FasteningItem extends ItemBase {
  readonly kind: 'fastening';
  readonly form: 'channel' | 'board' | 'strap' | 'staple' | 'clip' | 'screw' | 'rope';
  /** Pull it holds per metre of edge, N/m (channel, board) or per piece, N (strap, clip). */
  readonly holds: number;
  readonly per: 'length' | 'piece';
  readonly stockLengths: readonly number[];
  /** Film taken up at each edge, m. */
  readonly edgeAllowance: number;
  /** Time in the sun after which half of its pull is left, s; absent for what the sun does nothing to. */
  readonly life?: number;
  /** What a strap or rope is woven or laid of. */
  readonly fibre?: 'polyester' | 'polypropylene' | 'nylon';
  /** Sizes of a screw, m: over its thread, under its head, and of the washer that presses the sheet. */
  readonly screw?: { readonly diameter: number; readonly length: number; readonly washer: number };
}

/** Holds the structure in the ground when it is bought as a thing of its own. */
export interface AnchorItem extends ItemBase {
  readonly kind: 'anchor';
  readonly form: 'screw' | 'plate' | 'block' | 'pad';
  readonly diameter?: number;
  readonly length?: number;
  readonly mass?: number;
}

export type SupplyForm =
  | 'concrete'
  | 'wire-clip'
  | 'screw'
  | 'wrapping'
  | 'cord'
  | 'hinge'
  | 'latch'
  | 'glue';

/** Used up in building: bought by the bag, pack, roll, can or piece. */
export interface SupplyItem extends ItemBase {
  readonly kind: 'supply';
  readonly form: SupplyForm;
  /** What one of those sold holds, in the unit its form is counted in: m3 of concrete, m, m2 of glued joint, pieces; absent when it is sold by measure. */
  readonly pack?: number;
  /** Wire a clip grips, thickness of a screw, width of a strip of wrapping, m. */
  readonly across?: number;
  /** Length of a screw or a hinge, m. */
  readonly length?: number;
  /** Units of those who usually buy it. */
  readonly usualIn?: 'metric' | 'us';
}

export type Item =
  | MemberItem
  | CableItem
  | FilmItem
  | MeshItem
  | SheetItem
  | JointItem
  | FasteningItem
  | AnchorItem
  | SupplyItem;
