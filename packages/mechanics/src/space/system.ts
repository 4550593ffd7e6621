import { minimumDegree } from '../minimum-degree.ts';
import { type SparseSymmetric, sparseSymmetric } from '../sparse-ldl.ts';
import type { SpaceDof, SpaceElement, SpaceModel } from './model.ts';

/** Constants of one member. */
export interface Member {
  readonly truss: boolean;
  readonly cable: boolean;
  readonly EA: number;
  readonly GJ: number;
  readonly rest: number;
  /** as drawn: local axes as columns, row by row */
  readonly axes: Float64Array;
  readonly chord: number;
  /** bending about z and about y: stiffness of the end rotations, and the member's own share of them */
  readonly z: Plane;
  readonly y: Plane;
  readonly dofs: Int32Array;
  readonly places: Int32Array;
}

/** One plane of bending of a member with rotational springs at its ends. */
export interface Plane {
  readonly kii: number;
  readonly kij: number;
  readonly kjj: number;
  /** member's own end rotations = rest + S·(rotations at the nodes - rest) */
  readonly sii: number;
  readonly sij: number;
  readonly sji: number;
  readonly sjj: number;
  readonly startI: number;
  readonly startJ: number;
  readonly restI: number;
  readonly restJ: number;
}

export interface SpaceSystem {
  readonly model: SpaceModel;
  readonly nodes: number;
  readonly members: readonly Member[];
  readonly x: Float64Array;
  /** equation of each of the 6 dofs a node, -1 when held or unused */
  readonly equation: Int32Array;
  readonly dofOf: Int32Array;
  readonly matrix: SparseSymmetric;
  readonly scale: number;
  readonly noise: number;
}

export const SPACE_DOF: Record<SpaceDof, number> = { x: 0, y: 1, z: 2, rx: 3, ry: 4, rz: 5 };

const known = new WeakMap<SpaceModel, SpaceSystem | string>();

/** Lays a model out once; a sentence says what is wrong with it. */
export function spaceSystem(model: SpaceModel): SpaceSystem | string {
  let found = known.get(model);
  if (found === undefined) {
    found = faults(model) ?? layOut(model);
    known.set(model, found);
  }
  return found;
}

function faults({ nodes, elements, supports }: SpaceModel): string | undefined {
  if (nodes.length === 0 || elements.length === 0) return 'the frame has no members';
  for (const [n, p] of nodes.entries())
    if (![p.x, p.y, p.z].every(Number.isFinite)) return `node ${n} has no finite position`;
  for (const [n, e] of elements.entries()) {
    const [i, j] = [nodes[e.i], nodes[e.j]];
    if (!i || !j) return `element ${n} ends at a node that is not there`;
    if (!(Math.hypot(j.x - i.x, j.y - i.y, j.z - i.z) > 0)) return `element ${n} has no length`;
    const needed = e.truss || e.tensionOnly ? [e.EA] : [e.EA, e.EIy, e.EIz, e.GJ];
    if (!needed.every((k) => k > 0 && Number.isFinite(k))) return `element ${n} needs stiffnesses above zero`;
    if (e.restLength !== undefined && !(e.restLength > 0))
      return `element ${n} needs a rest length above zero`;
  }
  for (const [n, s] of supports.entries()) {
    if (!nodes[s.node]) return `support ${n} holds a node that is not there`;
    if (s.kind === 'spring' && !((s.stiffness ?? Number.NaN) >= 0)) return `support ${n} needs a stiffness`;
    if (s.kind === 'contact' && SPACE_DOF[s.dof] > 2) return `support ${n}: a contact acts on a translation`;
  }
  return undefined;
}

function layOut(model: SpaceModel): SpaceSystem {
  const { nodes, elements, supports } = model;
  const n = nodes.length;
  const around: number[][] = nodes.map(() => []);
  const turning = new Uint8Array(n);
  for (const e of elements) {
    around[e.i]!.push(e.j);
    around[e.j]!.push(e.i);
    if (!e.truss && !e.tensionOnly) turning[e.i] = turning[e.j] = 1;
  }
  const held = new Uint8Array(6 * n);
  for (const s of supports) if (s.kind === 'fixed') held[6 * s.node + SPACE_DOF[s.dof]] = 1;
  const equation = new Int32Array(6 * n).fill(-1);
  const dofs: number[] = [];
  for (const node of minimumDegree(around))
    for (let d = 0; d < 6; d++) {
      if (held[6 * node + d] || (d > 2 && !turning[node])) continue;
      equation[6 * node + d] = dofs.length;
      dofs.push(6 * node + d);
    }
  const columns: Set<number>[] = dofs.map((_, q) => new Set([q]));
  const memberDofs = elements.map((e) =>
    Int32Array.from({ length: 12 }, (_, k) => (k < 6 ? 6 * e.i + k : 6 * e.j + k - 6)),
  );
  for (const list of memberDofs)
    for (const p of list)
      for (const q of list)
        if (equation[p]! >= 0 && equation[p]! <= equation[q]!) columns[equation[q]!]!.add(equation[p]!);
  const sorted = columns.map((set) => [...set].sort((a, b) => a - b));
  const matrix = sparseSymmetric(sorted);
  const at = sorted.map((list, j) => new Map(list.map((row, k) => [row, matrix.starts[j]! + k])));
  let scale = 0;
  let noise = 0;
  const members = elements.map((e, k) => {
    const member = makeMember(model, e, memberDofs[k]!, equation, at);
    scale += member.chord / elements.length;
    const reach = Math.max(
      ...[nodes[e.i]!, nodes[e.j]!].flatMap((p) => [Math.abs(p.x), Math.abs(p.y), Math.abs(p.z)]),
    );
    noise = Math.max(noise, (e.EA * Math.max(reach, member.chord)) / member.rest);
    return member;
  });
  const x = Float64Array.from(nodes.flatMap((p) => [p.x, p.y, p.z]));
  return { model, nodes: n, members, x, equation, dofOf: Int32Array.from(dofs), matrix, scale, noise };
}

function makeMember(
  { nodes }: SpaceModel,
  e: SpaceElement,
  dofs: Int32Array,
  equation: Int32Array,
  at: readonly Map<number, number>[],
): Member {
  const [i, j] = [nodes[e.i]!, nodes[e.j]!];
  const along = [j.x - i.x, j.y - i.y, j.z - i.z] as const;
  const chord = Math.hypot(...along);
  const bent = e.bent ?? { yI: 0, zI: 0, yJ: 0, zJ: 0 };
  const restBent = e.restBent ?? bent;
  const bow = (a: number, b: number) => (2 * a * a - a * b + 2 * b * b) / 30;
  const rest = e.restLength ?? chord / (1 - bow(bent.zI, bent.zJ) - bow(bent.yI, bent.yJ));
  const places = new Int32Array(78).fill(-1);
  for (let p = 0, k = 0; p < 12; p++)
    for (let q = p; q < 12; q++, k++) {
      const [a, b] = [equation[dofs[p]!]!, equation[dofs[q]!]!];
      if (a >= 0 && b >= 0) places[k] = at[Math.max(a, b)]!.get(Math.min(a, b))!;
    }
  return {
    truss: Boolean(e.truss || e.tensionOnly),
    cable: Boolean(e.tensionOnly),
    EA: e.EA,
    GJ: e.GJ,
    rest,
    axes: axesOf(along, chord, e.towards),
    chord,
    z: plane(e.EIz, rest, e.springI?.z, e.springJ?.z, [bent.zI, bent.zJ], [restBent.zI, restBent.zJ]),
    y: plane(e.EIy, rest, e.springI?.y, e.springJ?.y, [bent.yI, bent.yJ], [restBent.yI, restBent.yJ]),
    dofs,
    places,
  };
}

function axesOf(
  along: readonly [number, number, number],
  chord: number,
  towards: SpaceElement['towards'],
): Float64Array {
  const [a, b, c] = along.map((v) => v / chord) as [number, number, number];
  const wish = towards ?? (Math.abs(c) > 0.999 ? [0, 1, 0] : [0, 0, 1]);
  const cross = (p: readonly number[], q: readonly number[]) => [
    p[1]! * q[2]! - p[2]! * q[1]!,
    p[2]! * q[0]! - p[0]! * q[2]!,
    p[0]! * q[1]! - p[1]! * q[0]!,
  ];
  let y = cross(wish, [a, b, c]);
  // a wish along the member is no wish: take any axis across it
  if (Math.hypot(...y) < 1e-9) y = cross(Math.abs(a) < 0.9 ? [1, 0, 0] : [0, 1, 0], [a, b, c]);
  const size = Math.hypot(...y);
  y = y.map((v) => v / size);
  const z = cross([a, b, c], y);
  return Float64Array.of(a, y[0]!, z[0]!, b, y[1]!, z[1]!, c, y[2]!, z[2]!);
}

/** Stiffness of a member's end rotations with a spring at either end, by adding flexibilities. */
function plane(
  EI: number,
  L: number,
  springI: number | undefined,
  springJ: number | undefined,
  start: readonly [number, number],
  rest: readonly [number, number],
): Plane {
  const base = { startI: start[0], startJ: start[1], restI: rest[0], restJ: rest[1] };
  // a hinge is a spring a billion times softer than the member: its moment is nil, nothing divides by zero
  const give = (spring: number | undefined) =>
    spring === undefined ? 0 : 1 / Math.max(spring, (1e-9 * EI) / L);
  const own = L / (3 * EI);
  const across = -L / (6 * EI);
  const fii = own + give(springI);
  const fjj = own + give(springJ);
  const det = fii * fjj - across * across;
  const [kii, kij, kjj] = [fjj / det, -across / det, fii / det];
  return {
    ...base,
    kii,
    kij,
    kjj,
    sii: own * kii + across * kij,
    sij: own * kij + across * kjj,
    sji: across * kii + own * kij,
    sjj: across * kij + own * kjj,
  };
}
