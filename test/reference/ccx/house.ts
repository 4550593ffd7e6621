/**
 * Writes a whole house for the independent finite element solver `ccx` (Debian package calculix-ccx): beams B32R,
 * several to each piece of ours, mid nodes on the member's line; cables and bars T3D2. Bending that is locked in is brought on
 * by a temperature gradient across the member, the pull of cables by cooling them, in a step before the loads.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { houseInput } from './house-input.ts';
import type { Vector } from './vector.ts';

/** Axes about which a joint keeps a member's end from turning: by a stiffness, N·m/rad, or altogether. */
export type HouseJoint = readonly { readonly axis: Vector; readonly stiffness?: number }[];

export interface HousePiece {
  readonly i: number;
  readonly j: number;
  /** An odd number of points between the ends where the member bends, evenly spaced; straight when absent. */
  readonly between?: readonly Vector[];
  readonly E: number;
  readonly poisson: number;
  readonly section:
    | { readonly kind: 'pipe'; readonly outside: number; readonly wall: number }
    | { readonly kind: 'circle'; readonly outside: number }
    /** size along `towards`, and across it */
    | { readonly kind: 'rectangle'; readonly depth: number; readonly breadth: number }
    | { readonly kind: 'bar'; readonly area: number };
  /** Along the section's first axis; across the member. */
  readonly towards: readonly [number, number, number];
  /** Curvature that the unstressed member lacks at its ends and those points, 1/m: positive turns right about `towards`. */
  readonly locked?: readonly number[];
  /** Strain by which the unstressed bar is shorter than drawn. */
  readonly short?: number;
  /** Joints at its ends; without one an end is as one with what it meets. */
  readonly jointI?: HouseJoint;
  readonly jointJ?: HouseJoint;
}

type Dof = 'x' | 'y' | 'z' | 'rx' | 'ry' | 'rz';

export interface HouseAsked {
  readonly nodes: readonly { readonly x: number; readonly y: number; readonly z: number }[];
  readonly pieces: readonly HousePiece[];
  readonly held: readonly { readonly node: number; readonly dof: Dof }[];
  /** Feet that give, N/m and N·m/rad. */
  readonly springs?: readonly { readonly node: number; readonly dof: Dof; readonly stiffness: number }[];
  readonly loads: readonly {
    readonly node: number;
    readonly fx: number;
    readonly fy: number;
    readonly fz: number;
  }[];
  readonly nonlinear: boolean;
}

export interface HouseTold {
  /** Movement of every node from the built state, m. */
  readonly moved: readonly (readonly [number, number, number])[];
  /** Sum of forces on the held nodes, N: loads included, prestress too. */
  readonly reactions: ReadonlyMap<number, readonly [number, number, number]>;
}

export function runHouse(house: HouseAsked): HouseTold {
  const folder = mkdtempSync(join(tmpdir(), 'house-'));
  try {
    writeFileSync(join(folder, 'house.inp'), houseInput(house));
    const run = spawnSync('ccx', ['-i', 'house'], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, OMP_NUM_THREADS: '1' },
      maxBuffer: 1 << 26,
      timeout: 50_000,
    });
    if (run.status !== 0 || /\*ERROR/.test(run.stdout))
      throw new Error(`ccx failed: ${run.stdout.replace(/\n\s*\n/g, '\n').slice(-600)}`);
    return parsed(house, readFileSync(join(folder, 'house.dat'), 'utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Tables by step: the movement is that of the last, less that of the step which built the house. */
function parsed(house: HouseAsked, text: string): HouseTold {
  const steps: { U: Map<number, number[]>; RF: Map<number, number[]> }[] = [];
  let table: Map<number, number[]> | undefined;
  for (const line of text.split('\n')) {
    if (/displacements/.test(line)) {
      steps.push({ U: new Map(), RF: new Map() });
      table = steps.at(-1)!.U;
    } else if (/forces/.test(line)) table = steps.at(-1)!.RF;
    const words = line.trim().split(/\s+/).map(Number);
    if (table !== undefined && words.length === 4 && words.every(Number.isFinite))
      table.set(words[0]!, words.slice(1));
  }
  const last = steps.at(-1);
  if (last === undefined) throw new Error('ccx printed nothing');
  const stressed = house.pieces.some((piece) => piece.locked !== undefined || piece.short !== undefined);
  // A perturbation step tells its own movement; a nonlinear one the whole movement from the drawing.
  const before = stressed && house.nonlinear ? steps[0]! : undefined;
  const of = (map: Map<number, number[]>, node: number) => {
    const found = map.get(node + 1);
    if (found === undefined) throw new Error(`ccx printed nothing for node ${node}`);
    return found as unknown as readonly [number, number, number];
  };
  return {
    moved: house.nodes.map((_, n) => {
      const end = of(last.U, n);
      const start = before === undefined ? [0, 0, 0] : of(before.U, n);
      return [end[0] - start[0]!, end[1] - start[1]!, end[2] - start[2]!];
    }),
    reactions: new Map(
      [...new Set(house.held.map((h) => h.node))].map((node) => {
        const end = of(last.RF, node);
        const start = before === undefined ? [0, 0, 0] : of(before.RF, node);
        return [node, [end[0] - start[0]!, end[1] - start[1]!, end[2] - start[2]!]];
      }),
    ),
  };
}
