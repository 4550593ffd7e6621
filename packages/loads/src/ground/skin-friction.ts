/** Friction along the side of stubs, posts and concrete in the ground. */
import { along } from '../interpolate.ts';
import { isGranular, type Soil } from './soil.ts';

/**
 * The top layer dries, cracks and is hoed. Friction grows evenly from nothing at the surface to its full value at
 * twice this depth (m), so that below that as much is lost as if this layer held nothing: own choice. With it a pipe
 * 50 cm deep in loam holds what two published tests measured in their firmest ground.
 */
export const LOOSE_TOP = 0.2;

/** Adhesion factor α of API RP 2A (1986): 1 up to c_u = 24 kPa, 0.5 from 72 kPa. c_u in Pa. */
export function adhesionFactor(shear: number): number {
  return along(
    [
      [24_000, 1],
      [72_000, 0.5],
    ],
    shear,
  );
}

/** β = K tan δ of small driven stakes pulled up in sand: K = 0.6, δ = 0.75 φ. */
export function betaFactor(friction: number): number {
  return 0.6 * Math.tan(0.75 * friction);
}

/** β of a post with soil thrown back around it: K = 1 - sin φ of soil at rest (Jaky 1944), δ = 0.75 φ. */
export function restingBeta(friction: number): number {
  return (1 - Math.sin(friction)) * Math.tan(0.75 * friction);
}

/** Depth over which adhesion counts in full, m: L²/4a down to twice the loose top a, L - a below. */
export function countedDepth(depth: number): number {
  const full = 2 * LOOSE_TOP;
  return depth < full ? depth ** 2 / (2 * full) : depth - LOOSE_TOP;
}

/** Sum of depth times share of the friction that counts there, m²: what the friction of sand goes with. */
export function countedOverburden(depth: number): number {
  const full = 2 * LOOSE_TOP;
  return depth < full ? depth ** 3 / (3 * full) : full ** 2 / 3 + (depth ** 2 - full ** 2) / 2;
}

/** Skin friction down to a depth, N. Granular: β σ'_v; others: α c_u. */
export function skinFriction(
  soil: Soil,
  perimeter: number,
  depth: number,
  beta = betaFactor(soil.friction),
): number {
  return isGranular(soil)
    ? beta * soil.unitWeight * perimeter * countedOverburden(depth)
    : adhesionFactor(soil.shear) * soil.shear * perimeter * countedDepth(depth);
}
