/** The input deck of a house for `ccx`: nodes and elements in sets, joints, springs, steps. */
import type { HouseAsked, HouseJoint, HousePiece } from './house.ts';
import { cross, unit, type Vector } from './vector.ts';

const DOF = { x: 1, y: 2, z: 3, rx: 4, ry: 5, rz: 6 } as const;
const AXES = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;
/** Expansion of bent members: so small that cooling their neighbours' cables does not shorten them. */
const BEND = 1e-9;
/** Length of the outriggers by which turning is held, m, and their modulus over their member's: more loses digits. */
const REACH = 0.1;
const STIFF = 1e2;

const words = (v: Vector): string => v.map((c) => c.toFixed(12)).join(', ');

/** A sum of movements: of a node along a direction, so many times. */
type Term = readonly [node: number, direction: Vector, times: number];

export function houseInput(house: HouseAsked): string {
  const deck = new Deck(house);
  for (const piece of house.pieces) deck.piece(piece);
  for (const spring of house.springs ?? []) deck.foot(spring);
  return deck.write();
}

class Deck {
  private readonly house: HouseAsked;
  private readonly nodes: Vector[];
  private readonly held: string[] = [];
  private readonly equations: string[] = [];
  private readonly springs: string[] = [];
  private element = 1;
  /** Pieces alike share one set: where sets meet, ccx makes a rigid knot of the node, which stiffens the member. */
  private readonly sets = new Map<string, { readonly piece: HousePiece; readonly elements: string[] }>();
  private readonly warmths = new Map<number, { cold: number; gradient: number; count: number }>();
  private readonly bent: ReadonlySet<number>;
  private readonly barEnds = new Map<number, number>();

  constructor(house: HouseAsked) {
    this.house = house;
    this.nodes = house.nodes.map((n) => [n.x, n.y, n.z]);
    for (const h of house.held) this.held.push(`${h.node + 1}, ${DOF[h.dof]}, ${DOF[h.dof]}, 0.`);
    this.bent = new Set(house.pieces.flatMap((p) => (p.section.kind === 'bar' ? [] : [p.i, p.j])));
  }

  private node(at: Vector): number {
    return this.nodes.push(at) - 1;
  }

  piece(piece: HousePiece): void {
    if (piece.section.kind === 'bar') {
      const ends = [this.barEnd(piece.i), this.barEnd(piece.j)];
      if (piece.short !== undefined) for (const id of ends) this.warm(id, { cold: true });
      this.put(piece, ends);
      return;
    }
    const [a, b] = [this.nodes[piece.i]!, this.nodes[piece.j]!];
    const inner =
      piece.between ??
      [1, 2, 3].map((n): Vector => [0, 1, 2].map((c) => a[c]! + (n / 4) * (b[c]! - a[c]!)) as never);
    const ends = [piece.i, piece.j].map((node, k) => {
      const joint = k === 0 ? piece.jointI : piece.jointJ;
      return joint === undefined ? node : this.joint(node, joint, piece);
    });
    const ids = [ends[0]!, ...inner.map((p) => this.node(p)), ends[1]!];
    for (let n = 0; n + 2 < ids.length; n += 2) this.put(piece, ids.slice(n, n + 3));
    piece.locked?.forEach((curvature, n) => {
      this.warm(ids[n]!, { curvature });
    });
  }

  private put(piece: HousePiece, ids: readonly number[]): void {
    const { E, poisson, section, towards, short } = piece;
    const key = JSON.stringify([E, poisson, section, towards, short, piece.locked !== undefined]);
    const set = this.sets.get(key) ?? { piece, elements: [] };
    this.sets.set(key, set);
    set.elements.push([this.element++, ...ids.map((id) => id + 1)].join(', '));
  }

  private warm(node: number, how: { readonly cold?: true; readonly curvature?: number }): void {
    const at = this.warmths.get(node) ?? { cold: 0, gradient: 0, count: 0 };
    if (how.cold === true) at.cold = 1;
    if (how.curvature !== undefined) {
      at.gradient = (at.gradient * at.count + how.curvature) / (at.count + 1);
      at.count++;
    }
    this.warmths.set(node, at);
  }

  /**
   * Bars end on nodes of their own where beams meet, tied to them in their three movements: a node has one
   * temperature and one gradient for all its elements, and a bar would bend by the gradient meant for the beams.
   */
  private barEnd(node: number): number {
    if (!this.bent.has(node)) return node;
    const known = this.barEnds.get(node);
    if (known !== undefined) return known;
    const own = this.tied(node);
    this.barEnds.set(node, own);
    return own;
  }

  /** A node in the same place that moves along but turns by itself. */
  private tied(node: number): number {
    const own = this.node([...this.nodes[node]!]);
    for (const axis of Object.values(AXES)) this.equal([own, axis, 1], [node, axis, -1]);
    return own;
  }

  /** Nought is the sum of these movements; the first node and its largest direction are what is worked out from it. */
  private equal(...terms: readonly Term[]): void {
    const parts = terms.flatMap(([node, direction, times]) =>
      [0, 1, 2]
        .filter((c) => Math.abs(direction[c]!) > 1e-9)
        .sort((p, q) => Math.abs(direction[q]!) - Math.abs(direction[p]!))
        .map((c) => `${node + 1}, ${c + 1}, ${(times * direction[c]!).toPrecision(12)}`),
    );
    const lines: string[] = [];
    for (let k = 0; k < parts.length; k += 4) lines.push(parts.slice(k, k + 4).join(', '));
    this.equations.push('*EQUATION', `${parts.length}`, ...lines);
  }

  /** A spring to the ground that takes the sum of these movements. */
  private spring(stiffness: number, ...terms: readonly Term[]): void {
    const own = this.node([0, -1, 0]);
    this.held.push(`${own + 1}, 2, 3, 0.`);
    this.equal([own, AXES.x, 1], ...terms.map(([node, axis, times]): Term => [node, axis, -times]));
    const set = `S${this.springs.length}`;
    this.springs.push(
      `*ELEMENT, TYPE=SPRING1, ELSET=${set}\n${this.element++}, ${own + 1}\n*SPRING, ELSET=${set}\n1\n${stiffness.toPrecision(12)}`,
    );
  }

  /**
   * The end of a member in a joint: a node of its own, tied in its movements, its turning held axis by axis. ccx knows
   * no equations between turnings, so that outriggers on both sides carry them: the tips keep together, or a spring
   * lies between them.
   */
  private joint(node: number, joint: HouseJoint, piece: HousePiece): number {
    const own = this.tied(node);
    for (const { axis, stiffness } of joint) {
      const { mine, across } = this.outrigger(own, axis, piece);
      const theirs = this.outrigger(node, axis, piece).mine;
      if (stiffness === undefined) this.equal([mine, across, 1], [theirs, across, -1]);
      else this.spring(stiffness / REACH ** 2, [mine, across, 1], [theirs, across, -1]);
    }
    return own;
  }

  /** A stiff arm square to an axis: its tip moves `across` by the reach times the turning about the axis. */
  private outrigger(node: number, axis: Vector, piece: HousePiece): { mine: number; across: Vector } {
    const aside: Vector = Math.abs(axis[2]) < 0.9 ? AXES.z : AXES.x;
    const arm = unit(cross(axis, aside));
    const across = cross(axis, arm);
    const [x, y, z] = this.nodes[node]!;
    const at = (far: number): Vector => [x + far * arm[0], y + far * arm[1], z + far * arm[2]];
    const [middle, mine] = [this.node(at(REACH / 2)), this.node(at(REACH))];
    const { E } = piece;
    const section = { kind: 'circle', outside: REACH / 5 } as const;
    const member: HousePiece = { i: node, j: mine, E: E * STIFF, poisson: 0, section, towards: axis };
    this.put(member, [node, middle, mine]);
    return { mine, across };
  }

  /** A foot that gives: in a movement by a spring of its own, in turning by an outrigger's. */
  foot({ node, dof, stiffness }: NonNullable<HouseAsked['springs']>[number]): void {
    if (dof === 'x' || dof === 'y' || dof === 'z') {
      this.spring(stiffness, [node, AXES[dof], 1]);
      return;
    }
    const piece = this.house.pieces.find((p) => p.section.kind !== 'bar' && (p.i === node || p.j === node))!;
    const { mine, across } = this.outrigger(node, AXES[dof.slice(1) as 'x' | 'y' | 'z'], piece);
    this.spring(stiffness / REACH ** 2, [mine, across, 1], [node, across, -1]);
  }

  write(): string {
    const { house } = this;
    const out = ['*NODE, NSET=ALL', ...this.nodes.map((p, n) => `${n + 1}, ${words(p)}`)];
    [...this.sets.values()].forEach((set, k) => {
      out.push(...setLines(set.piece, set.elements, k));
    });
    out.push(...this.springs, '*NSET, NSET=OURS, GENERATE', `1, ${house.nodes.length}, 1`, ...this.equations);
    out.push('*INITIAL CONDITIONS, TYPE=TEMPERATURE', 'ALL, 0.', '*BOUNDARY', ...this.held);
    const stressed = this.warmths.size > 0;
    if (stressed) {
      out.push('*STEP, NLGEOM, INC=1000', '*STATIC', '0.5, 1.', '*TEMPERATURE');
      for (const [node, { cold, gradient }] of this.warmths)
        out.push(`${node + 1}, ${-cold}, ${(gradient / BEND).toPrecision(9)}, 0.`);
      out.push(...print);
    }
    out.push(...stepLines(house.nonlinear, stressed), '*CLOAD');
    for (const l of house.loads)
      for (const [dof, f] of [l.fx, l.fy, l.fz].entries())
        if (Math.abs(f) > 1e-9) out.push(`${l.node + 1}, ${dof + 1}, ${f.toPrecision(9)}`);
    out.push(...print, '');
    return out.join('\n');
  }
}

const print = [
  '*NODE PRINT, NSET=OURS, FREQUENCY=1000',
  'U',
  '*NODE PRINT, NSET=OURS, FREQUENCY=1000',
  'RF',
  '*END STEP',
];

function stepLines(nonlinear: boolean, stressed: boolean): string[] {
  if (nonlinear) return ['*STEP, NLGEOM, INC=1000', '*STATIC', '0.5, 1.'];
  return [stressed ? '*STEP, PERTURBATION' : '*STEP', '*STATIC'];
}

function setLines(piece: HousePiece, elements: readonly string[], k: number): string[] {
  return [
    `*ELEMENT, TYPE=${piece.section.kind === 'bar' ? 'T3D2' : 'B32R'}, ELSET=P${k}`,
    ...elements,
    `*MATERIAL, NAME=M${k}`,
    '*ELASTIC',
    `${piece.E.toPrecision(12)}, ${piece.poisson.toPrecision(9)}`,
    ...(piece.locked === undefined ? [] : ['*EXPANSION, ZERO=0.', `${BEND}`]),
    ...(piece.short === undefined ? [] : ['*EXPANSION, ZERO=0.', piece.short.toPrecision(9)]),
    ...sectionCard(piece, k),
  ];
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
