/**
 * The typical frame as a plane system: one bow (or pair of rafters) with its posts, smeared to the
 * spacing of the frames. Nodes and elements remember which part and which place they stand for.
 */
import type { PlaneElement, PlaneModel, PlaneNode, PlaneSupport } from '@tautline/mechanics';
import type { CableItem, MemberItem, Shelter } from '@tautline/shelter';
import { type Condition, modulusIn } from './condition.ts';
import { gravity, relaxedShare, weightPerLength } from './member.ts';

/** A run of elements along one part: where on the part, and of what stock. */
export interface FrameElement {
  readonly part: string;
  readonly item: MemberItem | CableItem;
  /** Arc length along the part's own line at both ends, m. */
  readonly from: number;
  readonly to: number;
  readonly role: 'roof' | 'left-wall' | 'right-wall' | 'tie';
  /** Weight of what fills it, N/m; absent when it is empty. */
  readonly inside?: number;
  /** Members of this part per frame (posts further apart than the bows count less than one). */
  readonly perFrame: number;
  /** Horizontal and vertical extent from start to end, m. */
  readonly dx: number;
  readonly dy: number;
  readonly length: number;
}

/** Weight of an element of a frame with what fills it, for the members per frame, N/m. */
export function ownWeight({ item, inside = 0, perFrame }: FrameElement): number {
  const own = item.kind === 'cable' ? item.massPerLength * gravity : weightPerLength(item);
  return (own + inside) * perFrame;
}

/** Whether a frame is the same in two conditions: no member of it is stiffer in one, or has crept since it was sprung. */
export const asStiff = ({ elements, sprung }: FrameSystem, one: Condition, other: Condition): boolean =>
  elements.every(
    ({ item }) =>
      item.kind === 'cable' ||
      (modulusIn(item, one) === modulusIn(item, other) &&
        (!sprung || one.relaxed === other.relaxed || relaxedShare(item) === 1)),
  );

/** The stock of an element of the roof or of a post. Throws RangeError on a wire, which only ties are made of. */
export function memberOf({ item, part }: FrameElement): MemberItem {
  if (item.kind === 'cable') throw new RangeError(`${part} is a wire and does not bend`);
  return item;
}

export interface FrameNode {
  readonly x: number;
  readonly y: number;
  readonly part: string;
  readonly at: number;
}

/** What holds the frame, and in which direction; index runs along `model.supports`. */
export interface FrameSupport {
  readonly part: string;
  readonly side: 'left' | 'right' | 'crown' | 'line';
  readonly acts: 'x' | 'y' | 'r';
}

export interface FrameSystem {
  readonly model: PlaneModel;
  readonly nodes: readonly FrameNode[];
  readonly elements: readonly FrameElement[];
  readonly supports: readonly FrameSupport[];
  /** Elements of the roof line, left to right. */
  readonly roof: readonly number[];
  readonly leftWall: readonly number[];
  readonly rightWall: readonly number[];
  /** True when the bow is a straight pipe sprung into place. */
  readonly sprung: boolean;
  /** Breadth of roof that one frame carries, m. */
  readonly tributary: number;
  /** Plain statements on how the model was simplified. */
  readonly notes: readonly string[];
}

/** Collects nodes, elements and supports with their meaning; used only while a system is being built. */
export class SystemBuilder {
  readonly nodes: PlaneNode[] = [];
  readonly nodeMeaning: FrameNode[] = [];
  readonly elements: PlaneElement[] = [];
  readonly elementMeaning: FrameElement[] = [];
  readonly supports: PlaneSupport[] = [];
  readonly supportMeaning: FrameSupport[] = [];
  readonly notes: string[] = [];

  node(node: PlaneNode, part: string, at: number): number {
    this.nodes.push(node);
    this.nodeMeaning.push({ x: node.x, y: node.y, part, at });
    return this.nodes.length - 1;
  }

  element(element: PlaneElement, meaning: Omit<FrameElement, 'dx' | 'dy' | 'length'>): number {
    const a = this.nodes[element.i]!;
    const b = this.nodes[element.j]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    this.elements.push(element);
    const { part, item, from, to, role, perFrame, inside } = meaning;
    this.elementMeaning.push({
      part,
      item,
      from,
      to,
      role,
      perFrame,
      ...(inside === undefined ? {} : { inside }),
      dx,
      dy,
      length: element.restLength ?? Math.hypot(dx, dy),
    });
    return this.elements.length - 1;
  }

  support(support: PlaneSupport, meaning: FrameSupport): number {
    this.supports.push(support);
    this.supportMeaning.push(meaning);
    return this.supports.length - 1;
  }

  finish(shelter: Shelter, sprung: boolean): FrameSystem {
    const withRole = (role: FrameElement['role']): number[] =>
      this.elementMeaning.flatMap((element, index) => (element.role === role ? [index] : []));
    return {
      model: {
        nodes: this.nodes,
        elements: this.elements,
        supports: this.supports,
      },
      nodes: this.nodeMeaning,
      elements: this.elementMeaning,
      supports: this.supportMeaning,
      roof: withRole('roof'),
      leftWall: withRole('left-wall'),
      rightWall: withRole('right-wall'),
      sprung,
      tributary: shelter.roof.spacing,
      notes: this.notes,
    };
  }
}
