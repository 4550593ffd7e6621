/** Bars of the house in space, and what stands in the ground. */
import type { CableItem, Foot, MemberItem } from '@tautline/shelter';
import { breadthOf, depthOf } from './describe.ts';
import type { Space } from './views/members.ts';

export interface Segment {
  readonly part: string;
  readonly from: Space;
  readonly to: Space;
  /** Half the depth, m; the true radius of round members. */
  readonly radius: number;
  readonly section: 'round' | 'rectangle';
  /** Half the breadth of rectangles along the house, m. */
  readonly halfBreadth: number;
  readonly underground: boolean;
}

/** A bar of a stock item. */
export function segment(
  part: string,
  member: MemberItem | CableItem,
  from: Space,
  to: Space,
  underground = false,
): Segment {
  const square = member.kind !== 'cable' && member.section.shape === 'rectangle';
  return {
    part,
    from,
    to,
    radius: depthOf(member) / 2,
    section: square ? 'rectangle' : 'round',
    halfBreadth: breadthOf(member) / 2,
    underground,
  };
}

/** A bar of the picture's own: a round one, or a rectangle of a depth and a breadth, m. */
export function bar(
  part: string,
  from: Space,
  to: Space,
  depth: number,
  breadth?: number,
  underground = false,
): Segment {
  return {
    part,
    from,
    to,
    radius: depth / 2,
    section: breadth === undefined ? 'round' : 'rectangle',
    halfBreadth: (breadth ?? depth) / 2,
    underground,
  };
}

/** Length of a buried log and sides of a block of ballast or a pad, m, where the model does not say. */
const LOG = 0.6;
const BLOCK = 0.25;

/** A foot: stub, leg or post below ground with its concrete, anchor or log; a block or pad on the ground. */
export function footSegments(
  foot: Foot,
  member: MemberItem | CableItem,
  x: number,
  z: number,
  inward: -1 | 0 | 1,
): readonly Segment[] {
  const lean = inward === 0 ? Math.PI / 2 : (foot.lean ?? Math.PI / 2);
  const [u, v] = [Math.cos(lean) * inward, Math.sin(lean)];
  const along = (s: number): Space => [x + u * s, v * s, z];
  const across = foot.across ?? foot.anchor?.diameter;
  if (foot.kind === 'ballast' || foot.kind === 'bearing') {
    const high = foot.kind === 'ballast' ? 0.12 : 0.05;
    const out = inward === 0 ? x : x - inward * BLOCK * 0.3;
    const side = across ?? BLOCK;
    return [bar(foot.id, [out, high / 2, z - side / 2], [out, high / 2, z + side / 2], high, side)];
  }
  if (foot.driven <= 0) return [];
  const deep = foot.driven / Math.max(0.2, v);
  const bottom: Space = [x, -foot.driven, z];
  switch (foot.kind) {
    case 'deadman':
      return [
        segment(foot.id, member, bottom, [x, 0, z], true),
        bar(
          foot.id,
          [x, -foot.driven, z - LOG / 2],
          [x, -foot.driven, z + LOG / 2],
          across ?? 0.12,
          undefined,
          true,
        ),
      ];
    case 'screw':
      return [
        bar(foot.id, bottom, [x, 0, z], 0.016, undefined, true),
        bar(
          foot.id,
          [x, -foot.driven + 0.02, z],
          [x, -foot.driven + 0.04, z],
          across ?? 0.1,
          undefined,
          true,
        ),
      ];
    default: {
      const rod = foot.stub ?? member;
      const above = foot.stub ? Math.max(0, (foot.length ?? deep) - deep) : 0;
      return [
        segment(foot.id, rod, along(-deep), along(0), true),
        ...(above > 0 ? [segment(foot.id, rod, along(0), along(above))] : []),
        ...(foot.kind === 'concrete'
          ? [bar(foot.id, bottom, [x, 0, z], across ?? 0.2, undefined, true)]
          : []),
      ];
    }
  }
}
