/**
 * Doors of the house in space: each ajar, so that it is seen to be one. Boards, hinges and handle are of the picture
 * only: the model says how wide and high a door is, and where.
 */
import type { Door, Shelter } from '@tautline/shelter';
import { bar, type Segment } from './scene3d-bars.ts';
import { framing } from './views/ends.ts';
import type { Space } from './views/members.ts';

/** How far the leaf stands open, rad. */
const AJAR = (50 / 180) * Math.PI;
/** Side of the stiles, depth of the ledges, thickness of all, m. */
const STILE = 0.06;
const LEDGE = 0.1;
const THICK = 0.03;
/** Room round the leaf, m. */
const CLEAR = 0.02;

/** The face of a leaf: x, y, z of each corner in turn, m, and three corners a triangle. */
interface Leaf {
  readonly part: string;
  readonly positions: readonly number[];
  readonly triangles: readonly number[];
}

export interface DoorScene {
  readonly segments: readonly Segment[];
  readonly leaves: readonly Leaf[];
}

/** Every door in its frame, in the ends that have it. */
export function doorScene(shelter: Shelter): DoorScene {
  const hung = (shelter.doors ?? []).flatMap((door) => [
    ...(door.end === 'back' ? [] : [inEnd(door, shelter, 0, -1)]),
    ...(door.end === 'front' ? [] : [inEnd(door, shelter, shelter.length, 1)]),
  ]);
  return {
    segments: hung.flatMap(({ segments }) => segments),
    leaves: hung.flatMap(({ leaves }) => leaves),
  };
}

function inEnd(door: Door, { endFrames: ends }: Shelter, z: number, out: -1 | 1): DoorScene {
  const framed = framing(door, ends);
  const [side, head] = [framed.side || STILE / 2, framed.head || LEDGE / 2];
  const hinge = door.left + side + CLEAR;
  const wide = door.width - 2 * (side + CLEAR);
  const [low, top] = [0.04, door.height - head - CLEAR];
  /** A place on the leaf: along it from the hinge, up, and off its outer face. */
  const on = (along: number, y: number, off = 0): Space => [
    hinge + along * Math.cos(AJAR) - off * Math.sin(AJAR),
    y,
    z + out * (STILE + along * Math.sin(AJAR) + off * Math.cos(AJAR)),
  ];
  const [inner, outer] = [STILE / 2, wide - STILE / 2];
  const middle = low + (top - low) * 0.45;
  const leaf = [
    ...[inner, outer].map((along) => bar(door.id, on(along, low), on(along, top), STILE, THICK)),
    ...[low + LEDGE / 2, middle, top - LEDGE / 2].map((y) =>
      bar(door.id, on(0, y), on(wide, y), LEDGE, THICK),
    ),
    // The brace runs up from the hinged foot.
    bar(door.id, on(inner, low + LEDGE), on(outer, middle - LEDGE / 2), LEDGE * 0.7, THICK),
  ];
  const handle = [
    bar(door.id, on(outer, middle + 0.06, 0.06), on(outer, middle + 0.26, 0.06), 0.035),
    ...[0.06, 0.26].map((up) => bar(door.id, on(outer, middle + up), on(outer, middle + up, 0.06), 0.03)),
  ];
  const hinges = [low + LEDGE / 2, top - LEDGE / 2].map((y) =>
    bar(door.id, [hinge - side, y, z], on(0.18, y, 0.02), 0.045),
  );
  const corner = (along: number, y: number): readonly number[] => on(along, y);
  return {
    segments: [...leaf, ...handle, ...hinges, ...frame(door, framed.side > 0, framed.head > 0, z)],
    leaves: [
      {
        part: door.id,
        positions: [...corner(0, low), ...corner(wide, low), ...corner(wide, top), ...corner(0, top)],
        triangles: [0, 1, 2, 0, 2, 3],
      },
    ],
  };
}

/** Jambs and head of the opening, where the end frame has none. */
function frame(door: Door, uprights: boolean, rail: boolean, z: number): readonly Segment[] {
  const [left, right] = [door.left, door.left + door.width];
  return [
    ...(uprights ? [] : [left, right].map((x) => bar(door.id, [x, 0, z], [x, door.height, z], STILE, STILE))),
    ...(rail ? [] : [bar(door.id, [left, door.height, z], [right, door.height, z], STILE, STILE)]),
  ];
}
