/** What a member's resistance is asked with. */
import type { Basis } from '../combinations.ts';
import type { Duration } from './duration.ts';

export type Family =
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

export interface MemberInput {
  readonly family: Family;
  readonly basis: Basis;
  /** Yield stress of metal and plastic; 5 % characteristic strength of wood and bamboo, Pa. */
  readonly bendingStrength: number;
  readonly shearStrength: number;
  /** Short-term modulus, Pa. */
  readonly modulus: number;
  readonly duration: Duration;
  /** Of the material, °C; 23 when not given. */
  readonly temperature?: number;
  /** [°C, strength factor, modulus factor] from the catalogue; the family's own table when absent. */
  readonly heat?: readonly (readonly [number, number, number])[];
  /** Rained on, in soil or unseasoned. */
  readonly wet?: boolean;
  /** Round tube: outside diameter and wall, m. Solid when the wall is absent. */
  readonly outside?: number;
  readonly wall?: number;
}
