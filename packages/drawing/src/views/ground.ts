/** The ground and what is in it, as seen from the end or the side of a house. */
import type { Foot } from '@tautline/shelter';
import { depthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { band, hatch } from '../scene/outline.ts';
import { box, circle, line, type Point, path, point, polygon, type Shape } from '../scene/shapes.ts';

/** Ground line between two positions (m), with short strokes of earth below it. */
export function groundLine(frame: Frame, left: number, right: number): readonly Shape[] {
  const a = frame.at(left, 0);
  const b = frame.at(right, 0);
  const strip = [a, b, point(b.x, b.y + 9), point(a.x, a.y + 9)];
  const ticks = hatch(strip, -50, 9);
  return [path('ground', 'earth-hatch', ticks), line('ground', 'ground', a, b)];
}

/** How deep anything of the foot lies under the ground, m. */
export function depthBelow(foot: Foot | undefined): number {
  return foot ? Math.max(0, foot.driven) : 0;
}

/**
 * One foot, at a position across the view (m). `member` is the depth of what stands on it, `inward` the
 * direction (+1, -1 or 0) in which a lean points.
 */
export function footShapes(
  foot: Foot,
  frame: Frame,
  x: number,
  member: number,
  inward: -1 | 0 | 1,
): readonly Shape[] {
  const { id } = foot;
  const at = (dx: number, y: number): Point => frame.at(x + dx, y);
  const across = foot.across ?? foot.anchor?.diameter ?? Math.max(0.12, member * 2);
  const shaft = Math.max(member, 2 / frame.scale);
  const under = (depth: number): Shape =>
    polygon(id, 'foot', [at(-shaft / 2, 0), at(shaft / 2, 0), at(shaft / 2, -depth), at(-shaft / 2, -depth)]);
  switch (foot.kind) {
    case 'stub':
      return stubShapes(foot, frame, x, inward);
    case 'driven':
    case 'poked':
      return [polygon(id, 'foot', legOutline(foot, frame, x, shaft, inward))];
    case 'hole':
      return [
        polygon(id, 'hole', [
          at(-across / 2, 0),
          at(across / 2, 0),
          at(across / 2, -foot.driven),
          at(-across / 2, -foot.driven),
        ]),
        under(foot.driven),
      ];
    case 'concrete': {
      const outline = [
        at(-across / 2, 0),
        at(across / 2, 0),
        at(across / 2, -foot.driven),
        at(-across / 2, -foot.driven),
      ];
      const shapes: Shape[] = [
        polygon(id, 'concrete', outline),
        path(id, 'bar-hatch', hatch(outline, 45, 6)),
        path(id, 'bar-hatch', hatch(outline, -45, 6)),
      ];
      if (foot.stub) shapes.push(...stubShapes(foot, frame, x, inward));
      else shapes.push(under(Math.max(0, foot.driven - 0.05)));
      return shapes;
    }
    case 'deadman':
      return [
        line(id, 'cable', at(0, 0), at(0, -foot.driven)),
        box(id, 'foot', at(-across / 2, -foot.driven + 0.06), at(across / 2, -foot.driven - 0.06)),
      ];
    case 'screw': {
      const plate = (foot.anchor?.diameter ?? across) / 2;
      const flight = (y: number): readonly Point[] => [at(-plate, y - 0.025), at(plate, y + 0.025)];
      return [
        line(id, 'foot', at(0, 0.05), at(0, -foot.driven)),
        path(id, 'foot', [flight(-foot.driven + 0.05), flight(-foot.driven + 0.17)]),
        circle(id, 'foot', at(0, 0.05), 2.5),
      ];
    }
    case 'ballast':
      return [box(id, 'foot', at(-across / 2, 0), at(across / 2, Math.max(0.12, across / 2)))];
    case 'bearing':
      return [box(id, 'foot', at(-across / 2, 0), at(across / 2, -0.05))];
  }
}

/** How long what leans reaches in the ground, m along it. Flatter than 1 in 5 it is drawn no longer. */
const buriedLength = (foot: Foot): number => foot.driven / Math.max(0.2, Math.sin(foot.lean ?? Math.PI / 2));

/** How far out of the house the bow's foot is at a depth, m. */
export const outAt = (foot: Foot, depth: number): number =>
  foot.lean === undefined || (foot.kind === 'concrete' && !foot.stub) || foot.kind === 'hole'
    ? 0
    : depth / Math.tan(foot.lean);

/** A pointed leg, in line with what it carries down. */
function legOutline(
  foot: Foot,
  frame: Frame,
  x: number,
  shaft: number,
  inward: -1 | 0 | 1,
): readonly Point[] {
  const lean = inward === 0 ? Math.PI / 2 : (foot.lean ?? Math.PI / 2);
  const down = point(-Math.cos(lean) * (inward || 1), -Math.sin(lean));
  const long = inward === 0 ? foot.driven : buriedLength(foot);
  // The point is as long as the leg is thick, on one that goes in deeper than that.
  const shoulder = Math.max(0, long - shaft);
  const at = (along: number, aside: number): Point =>
    frame.at(x + down.x * along - down.y * aside, down.y * along + down.x * aside);
  return [
    at(0, -shaft / 2),
    at(0, shaft / 2),
    at(shoulder, shaft / 2),
    at(long, 0),
    at(shoulder, -shaft / 2),
  ];
}

/** How much of a stub stands over the ground, m along it. */
export const stubAbove = (foot: Foot): number =>
  foot.kind !== 'stub' && !(foot.kind === 'concrete' && foot.stub)
    ? 0
    : Math.max(0, (foot.length ?? foot.driven) - buriedLength(foot));

/** A rod partly in the ground, its upper part inside or beside the member; leans toward the house. */
function stubShapes(foot: Foot, frame: Frame, x: number, inward: -1 | 0 | 1): readonly Shape[] {
  const lean = inward === 0 ? Math.PI / 2 : (foot.lean ?? Math.PI / 2);
  const u = point(Math.cos(lean) * (inward || 1), Math.sin(lean));
  const steep = Math.max(0.2, Math.sin(foot.lean ?? Math.PI / 2));
  // Seen from the side a leaning stub is as high as it reaches, not as long as it is.
  const seen = inward === 0 ? steep : 1;
  const deep = inward === 0 ? foot.driven : buriedLength(foot);
  const above = stubAbove(foot) * seen;
  const thick = Math.max(foot.stub ? depthOf(foot.stub) : 0.012, 2 / frame.scale);
  const rod = (from: number, to: number): readonly Point[] =>
    frame.all(band([point(x + u.x * from, u.y * from), point(x + u.x * to, u.y * to)], thick));
  return [
    polygon(foot.id, 'foot', rod(-deep, 0)),
    // One that leans with a bow stands inside it and bends with it: the frame draws that.
    ...(above > 0 && (inward === 0 || foot.lean === undefined)
      ? [polygon(foot.id, 'hole', rod(0, above))]
      : []),
  ];
}
