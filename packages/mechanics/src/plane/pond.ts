import { assemble, type Pass, STRIDE } from './assemble.ts';
import type { LoadSet } from './loads.ts';
import type { PlaneSystem } from './system.ts';

/** Parts each member is divided into to find the water's edge. */
const PARTS = 8;
const GAUSS = 0.5 / Math.sqrt(3);

/** Where water can stand: members of the roof line in order from one end to the other, both ends open. */
export interface RoofLine {
  readonly elements: readonly number[];
  /** width of roof that drains onto the line, m */
  readonly breadth: number;
}

/** A hollow that the drawn line does not have: the roof's skin hangs this much below the line, as cos² over its width. */
export interface Dip {
  /** where its middle is, as x, m */
  readonly at: number;
  /** half its width on plan, m */
  readonly halfWidth: number;
  /** m */
  readonly depth: number;
}

export const dipAt = (dip: Dip | undefined, x: number): number => {
  if (!dip || Math.abs(x - dip.at) >= dip.halfWidth) return 0;
  return dip.depth * Math.cos((Math.PI * (x - dip.at)) / (2 * dip.halfWidth)) ** 2;
};

/** What a pond stands on: frame, line, hollow, the other loads, and the arrays that a look at it fills. */
export interface PondScene {
  readonly system: PlaneSystem;
  readonly roof: RoofLine;
  readonly dip: Dip | undefined;
  /** N/m3 */
  readonly weight: number;
  readonly loads: LoadSet;
  readonly pass: Pass;
  readonly water: Water;
}

/** Heights along the roof line of the frame displaced by `u`, PARTS to a member; leaves dry forces and tangent in the pass. */
export function heights(scene: PondScene, u: Float64Array): Float64Array {
  const { system, roof, loads, pass } = scene;
  assemble(system, u, loads, pass, true);
  const out = new Float64Array(roof.elements.length * PARTS + 1);
  for (const [n, e] of roof.elements.entries())
    for (let k = n === 0 ? 0 : 1; k <= PARTS; k++) out[n * PARTS + k] = heightAt(scene, u, e, k / PARTS);
  return out;
}

function heightAt({ system, pass, dip }: PondScene, u: Float64Array, e: number, xi: number): number {
  const o = STRIDE * e;
  const at = pass.element;
  const [l, c, s] = [at[o + 3]!, at[o + 4]!, at[o + 5]!];
  const i = system.ends[6 * e]!;
  const w = l * (at[o + 6]! * (xi - 2 * xi * xi + xi ** 3) + at[o + 7]! * (xi ** 3 - xi * xi));
  const y = system.x[(2 * i) / 3 + 1]! + u[i + 1]! + xi * l * s + w * c;
  return dip ? y - dipAt(dip, system.x[(2 * i) / 3]! + u[i]! + xi * l * c - w * s) : y;
}

/** x of a point of the line, by its index among `heights`. */
export function placeOf({ system, roof }: PondScene, u: Float64Array, index: number): number {
  const n = Math.min(roof.elements.length - 1, Math.floor(index / PARTS));
  const { i, j } = system.model.elements[roof.elements[n]!]!;
  const x = (node: number) => system.x[2 * node]! + u[3 * node]!;
  return x(i) + (index / PARTS - n) * (x(j) - x(i));
}

/** A local low place of the line and the level at which it runs over. */
export interface Basin {
  /** index of its lowest point among `heights` */
  readonly low: number;
  readonly spill: number;
}

/** Every low place between two higher ones. The line's ends let water go. */
export function basins(y: Float64Array, least: number): Basin[] {
  const found: Basin[] = [];
  for (let k = 1; k < y.length - 1; k++) {
    if (!(y[k]! < y[k - 1]! && y[k]! <= y[k + 1]!)) continue;
    const spill = spillOf(y, k);
    if (spill - y[k]! > least) found.push({ low: k, spill });
  }
  return found;
}

/** The two points that hold a pond in: highest between its low and lower ground or the line's end, either way. */
export function brims(y: Float64Array, low: number): { left: number; right: number } {
  const barrier = (step: 1 | -1): number => {
    let top = low;
    for (let k = low + step; k >= 0 && k < y.length && y[k]! >= y[low]!; k += step)
      if (y[k]! > y[top]!) top = k;
    return top;
  };
  return { left: barrier(-1), right: barrier(1) };
}

/** Level at which the pond around a low runs over. */
export function spillOf(y: Float64Array, low: number): number {
  const { left, right } = brims(y, low);
  return Math.min(y[left]!, y[right]!);
}

/** Walks downhill from a point to its low. */
export function lowFrom(y: Float64Array, from: number): number {
  let k = from;
  for (;;) {
    if (k > 0 && y[k - 1]! < y[k]!) k--;
    else if (k < y.length - 1 && y[k + 1]! < y[k]!) k++;
    else return k;
  }
}

/** What standing water does to the frame at one level. */
export interface Water {
  /** m3 */
  volume: number;
  /** surface, m2 */
  surface: number;
  /** b·integral of N over the wet part: one entry a dof; times γ it is the force per metre of level */
  readonly reach: Float64Array;
  /** water on each member of the roof line, m3 */
  readonly share: Float64Array;
}

/**
 * Adds the water up to `level` in the basin around `low` to the unbalance and tangent of a pass: vertical force
 * γ·b·depth per metre of plan on the cubic (Hermite) shape, and its softening -γ·b·∫N·Nᵀ over the wet part.
 * The horizontal part of the water's pressure, nil on a level line, is left out.
 */
export function addWater(
  scene: PondScene,
  u: Float64Array,
  y: Float64Array,
  low: number,
  level: number,
  whole = false,
): void {
  const { system, pass, roof, weight, water } = scene;
  water.volume = 0;
  water.surface = 0;
  water.reach.fill(0);
  water.share.fill(0);
  let from = low;
  let to = low;
  // a level above the brim is only met on the way to a balance: no water beyond the brim
  const brim = whole ? { left: 0, right: y.length - 1 } : brims(y, low);
  while (from > brim.left && y[from - 1]! < level) from--;
  while (to < brim.right && y[to + 1]! < level) to++;
  const first = Math.max(brim.left, from - 1);
  const last = Math.min(brim.right, to + 1);
  const K = system.matrix.values;
  const N = new Float64Array(6);
  const block = new Float64Array(21);
  for (let n = Math.floor(first / PARTS); n < roof.elements.length && n * PARTS < last; n++) {
    const e = roof.elements[n]!;
    const o = STRIDE * e;
    const l = pass.element[o + 3]!;
    const c = pass.element[o + 4]!;
    const s = pass.element[o + 5]!;
    const plan = Math.abs(c) * l * roof.breadth;
    block.fill(0);
    for (let k = Math.max(first - n * PARTS, 0); k < PARTS && n * PARTS + k < last; k++) {
      const left = level - y[n * PARTS + k]!;
      const right = level - y[n * PARTS + k + 1]!;
      if (left <= 0 && right <= 0) continue;
      let start = k / PARTS;
      let end = (k + 1) / PARTS;
      // the water's edge inside the part, the line being as good as straight there
      if (left < 0) start += left / (left - right) / PARTS;
      if (right < 0) end -= right / (right - left) / PARTS;
      for (const side of [-GAUSS, GAUSS]) {
        const xi = (start + end) / 2 + side * (end - start);
        const depth = level - heightAt(scene, u, e, xi);
        const area = (plan * (end - start)) / 2;
        water.volume += depth * area;
        water.share[n]! += depth * area;
        water.surface += area;
        const h2 = xi - 2 * xi * xi + xi ** 3;
        const h3 = xi ** 3 - xi * xi;
        const H = h2 + h3;
        N[0] = -c * s * H;
        N[1] = 1 - xi + c * c * H;
        N[2] = c * l * h2;
        N[3] = c * s * H;
        N[4] = xi - c * c * H;
        N[5] = c * l * h3;
        for (let r = 0, at = 0; r < 6; r++) {
          const dof = system.ends[6 * e + r]!;
          water.reach[dof]! += N[r]! * area;
          pass.unbalance[dof]! += weight * depth * area * N[r]!;
          for (let q = r; q < 6; q++, at++) block[at]! += N[r]! * N[q]! * area;
        }
      }
    }
    for (let at = 0; at < 21; at++) {
      const position = system.places[21 * e + at]!;
      if (position >= 0) K[position]! -= weight * block[at]!;
    }
  }
}

export const emptyWater = (system: PlaneSystem, roof: RoofLine): Water => ({
  volume: 0,
  surface: 0,
  reach: new Float64Array(system.dofs),
  share: new Float64Array(roof.elements.length),
});

/** Softening per unit weight of water with the whole line wet, in the matrix's storage: integral of b·N·Nᵀ. */
export function wetMatrix(scene: PondScene, u: Float64Array): Float64Array {
  const { values } = scene.system.matrix;
  // the pass holds the members' states; the matrix is emptied to catch the water's part alone
  values.fill(0);
  const y = new Float64Array(scene.roof.elements.length * PARTS + 1).fill(-1);
  addWater({ ...scene, weight: -1 }, u, y, 0, 0, true);
  return values.slice();
}
