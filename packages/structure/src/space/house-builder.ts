import type { SpaceElement, SpaceSupport } from '@tautline/mechanics';
import type { CableItem, Foot, JointItem, MemberItem, Shelter } from '@tautline/shelter';
import { type Condition, modulusIn } from '../system/condition.ts';
import type { FootGive } from '../system/foot-hold.ts';
import type { FrameSystem } from '../system/frame-system.ts';
import { gravity, weightPerLength } from '../system/member.ts';
import type {
  HouseElement,
  HouseFrame,
  HouseNode,
  HousePost,
  HouseRole,
  HouseSupport,
  HouseSystem,
  HouseUpright,
} from './house.ts';
import { stiffnessOf } from './stiffness.ts';

export type Point = readonly [number, number, number];
type Ends = Pick<SpaceElement, 'springI' | 'springJ' | 'towards'>;
interface Piece {
  readonly part: string;
  readonly role: HouseRole;
  readonly piece: number;
  readonly from?: number;
  readonly to?: number;
}

/** Holding along the house so that what stands across it can be worked out where nothing holds it along, N/m. */
const steadying = 2000;

/** How a joint turns: by its stiffness; freely when there is no joint or it carries no bending; else not at all. */
export function turning(joint: JointItem | undefined): number | undefined {
  if (joint === undefined) return 0;
  if (joint.stiffness !== undefined) return joint.stiffness;
  return joint.momentCapacity > 0 ? undefined : 0;
}

/** Collects nodes, elements and supports with their meaning; used only while a house is being built. */
export class HouseBuilder {
  readonly shelter: Shelter;
  readonly condition: Condition;
  readonly slice: FrameSystem;
  readonly nodes: HouseNode[] = [];
  readonly elements: SpaceElement[] = [];
  readonly meanings: HouseElement[] = [];
  readonly supports: SpaceSupport[] = [];
  readonly holds: HouseSupport[] = [];
  readonly frames: HouseFrame[] = [];
  readonly posts: HousePost[] = [];
  readonly uprights: HouseUpright[] = [];
  readonly weights = new Map<number, number>();
  readonly notes = new Set<string>();
  readonly footSprings: (foot: Foot, member: MemberItem) => FootGive | undefined;

  constructor(
    shelter: Shelter,
    condition: Condition,
    slice: FrameSystem,
    footSprings: HouseBuilder['footSprings'],
  ) {
    this.shelter = shelter;
    this.condition = condition;
    this.slice = slice;
    this.footSprings = footSprings;
  }

  node([x, y, z]: Point, part: string, at: number): number {
    return this.nodes.push({ x, y, z, part, at }) - 1;
  }

  at(node: number): Point {
    const { x, y, z } = this.nodes[node]!;
    return [x, y, z];
  }

  distance(a: number, b: number): number {
    const [p, q] = [this.at(a), this.at(b)];
    return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
  }

  add(element: SpaceElement, meaning: HouseElement): number {
    this.elements.push(element);
    return this.meanings.push(meaning) - 1;
  }

  /** Modulus at the temperature and age of the condition, Pa. */
  modulus(item: MemberItem): number {
    return modulusIn(item, this.condition);
  }

  /** A straight member between two nodes, with its own weight. Its depth lies along `towards`. */
  beam(i: number, j: number, item: MemberItem, piece: Piece, ends: Ends = {}): number {
    const k = stiffnessOf(item, this.modulus(item));
    const length = this.distance(i, j);
    const { from = 0, to = length, ...names } = piece;
    const index = this.add(
      { i, j, EA: k.EA, EIy: k.EIdeep, EIz: k.EIflat, GJ: k.GJ, ...ends },
      { ...names, item, from, to, length },
    );
    this.weights.set(index, weightPerLength(item));
    return index;
  }

  /** A member with hinges at both ends, or a cable that goes slack; `tension` (N) is its pull as set up. */
  bar(i: number, j: number, item: MemberItem | CableItem, piece: Piece, tension = 0): number {
    const cable = item.kind === 'cable';
    const EA = cable ? item.modulus * item.area : stiffnessOf(item, this.modulus(item)).EA;
    const length = this.distance(i, j);
    const { from = 0, to = length, ...names } = piece;
    const index = this.add(
      {
        i,
        j,
        EA,
        EIy: 0,
        EIz: 0,
        GJ: 0,
        ...(cable ? { tensionOnly: true } : { truss: true }),
        ...(tension > 0 ? { restLength: length / (1 + tension / EA) } : {}),
      },
      { ...names, item, from, to, length },
    );
    this.weights.set(index, cable ? item.massPerLength * gravity : weightPerLength(item));
    return index;
  }

  /**
   * A short stiff piece from a frame to what crosses it, `away` off the frame's line: the joint turns about the two
   * axes across the crossing member by its stiffness. The crossing member's own spin is held unless `spins`.
   */
  link(node: number, away: Point, item: MemberItem, joint: JointItem | undefined, spins = false): number {
    const [x, y, z] = this.at(node);
    const other = this.node([x + away[0], y + away[1], z + away[2]], 'link', 0);
    const length = this.distance(node, other);
    const k = stiffnessOf(item, this.modulus(item));
    const turn = turning(joint);
    const EI = 4 * Math.max(k.EIdeep, k.EIflat);
    this.add(
      {
        i: node,
        j: other,
        EA: 4 * k.EA,
        EIy: EI,
        EIz: EI,
        GJ: turn === undefined ? EI : Math.max(turn * length, 1e-6 * EI),
        towards: [0, 0, 1],
        springJ: {
          y: turn,
          z: spins ? turn : turn === 0 ? undefined : turn,
        },
      },
      { part: 'link', role: 'link', from: 0, to: length, length, piece: 0 },
    );
    return other;
  }

  hold(node: number, part: string, acts: HouseSupport['acts'], stiffness?: number): void {
    this.supports.push(
      stiffness === undefined
        ? { node, dof: acts, kind: 'fixed' }
        : { node, dof: acts, kind: 'spring', stiffness },
    );
    this.holds.push({ part, acts, node });
  }

  /** A foot in the ground: placed, kept from spinning about the upright, and clamped where its fixity says so. */
  foot(node: number, foot: Foot | undefined, member: MemberItem, part: string): void {
    const soil = foot === undefined ? undefined : this.footSprings(foot, member);
    this.hold(node, part, 'x', soil?.sideways);
    this.hold(node, part, 'y');
    this.hold(node, part, 'z', soil?.sideways);
    this.hold(node, part, 'ry');
    if (foot?.fixity !== 'clamped') return;
    this.hold(node, part, 'rx', soil?.turning);
    this.hold(node, part, 'rz', soil?.turning);
  }

  /** A point fixed to the ground for cables and braces. */
  anchor(point: Point, part: string): number {
    const node = this.node(point, part, 0);
    for (const acts of ['x', 'y', 'z'] as const) this.hold(node, part, acts);
    return node;
  }

  finish(steady: boolean): HouseSystem {
    if (steady)
      for (const frame of this.frames)
        for (const node of frame.nodes) if (node >= 0) this.hold(node, 'steadying', 'z', steadying);
    return {
      condition: this.condition.id,
      model: {
        nodes: this.nodes.map(({ x, y, z }) => ({ x, y, z })),
        elements: this.elements,
        supports: this.supports,
      },
      nodes: this.nodes,
      elements: this.meanings,
      supports: this.holds,
      slice: this.slice,
      frames: this.frames,
      posts: this.posts,
      uprights: this.uprights,
      weights: this.weights,
      notes: [...this.notes],
    };
  }
}
