/** End frames and doors, as the end view, the plan and space see them. */
import type { Door, EndFrames, Shelter } from '@tautline/shelter';
import { depthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { band } from '../scene/outline.ts';
import { box, line, type Point, path, point, polygon, type Shape } from '../scene/shapes.ts';
import type { Anchor, Piece } from './anchors.ts';
import { footShapes } from './ground.ts';

/** Uprights, rail and doors of the front end, seen from outside. */
export function endPieces(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  const { endFrames } = shelter;
  if (endFrames) shapes.push(...endFrameShapes(endFrames, shelter, frame, anchors));
  for (const door of shelter.doors ?? []) {
    shapes.push(...doorFront(door, frame));
    anchors.push({
      part: door.id,
      at: frame.at(door.left + door.width * 0.75, door.height * 0.6),
      toward: point(1, -0.4),
    });
  }
  return { shapes, anchors };
}

function endFrameShapes(
  ends: EndFrames,
  shelter: Shelter,
  frame: Frame,
  anchors: Anchor[],
): readonly Shape[] {
  const depth = depthOf(ends.member);
  const shapes = ends.uprights.flatMap(({ x, height }) => [
    ...footShapes(ends.foot, frame, x, depth, 0),
    polygon(ends.id, 'post', frame.all(band([point(x, 0), point(x, height)], depth))),
  ]);
  if (ends.rail) {
    const { from, to, height, member } = ends.rail;
    shapes.push(
      polygon(ends.id, 'post', frame.all(band([point(from, height), point(to, height)], depthOf(member)))),
    );
  }
  const last = ends.uprights.at(-1);
  if (last) {
    anchors.push(
      { part: ends.id, at: frame.at(last.x, last.height * 0.8), toward: point(1, -0.5) },
      { part: ends.foot.id, at: frame.at(last.x, -ends.foot.driven * 0.7), toward: point(1, 0.3) },
    );
  } else if (ends.rail) {
    anchors.push({ part: ends.id, at: frame.at(shelter.width * 0.7, ends.rail.height), toward: point(0, 1) });
  }
  return shapes;
}

/** A leaf with its ledges and brace; the brace runs up from the hinged foot. */
function doorFront(door: Door, frame: Frame): readonly Shape[] {
  const { left, width, height } = door;
  const right = left + width;
  return [
    box(door.id, 'joint', frame.at(left, 0), frame.at(right, height)),
    path(
      door.id,
      'thing-hatch',
      [0.08, 0.5, 0.92].map((share) => [frame.at(left, height * share), frame.at(right, height * share)]),
    ),
    path(door.id, 'thing-hatch', [[frame.at(left, height * 0.5), frame.at(right, height * 0.92)]]),
  ];
}

/** Doors of a plan: the opening in the end line, and the leaf standing open outward on its swing. */
export function doorsFromAbove(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const door of shelter.doors ?? []) {
    const ends: readonly (readonly [number, -1 | 1])[] = [
      ...(door.end === 'back' ? [] : [[0, -1] as const]),
      ...(door.end === 'front' ? [] : [[shelter.length, 1] as const]),
    ];
    for (const [z, out] of ends) {
      const open = frame.at(z + out * door.width, door.left);
      const hinge = frame.at(z, door.left);
      shapes.push(
        line(door.id, 'joint', hinge, open),
        path(door.id, 'clearance', [swing(door, frame, z, out)]),
        line(door.id, 'joint', hinge, frame.at(z, door.left + door.width)),
      );
      anchors.push({ part: door.id, at: open, toward: point(out, 0.4) });
    }
  }
  return { shapes, anchors };
}

/** A quarter turn of the door's free edge. */
function swing(door: Door, frame: Frame, z: number, out: -1 | 1): readonly Point[] {
  return Array.from({ length: 13 }, (_, n) => {
    const turn = (n / 12) * (Math.PI / 2);
    return frame.at(z + out * door.width * Math.sin(turn), door.left + door.width * Math.cos(turn));
  });
}

/** Uprights of both ends as seen from above. */
export function uprightsFromAbove(shelter: Shelter, frame: Frame): Piece {
  const { endFrames: ends, length } = shelter;
  if (!ends) return { shapes: [], anchors: [] };
  const half = Math.max((depthOf(ends.member) / 2) * frame.scale, 2.5);
  const shapes = [0, length].flatMap((z) =>
    ends.uprights.map(({ x }) => {
      const at = frame.at(z, x);
      return box(ends.id, 'post', point(at.x - half, at.y - half), point(at.x + half, at.y + half));
    }),
  );
  const x = ends.uprights[0]?.x ?? shelter.width / 2;
  return { shapes, anchors: [{ part: ends.id, at: frame.at(length, x), toward: point(1, 0.3) }] };
}
