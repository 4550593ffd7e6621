/**
 * Writes a whole house for the independent finite element solver `ccx` (Debian package calculix-ccx): beams B32R,
 * several to each piece of ours, mid nodes on the member's line; cables and bars T3D2. Bending that is locked in is brought on
 * by a temperature gradient across the member, the pull of cables by cooling them, in a step before the loads.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface HousePiece {
  readonly i: number;
  readonly j: number;
  /** An odd number of points between the ends where the member bends, evenly spaced; straight when absent. */
  readonly between?: readonly (readonly [number, number, number])[];
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
}

export interface HouseAsked {
  readonly nodes: readonly { readonly x: number; readonly y: number; readonly z: number }[];
  readonly pieces: readonly HousePiece[];
  readonly held: readonly { readonly node: number; readonly dof: 'x' | 'y' | 'z' | 'rx' | 'ry' | 'rz' }[];
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

const DOF = { x: 1, y: 2, z: 3, rx: 4, ry: 5, rz: 6 } as const;
/** Expansion of bent members: so small that cooling their neighbours' cables does not shorten them. */
const BEND = 1e-9;

export function houseInput(house: HouseAsked): string {
  const nodes = house.nodes.map((n) => [n.x, n.y, n.z] as [number, number, number]);
  const temperatures = new Map<number, { cold: number; gradient: number; count: number }>();
  const out: string[] = [];
  const warmth = (node: number, locked: number | undefined, short: number | undefined): void => {
    const at = temperatures.get(node) ?? { cold: 0, gradient: 0, count: 0 };
    if (short !== undefined) at.cold = 1;
    if (locked !== undefined) {
      at.gradient = (at.gradient * at.count + locked) / (at.count + 1);
      at.count++;
    }
    temperatures.set(node, at);
  };
  const ties: string[] = [];
  const bent = new Set(
    house.pieces.flatMap((piece) => (piece.section.kind === 'bar' ? [] : [piece.i, piece.j])),
  );
  const ends = new Map<number, number>();
  /**
   * Bars end on nodes of their own where beams meet, tied to them in their three movements: a node has one
   * temperature and one gradient for all its elements, and a bar would bend by the gradient meant for the beams.
   */
  const ownEnd = (node: number): number => {
    if (!bent.has(node)) return node;
    const known = ends.get(node);
    if (known !== undefined) return known;
    const own = nodes.push([...nodes[node]!] as [number, number, number]) - 1;
    ends.set(node, own);
    for (const dof of [1, 2, 3])
      ties.push('*EQUATION', '2', `${own + 1}, ${dof}, 1., ${node + 1}, ${dof}, -1.`);
    return own;
  };
  let element = 1;
  // Pieces alike share one set: where sets meet, ccx makes a rigid knot of the node, which stiffens the member.
  const sets = new Map<string, { readonly piece: HousePiece; readonly elements: string[] }>();
  for (const piece of house.pieces) {
    const bar = piece.section.kind === 'bar';
    const { E, poisson, section, towards, short } = piece;
    const key = JSON.stringify([E, poisson, section, towards, short, piece.locked !== undefined]);
    const set = sets.get(key) ?? { piece, elements: [] };
    sets.set(key, set);
    if (bar) {
      const [i, j] = [ownEnd(piece.i), ownEnd(piece.j)];
      if (short !== undefined) for (const id of [i, j]) warmth(id, undefined, short);
      set.elements.push(`${element++}, ${i + 1}, ${j + 1}`);
      continue;
    }
    const [a, b] = [nodes[piece.i]!, nodes[piece.j]!];
    const inner =
      piece.between ??
      [1, 2, 3].map(
        (n) => [0, 1, 2].map((c) => a[c]! + (n / 4) * (b[c]! - a[c]!)) as [number, number, number],
      );
    const ids = [
      piece.i + 1,
      ...inner.map((p) => nodes.push([...p] as [number, number, number])),
      piece.j + 1,
    ];
    for (let n = 0; n + 2 < ids.length; n += 2)
      set.elements.push(`${element++}, ${ids[n]}, ${ids[n + 1]}, ${ids[n + 2]}`);
    if (piece.locked !== undefined)
      for (const [n, id] of ids.entries()) warmth(id - 1, piece.locked[n], undefined);
  }
  const lines = [...sets.values()].flatMap(({ piece, elements }, k) => [
    `*ELEMENT, TYPE=${piece.section.kind === 'bar' ? 'T3D2' : 'B32R'}, ELSET=P${k}`,
    ...elements,
    `*MATERIAL, NAME=M${k}`,
    '*ELASTIC',
    `${piece.E.toPrecision(12)}, ${piece.poisson.toPrecision(9)}`,
    ...(piece.locked === undefined ? [] : ['*EXPANSION, ZERO=0.', `${BEND}`]),
    ...(piece.short === undefined ? [] : ['*EXPANSION, ZERO=0.', piece.short.toPrecision(9)]),
    ...sectionCard(piece, k),
  ]);
  out.push('*NODE, NSET=ALL');
  for (const [n, p] of nodes.entries()) out.push(`${n + 1}, ${p.map((v) => v.toFixed(12)).join(', ')}`);
  out.push(...lines, '*NSET, NSET=OURS, GENERATE', `1, ${house.nodes.length}, 1`);
  out.push(...ties);
  out.push('*INITIAL CONDITIONS, TYPE=TEMPERATURE', 'ALL, 0.');
  out.push('*BOUNDARY');
  for (const h of house.held) out.push(`${h.node + 1}, ${DOF[h.dof]}, ${DOF[h.dof]}, 0.`);
  const print = [
    '*NODE PRINT, NSET=OURS, FREQUENCY=1000',
    'U',
    '*NODE PRINT, NSET=OURS, FREQUENCY=1000',
    'RF',
    '*END STEP',
  ];
  const loads = ['*CLOAD'];
  for (const l of house.loads) {
    for (const [dof, f] of [l.fx, l.fy, l.fz].entries())
      if (Math.abs(f) > 1e-9) loads.push(`${l.node + 1}, ${dof + 1}, ${f.toPrecision(9)}`);
  }
  const stressed = temperatures.size > 0;
  if (stressed) {
    out.push('*STEP, NLGEOM, INC=1000', '*STATIC', '0.5, 1.', '*TEMPERATURE');
    for (const [node, { cold, gradient }] of temperatures)
      out.push(`${node + 1}, ${-cold}, ${(gradient / BEND).toPrecision(9)}, 0.`);
    out.push(...print);
  }
  if (house.nonlinear) out.push('*STEP, NLGEOM, INC=1000', '*STATIC', '0.5, 1.');
  else out.push(stressed ? '*STEP, PERTURBATION' : '*STEP', '*STATIC');
  out.push(...loads, ...print, '');
  return out.join('\n');
}

function sectionCard({ section, towards }: HousePiece, k: number): string[] {
  const card = (kind: string, size: string): string[] => [
    `*BEAM SECTION, ELSET=P${k}, MATERIAL=M${k}, SECTION=${kind}`,
    size,
    towards.map((v) => v.toFixed(9)).join(', '),
  ];
  switch (section.kind) {
    case 'bar':
      return [`*SOLID SECTION, ELSET=P${k}, MATERIAL=M${k}`, `${section.area}`];
    case 'pipe':
      return card('PIPE', `${section.outside / 2}, ${section.wall}`);
    case 'circle':
      return card('CIRC', `${section.outside}, ${section.outside}`);
    case 'rectangle':
      return card('RECT', `${section.depth}, ${section.breadth}`);
  }
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
