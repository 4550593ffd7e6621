/** End frames and doors, as the end view, the plan and space see them. */
import type { Door, EndFrames, Shelter } from '@tautline/shelter';
import { depthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { band } from '../scene/outline.ts';
import { box, circle, line, type Point, path, point, polygon, type Shape } from '../scene/shapes.ts';
import type { Anchor, Piece } from './anchors.ts';
import { footShapes } from './ground.ts';

/** Doors that the front end has. */
export const frontDoors = ({ doors }: Shelter): readonly Door[] =>
  (doors ?? []).filter(({ end }) => end !== 'back');

/** Uprights, rail and doors of the front end, seen from outside. */
export function endPieces(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  const { endFrames } = shelter;
  if (endFrames) shapes.push(...endFrameShapes(endFrames, shelter, frame, anchors));
  for (const door of frontDoors(shelter)) {
    shapes.push(...doorFront(door, endFrames, frame));
    anchors.push({
      part: door.id,
      at: frame.at(door.left + door.width * 0.6, door.height * 0.7),
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

/**
 * What its frame takes of an opening, m: at each side and at the head. Openings are measured to the centre lines of
 * what frames them.
 */
export function framing(
  { height }: Door,
  ends: EndFrames | undefined,
): { readonly side: number; readonly head: number } {
  return {
    side: ends ? depthOf(ends.member) / 2 : 0,
    head: ends?.rail && Math.abs(ends.rail.height - height) < 1e-3 ? depthOf(ends.rail.member) / 2 : 0,
  };
}

/** A leaf in its opening: ledges, a brace up from the hinged foot to the middle of the free side, hinges, handle. */
function doorFront(door: Door, ends: EndFrames | undefined, frame: Frame): readonly Shape[] {
  const { side, head } = framing(door, ends);
  const clear = 2 / frame.scale;
  const [left, right] = [door.left + side + clear, door.left + door.width - side - clear];
  const top = door.height - head - clear;
  const ledge = Math.min(0.09, top * 0.06);
  const board = (share: number): Shape =>
    box(door.id, 'thing-top', frame.at(left, top * share), frame.at(right, top * share + ledge));
  const hinge = (share: number): Shape =>
    polygon(
      door.id,
      'joint',
      frame.all(
        band(
          [point(left - side * 0.6, top * share + ledge / 2), point(left + 0.16, top * share + ledge / 2)],
          0.03,
        ),
      ),
    );
  return [
    box(door.id, 'door', frame.at(left, clear), frame.at(right, top)),
    polygon(
      door.id,
      'thing-top',
      frame.all(band([point(left + ledge / 2, top * 0.12), point(right - ledge / 2, top * 0.45)], ledge)),
    ),
    board(0.06),
    board(0.46),
    board(0.86),
    hinge(0.06),
    hinge(0.86),
    circle(
      door.id,
      'joint',
      frame.at(right - 0.07, top * 0.46 + ledge / 2),
      Math.max(2.4, 0.025 * frame.scale),
    ),
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
