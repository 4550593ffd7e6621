import { type Skyline, skyline } from '../skyline.ts';
import type { PlaneModel, PlaneSupport } from './model.ts';
import { nodeOrder } from './numbering.ts';

/** Stiffness left in a slack member, as part of its EA: only keeps its free end from being a mechanism. */
export const SLACK = 1e-9;
/** Stiffness of a contact whose own is not given, N/m: a millimetre of give at 10 kN. */
export const HARD_CONTACT = 1e7;

/** A plane model laid out for the solver: unknowns numbered, element constants in flat arrays. */
export interface PlaneSystem {
  readonly model: PlaneModel;
  readonly nodes: number;
  readonly elements: number;
  /** all degrees of freedom: 3 a node, then one for each sprung or hinged member end */
  readonly dofs: number;
  /** equation of each dof, -1 where prescribed or without any stiffness */
  readonly equation: Int32Array;
  readonly matrix: Skyline;
  /** six dofs of each element */
  readonly ends: Int32Array;
  /** where the 21 entries of each element's upper triangle lie in the matrix, the spare place when not stored */
  readonly places: Int32Array;
  readonly kind: Uint8Array;
  readonly x: Float64Array;
  readonly EA: Float64Array;
  readonly EI: Float64Array;
  /** developed unstressed length */
  readonly rest: Float64Array;
  readonly chordX: Float64Array;
  readonly chordY: Float64Array;
  readonly chord: Float64Array;
  /** end rotations against the chord, as drawn and unstressed */
  readonly startA: Float64Array;
  readonly startB: Float64Array;
  readonly restA: Float64Array;
  readonly restB: Float64Array;
  /** springs between two dofs (second -1: to ground) */
  readonly springs: readonly {
    a: number;
    b: number;
    stiffness: number;
    rest: number;
    support: number;
  }[];
  readonly contacts: readonly {
    dof: number;
    stiffness: number;
    gap: number;
    direction: number;
    support: number;
  }[];
  readonly prescribed: readonly {
    dof: number;
    value: number;
    support: number;
  }[];
  /** mean length of the elements: brings moments and forces to one scale */
  readonly scale: number;
  /** largest force that rounding of the coordinates leaves in an element, N */
  readonly noise: number;
  /** dof of each equation, and whether it is a rotation */
  readonly dofOf: Int32Array;
  readonly turns: Uint8Array;
}

export const BEAM = 0;
export const TRUSS = 1;
export const CABLE = 2;

const DOF = { x: 0, y: 1, r: 2 } as const;

/** Average slope squared over two of a cubic with end slopes a and b: the bowing term. */
export const bowing = (a: number, b: number) => (2 * a * a - a * b + 2 * b * b) / 30;

const turned = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

const known = new WeakMap<PlaneModel, PlaneSystem | string>();

/** Lays a model out, once for each model object; a sentence says what is wrong with it. */
export function planeSystem(model: PlaneModel): PlaneSystem | string {
  let found = known.get(model);
  if (found === undefined) {
    found = faults(model) ?? layOut(model, true);
    known.set(model, found);
  }
  return found;
}

function faults(model: PlaneModel): string | undefined {
  const { nodes, elements, supports } = model;
  if (nodes.length === 0 || elements.length === 0) return 'the frame has no members';
  for (const [n, node] of nodes.entries())
    if (![node.x, node.y, node.angle ?? 0].every(Number.isFinite)) return `node ${n} has no finite position`;
  for (const [n, e] of elements.entries()) {
    const i = nodes[e.i];
    const j = nodes[e.j];
    if (!i || !j) return `element ${n} ends at a node that is not there`;
    if (!(Math.hypot(j.x - i.x, j.y - i.y) > 0)) return `element ${n} has no length`;
    if (!(e.EA > 0 && Number.isFinite(e.EA))) return `element ${n} needs a stiffness EA above zero`;
    if (!e.truss && !e.tensionOnly && !(e.EI > 0 && Number.isFinite(e.EI)))
      return `element ${n} needs a stiffness EI above zero`;
    if (!(e.restLength === undefined || (e.restLength > 0 && Number.isFinite(e.restLength))))
      return `element ${n} needs a rest length above zero`;
    if (![e.restCurvature ?? 0, e.angleI ?? 0, e.angleJ ?? 0].every(Number.isFinite))
      return `element ${n} has a shape that is not finite`;
    if (![e.springI ?? 0, e.springJ ?? 0].every((k) => Number.isFinite(k) && k >= 0))
      return `element ${n} has an end spring below zero`;
  }
  for (const [n, s] of supports.entries()) {
    if (!nodes[s.node]) return `support ${n} holds a node that is not there`;
    if (!Number.isFinite(s.value ?? 0) || !Number.isFinite(s.gap ?? 0)) return `support ${n} is not finite`;
    const stiffness = s.stiffness ?? (s.kind === 'spring' ? Number.NaN : 1);
    if (!(stiffness >= 0 && Number.isFinite(stiffness))) return `support ${n} needs a stiffness`;
  }
  return undefined;
}

/** The same frame with an equation for every dof, supports of kind 'fixed' taken away: for their reactions. */
export const unheld = (system: PlaneSystem): PlaneSystem => layOut(system.model, false);

function layOut(model: PlaneModel, held: boolean): PlaneSystem {
  const { nodes, elements, supports } = model;
  const n = nodes.length;
  const m = elements.length;
  const ends = new Int32Array(6 * m);
  const kind = new Uint8Array(m);
  const springs: PlaneSystem['springs'][number][] = [];
  const behind: number[][] = nodes.map(() => []);
  let dofs = 3 * n;
  for (const [e, element] of elements.entries()) {
    kind[e] = element.tensionOnly ? CABLE : element.truss ? TRUSS : BEAM;
    for (const [side, node, spring] of [
      [0, element.i, element.springI],
      [3, element.j, element.springJ],
    ] as const) {
      ends[6 * e + side] = 3 * node;
      ends[6 * e + side + 1] = 3 * node + 1;
      let rotation = 3 * node + 2;
      if (kind[e] === BEAM && spring !== undefined) {
        if (spring > 0)
          springs.push({
            a: rotation,
            b: dofs,
            stiffness: spring,
            rest: 0,
            support: -1,
          });
        behind[node]!.push(dofs);
        rotation = dofs++;
      }
      ends[6 * e + side + 2] = rotation;
    }
  }
  const { contacts, prescribed } = sortSupports(supports, springs);
  const equation = numberEquations(
    nodeOrder(model),
    dofs,
    behind,
    kind,
    ends,
    springs,
    held ? prescribed : [],
  );
  const { matrix, places } = storage(equation, ends, kind, springs);
  return {
    model,
    nodes: n,
    elements: m,
    dofs,
    equation,
    matrix,
    ends,
    places,
    kind,
    springs,
    contacts,
    prescribed,
    ...shapes(model, kind),
    ...unknowns(equation, n, matrix.size),
  };
}

function unknowns(equation: Int32Array, nodes: number, size: number): Pick<PlaneSystem, 'dofOf' | 'turns'> {
  const dofOf = new Int32Array(size);
  const turns = new Uint8Array(size);
  for (let dof = 0; dof < equation.length; dof++) {
    const q = equation[dof]!;
    if (q < 0) continue;
    dofOf[q] = dof;
    turns[q] = dof >= 3 * nodes || dof % 3 === 2 ? 1 : 0;
  }
  return { dofOf, turns };
}

function sortSupports(supports: readonly PlaneSupport[], springs: PlaneSystem['springs'][number][]) {
  const contacts: PlaneSystem['contacts'][number][] = [];
  const prescribed: PlaneSystem['prescribed'][number][] = [];
  for (const [support, s] of supports.entries()) {
    const dof = 3 * s.node + DOF[s.dof];
    if (s.kind === 'fixed') prescribed.push({ dof, value: s.value ?? 0, support });
    else if (s.kind === 'spring')
      springs.push({
        a: dof,
        b: -1,
        stiffness: s.stiffness!,
        rest: s.value ?? 0,
        support,
      });
    else {
      const direction = s.direction ?? 1;
      const gap = (s.gap ?? 0) - direction * (s.value ?? 0);
      contacts.push({
        dof,
        stiffness: s.stiffness ?? HARD_CONTACT,
        gap,
        direction,
        support,
      });
    }
  }
  return { contacts, prescribed };
}

function numberEquations(
  order: readonly number[],
  dofs: number,
  behind: number[][],
  kind: Uint8Array,
  ends: Int32Array,
  springs: PlaneSystem['springs'],
  prescribed: PlaneSystem['prescribed'],
): Int32Array {
  const held = new Uint8Array(dofs);
  for (const p of prescribed) held[p.dof] = 1;
  const stiff = new Uint8Array(dofs);
  for (let e = 0; e < kind.length; e++)
    for (let d = 0; d < 6; d++) if (kind[e] === BEAM || d % 3 < 2) stiff[ends[6 * e + d]!] = 1;
  for (const s of springs) {
    stiff[s.a] = 1;
    if (s.b >= 0) stiff[s.b] = 1;
  }
  const equation = new Int32Array(dofs).fill(-1);
  let next = 0;
  const give = (dof: number) => {
    // a node's position always counts (a loose node must show as a mechanism); its rotation only when used
    const used = stiff[dof] || (dof < 3 * behind.length && dof % 3 < 2);
    if (used && !held[dof]) equation[dof] = next++;
  };
  for (const node of order) {
    for (let d = 0; d < 3; d++) give(3 * node + d);
    for (const dof of behind[node]!) give(dof);
  }
  return equation;
}

function storage(
  equation: Int32Array,
  ends: Int32Array,
  kind: Uint8Array,
  springs: PlaneSystem['springs'],
): { matrix: Skyline; places: Int32Array } {
  let size = 0;
  for (const q of equation) if (q >= size) size = q + 1;
  const top = Int32Array.from({ length: size }, (_, j) => j);
  const couple = (dofs: readonly number[]) => {
    const rows = dofs.map((dof) => equation[dof]!).filter((q) => q >= 0);
    const least = Math.min(...rows);
    for (const q of rows) if (least < top[q]!) top[q] = least;
  };
  const used = (e: number) =>
    [0, 1, 2, 3, 4, 5].filter((d) => kind[e] === BEAM || d % 3 < 2).map((d) => ends[6 * e + d]!);
  for (let e = 0; e < kind.length; e++) couple(used(e));
  for (const s of springs) if (s.b >= 0) couple([s.a, s.b]);
  const matrix = skyline(top);
  const spare = matrix.values.length - 1;
  const places = new Int32Array(21 * kind.length).fill(spare);
  for (let e = 0; e < kind.length; e++) {
    let at = 21 * e;
    for (let r = 0; r < 6; r++)
      for (let c = r; c < 6; c++, at++) {
        if (kind[e] !== BEAM && (r % 3 === 2 || c % 3 === 2)) continue;
        const found = place(matrix, equation[ends[6 * e + r]!]!, equation[ends[6 * e + c]!]!);
        if (found >= 0) places[at] = found;
      }
  }
  return { matrix, places };
}

/** Where entry (p, q) lies in the matrix, -1 when either is no equation. */
export function place(matrix: Skyline, p: number, q: number): number {
  if (p < 0 || q < 0) return -1;
  const column = Math.max(p, q);
  return matrix.diagonal[column]! - (column - Math.min(p, q));
}

function shapes(model: PlaneModel, kind: Uint8Array) {
  const m = model.elements.length;
  const x = new Float64Array(2 * model.nodes.length);
  for (const [n, node] of model.nodes.entries()) {
    x[2 * n] = node.x;
    x[2 * n + 1] = node.y;
  }
  const make = () => new Float64Array(m);
  const [EA, EI, rest, chordX, chordY, chord] = [make(), make(), make(), make(), make(), make()];
  const [startA, startB, restA, restB] = [make(), make(), make(), make()];
  let total = 0;
  let noise = 0;
  for (const [e, element] of model.elements.entries()) {
    const i = model.nodes[element.i]!;
    const j = model.nodes[element.j]!;
    EA[e] = element.EA;
    EI[e] = element.EI;
    chordX[e] = j.x - i.x;
    chordY[e] = j.y - i.y;
    const length = Math.hypot(chordX[e]!, chordY[e]!);
    chord[e] = length;
    if (kind[e] === BEAM) {
      const lean = Math.atan2(chordY[e]!, chordX[e]!);
      startA[e] = turned((element.angleI ?? i.angle ?? lean) - lean);
      startB[e] = turned((element.angleJ ?? j.angle ?? lean) - lean);
    }
    rest[e] = element.restLength ?? length / (1 - bowing(startA[e]!, startB[e]!));
    const sprung = element.restCurvature;
    restA[e] = sprung === undefined ? startA[e]! : (-sprung * rest[e]!) / 2;
    restB[e] = sprung === undefined ? startB[e]! : (sprung * rest[e]!) / 2;
    total += length;
    noise = Math.max(
      noise,
      (EA[e]! * Math.max(Math.abs(i.x), Math.abs(i.y), Math.abs(j.x), Math.abs(j.y), length)) / rest[e]!,
    );
  }
  return {
    x,
    EA,
    EI,
    rest,
    chordX,
    chordY,
    chord,
    startA,
    startB,
    restA,
    restB,
    scale: total / m,
    noise,
  };
}
