import { assemble, type Pass, STRIDE } from './assemble.ts';
import type { LoadSet } from './loads.ts';
import type { PlaneSystem } from './system.ts';

/** Parts each member is divided into to find the water's edge. */
export const PARTS = 4;
const GAUSS = 0.5 / Math.sqrt(3);

/** Where water can stand: members of the roof line in order from one end to the other, both ends open. */
export interface RoofLine {
  readonly elements: readonly number[];
  /** width of roof that drains onto the line, m */
  readonly breadth: number;
}

/**
 * Where water stands on a roof line, by indices among its points. Half way between two frames the skin hangs below
 * the line by sag·(1 - t²), t from -1 to 1 over the width of the pocket; from frame to frame its sag is a parabola
 * too. The pocket moves with the point of the frame that it hangs from.
 */
export interface Pocket {
  /** points that the middle of the sag and one of its edges hang from */
  readonly middle: number;
  readonly edge: number;
  /** m */
  readonly sag: number;
  /** lowest point of the skin, and the two points that hold the water in */
  readonly low: number;
  readonly left: number;
  readonly right: number;
}

/** What a pond stands on: frame, line, the other loads, and the arrays that a look at it fills. */
export interface PondScene {
  readonly system: PlaneSystem;
  readonly roof: RoofLine;
  /** N/m3 */
  readonly weight: number;
  readonly loads: LoadSet;
  readonly pass: Pass;
  readonly water: Water;
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

export const emptyWater = (system: PlaneSystem, roof: RoofLine): Water => ({
  volume: 0,
  surface: 0,
  reach: new Float64Array(system.dofs),
  share: new Float64Array(roof.elements.length),
});

/** How far the skin hangs below the line half way between two frames, at `x` from the middle of the pocket. */
export function hang(x: number, halfWidth: number, sag: number): number {
  const t = x / halfWidth;
  return t > -1 && t < 1 ? sag * (1 - t * t) : 0;
}

/**
 * Water over a strip from frame to frame whose parabola of sag `sag` stands `depth` deep in its middle, as mean depth
 * along the strip; and the part of the strip that is wet, which is its derivative.
 */
export const meanDepth = (depth: number, sag: number): number =>
  depth >= sag ? depth - sag / 3 : (2 / 3) * depth * Math.sqrt(depth / sag);
const wetPart = (depth: number, sag: number): number => (depth >= sag ? 1 : Math.sqrt(depth / sag));

export interface Line {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** The roof line of the frame displaced by `u`, PARTS to a member; leaves dry forces and tangent in the pass. */
export function lineOf(scene: PondScene, u: Float64Array): Line {
  const { system, roof, loads, pass } = scene;
  assemble(system, u, loads, pass, false);
  const count = roof.elements.length * PARTS + 1;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const at: Place = { x: 0, y: 0 };
  for (const [n, e] of roof.elements.entries())
    for (let k = n === 0 ? 0 : 1; k <= PARTS; k++) {
      placeAt(scene, u, e, k / PARTS, at);
      x[n * PARTS + k] = at.x;
      y[n * PARTS + k] = at.y;
    }
  return { x, y };
}

interface Place {
  x: number;
  y: number;
}

/** Place of a point of a member on its cubic, from the element states of the last pass. */
function placeAt({ system, pass }: PondScene, u: Float64Array, e: number, xi: number, out: Place): void {
  const o = STRIDE * e;
  const at = pass.element;
  const l = at[o + 3]!;
  const c = at[o + 4]!;
  const s = at[o + 5]!;
  const i = system.ends[6 * e]!;
  const node = (2 * i) / 3;
  const rest = 1 - xi;
  const w = l * xi * rest * (at[o + 6]! * rest - at[o + 7]! * xi);
  out.x = system.x[node]! + u[i]! + xi * l * c - w * s;
  out.y = system.x[node + 1]! + u[i + 1]! + xi * l * s + w * c;
}

/**
 * Adds the water up to `level` between the brims of a pocket to the unbalance and tangent of a pass: vertical force
 * γ·b·(mean depth) per metre of plan on the cubic (Hermite) shape, and its softening -γ·b·∫(wet part)·N·Nᵀ. Above its
 * brims the pocket is walled: what a frame would bear of more water than the pocket holds is asked that way.
 * The horizontal part of the water's pressure, nil on a level line, is left out.
 */
export function addWater(scene: PondScene, u: Float64Array, pocket: Pocket, level: number): void {
  const { system, pass, roof, weight, water } = scene;
  const { sag } = pocket;
  water.volume = 0;
  water.surface = 0;
  water.reach.fill(0);
  water.share.fill(0);
  const K = system.matrix.values;
  const N = new Float64Array(6);
  const block = new Float64Array(21);
  const at: Place = { x: 0, y: 0 };
  const last = roof.elements.length - 1;
  const across = (point: number): number => {
    const n = Math.min(last, Math.floor(point / PARTS));
    placeAt(scene, u, roof.elements[n]!, point / PARTS - n, at);
    return at.x;
  };
  const middle = across(pocket.middle);
  const halfWidth = Math.abs(across(pocket.edge) - middle);
  const depthAt = (e: number, xi: number): number => {
    placeAt(scene, u, e, xi, at);
    return level - at.y + hang(at.x - middle, halfWidth, sag);
  };
  for (let n = Math.floor(pocket.left / PARTS); n <= last && n * PARTS < pocket.right; n++) {
    const e = roof.elements[n]!;
    const o = STRIDE * e;
    const l = pass.element[o + 3]!;
    const c = pass.element[o + 4]!;
    const s = pass.element[o + 5]!;
    const plan = Math.abs(c) * l * roof.breadth;
    const from = Math.max(pocket.left - n * PARTS, 0);
    const to = Math.min(PARTS, pocket.right - n * PARTS);
    let wet = false;
    let right = depthAt(e, from / PARTS);
    for (let k = from; k < to; k++) {
      const left = right;
      right = depthAt(e, (k + 1) / PARTS);
      if (left <= 0 && right <= 0) continue;
      if (!wet) block.fill(0);
      wet = true;
      let start = k / PARTS;
      let end = (k + 1) / PARTS;
      // the water's edge inside the part, the line being as good as straight there
      if (left < 0) start += left / (left - right) / PARTS;
      if (right < 0) end -= right / (right - left) / PARTS;
      const half = (plan * (end - start)) / 2;
      for (let side = -GAUSS; side <= GAUSS; side += 2 * GAUSS) {
        const xi = (start + end) / 2 + side * (end - start);
        const depth = Math.max(0, depthAt(e, xi));
        const here = hang(at.x - middle, halfWidth, sag);
        const held = meanDepth(depth, here) * half;
        const area = wetPart(depth, here) * half;
        water.volume += held;
        water.share[n]! += held;
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
        for (let r = 0, entry = 0; r < 6; r++) {
          const dof = system.ends[6 * e + r]!;
          water.reach[dof]! += N[r]! * area;
          pass.unbalance[dof]! += weight * held * N[r]!;
          for (let q = r; q < 6; q++, entry++) block[entry]! += N[r]! * N[q]! * area;
        }
      }
    }
    if (!wet) continue;
    for (let entry = 0; entry < 21; entry++) K[system.places[21 * e + entry]!]! -= weight * block[entry]!;
  }
}

/** Softening per unit weight of water with the whole line wet, in the matrix's storage: integral of b·N·Nᵀ. */
export function wetMatrix(scene: PondScene, u: Float64Array): Float64Array {
  const { values } = scene.system.matrix;
  // the pass holds the members' states; the matrix is emptied to catch the water's part alone
  values.fill(0);
  const right = scene.roof.elements.length * PARTS;
  const whole: Pocket = { middle: 0, edge: 1, sag: 0, low: 0, left: 0, right };
  const { y } = lineOf(scene, u);
  addWater({ ...scene, weight: -1 }, u, whole, y.reduce((top, height) => Math.max(top, height)) + 1);
  return values.slice();
}
