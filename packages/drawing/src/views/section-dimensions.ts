/** The dimensions of a section: across below, heights at the sides, headroom at the outer row. */
import { format, type System } from '@tautline/quantity';
import { clearHeightAt, type Shelter } from '@tautline/shelter';
import { boundsOf } from '../scene/bounds.ts';
import { DIMENSION_SIZE, type Measured, stackDimensions } from '../scene/dimension.ts';
import type { Frame } from '../scene/frame.ts';
import { textWidth } from '../scene/lettering.ts';
import { heightAt, offsetLine } from '../scene/outline.ts';
import type { DimensionShape, Shape } from '../scene/shapes.ts';
import { slidText } from '../scene/slid-text.ts';
import { surroundDimensions } from '../scene/surround.ts';
import { halfRoof } from '../skins.ts';

/** Places where headroom is worth knowing: the outer row of each crop, and what a requirement asks. */
export function headroomPlaces(shelter: Shelter): readonly { readonly part: string; readonly at: number }[] {
  const places = [
    ...shelter.requirements
      .filter((need) => need.subject === 'headroom' && need.at !== undefined)
      .map((need) => ({ part: need.id, at: need.at ?? 0 })),
    ...shelter.crops.map((crop) => ({ part: crop.id, at: crop.fromSide })),
  ];
  return places.filter(({ at }, i) => places.findIndex((other) => Math.abs(other.at - at) < 1e-6) === i);
}

/** Height of the top of the roof's skin as it is drawn, at a place across, m. */
function skinOver(shelter: Shelter, frame: Frame, x: number): number {
  const skin = offsetLine(shelter.roof.line, halfRoof(shelter) + 10 / frame.scale);
  return heightAt(skin, x) ?? 0;
}

export function sectionDimensions(
  shelter: Shelter,
  frame: Frame,
  drawn: readonly Shape[],
  system: System,
): readonly Shape[] {
  const { roof } = shelter;
  const m = (si: number): string => format(si, 'length', system);
  const measured = (
    part: string,
    name: string,
    value: number,
    from: readonly [number, number],
    to: readonly [number, number],
  ): Measured => ({
    part,
    name,
    value,
    text: `${name} ${m(value)}`,
    from: frame.at(...from),
    to: frame.at(...to),
  });
  const xs = roof.line.map((p) => p.x);
  const ys = roof.line.map((p) => p.y);
  const [left, right, crown] = [Math.min(...xs), Math.max(...xs), Math.max(...ys)];
  const crownX = roof.line[ys.indexOf(crown)]?.x ?? (left + right) / 2;
  const below: Measured[] = [measured(shelter.id, 'width', shelter.width, [0, 0], [shelter.width, 0])];
  const first = roof.line[0];
  const last = roof.line[roof.line.length - 1];
  if (first && last && Math.abs(roof.span - shelter.width) > 1e-3)
    below.push(
      measured(
        roof.id,
        'span',
        roof.span,
        [(first.x + last.x - roof.span) / 2, 0],
        [(first.x + last.x + roof.span) / 2, 0],
      ),
    );
  const posts = shelter.sidePosts;
  const [firstLine = 0, nextLine = 0] = posts?.lines ?? [];
  if (posts && posts.lines.length > 2)
    below.push(measured(posts.id, 'post lines', nextLine - firstLine, [firstLine, 0], [nextLine, 0]));
  for (const { id, role, plane, from, to } of shelter.braces)
    if (role === 'guy' && plane === 'across' && Math.abs(to.x - from.x) > 1e-3)
      below.push(
        measured(
          id,
          'guy out',
          Math.abs(to.x - from.x),
          [Math.min(from.x, to.x), 0],
          [Math.max(from.x, to.x), 0],
        ),
      );
  const rows = [...new Set(shelter.crops.map((crop) => crop.fromSide))];
  for (const row of rows)
    if (row > 0) {
      const crop = shelter.crops.find((one) => one.fromSide === row);
      below.push(measured(crop?.id ?? shelter.id, 'first row', row, [0, 0], [row, 0]));
    }

  for (const thing of shelter.things) {
    const from = thing.lefts[0] ?? 0;
    if (from > 1e-3) below.push(measured(thing.id, 'from side', from, [0, 0], [from, 0]));
    below.push(measured(thing.id, thing.name, thing.width, [from, 0], [from + thing.width, 0]));
  }

  const leftSide: Measured[] = [];
  const leftX = Math.min(0, left);
  for (const thing of shelter.things) {
    if (thing.height <= 0) continue;
    const from = thing.lefts[0] ?? 0;
    leftSide.push(measured(thing.id, thing.name, thing.height, [from, 0], [from, thing.height]));
    if (thing.clearance > 0)
      leftSide.push(
        measured(
          thing.id,
          'free above',
          thing.clearance,
          [from, thing.height],
          [from, thing.height + thing.clearance],
        ),
      );
  }
  if (roof.springing > 0.01)
    leftSide.push(measured(roof.id, 'springing', roof.springing, [leftX, 0], [leftX, roof.springing]));
  if (roof.springing > 0.01 || roof.type !== 'bows')
    leftSide.push(
      measured(roof.id, 'rise', roof.rise, [leftX, roof.springing], [crownX, roof.springing + roof.rise]),
    );
  if (roof.type === 'bows' && roof.leg > 0)
    leftSide.push(
      measured(roof.id, 'leg', roof.leg, [leftX, roof.springing], [leftX, roof.springing + roof.leg]),
    );
  for (const foot of [roof.type === 'bows' ? roof.foot : undefined, shelter.sidePosts?.foot])
    if (foot && foot.driven > 0)
      leftSide.push(measured(foot.id, 'deep', foot.driven, [leftX, 0], [leftX, -foot.driven]));
  for (const { foot, plane, from, to } of shelter.braces) {
    const x = Math.min(from.x, to.x);
    if (foot && plane === 'across' && foot.driven > 0)
      leftSide.push(measured(foot.id, 'anchor', foot.driven, [x, 0], [x, -foot.driven]));
  }

  const rightSide: Measured[] = [];
  const rightX = Math.max(shelter.width, right);
  if (shelter.sidePosts)
    rightSide.push(
      measured(
        shelter.sidePosts.id,
        'post',
        shelter.sidePosts.height,
        [rightX, 0],
        [rightX, shelter.sidePosts.height],
      ),
    );
  const centre = shelter.ridge?.posts;
  if (centre) {
    const x = centre.lines[0] ?? shelter.width / 2;
    rightSide.push(measured(centre.id, 'ridge post', centre.height, [rightX, 0], [x, centre.height]));
    if (centre.foot.driven > 0)
      rightSide.push(
        measured(centre.foot.id, 'deep', centre.foot.driven, [rightX, 0], [rightX, -centre.foot.driven]),
      );
  }
  for (const cover of shelter.covers)
    if (cover.place === 'sides' && cover.upTo > 0)
      rightSide.push(
        measured(cover.id, 'side cover', cover.upTo - cover.from, [rightX, cover.from], [rightX, cover.upTo]),
      );
  rightSide.push(measured(roof.id, 'height', crown, [rightX, 0], [crownX, crown]));
  const shapes: Shape[] = [
    ...surroundDimensions(boundsOf(drawn), { below, left: leftSide, right: rightSide }),
  ];
  const heads = headroomPlaces(shelter).flatMap(({ part, at }) => {
    const clear = clearHeightAt(shelter, at);
    return clear === undefined
      ? []
      : [headroom(shelter, frame, at, clear, measured(part, 'headroom', clear, [at, 0], [at, clear]))];
  });
  // One after the other, each clear of the lines of all.
  const placed: Shape[] = [...shapes];
  heads.forEach((head, i) => {
    placed.push(slidText(head, [...drawn, ...placed, ...heads.slice(i + 1)]));
  });
  return placed;
}

/** Inside the house the dimension stands where it is measured, without witness lines. */
function headroom(shelter: Shelter, frame: Frame, at: number, clear: number, item: Measured): DimensionShape {
  const [head] = stackDimensions('right', 0, [item]) as readonly [DimensionShape];
  const { x } = frame.at(at, 0);
  const [from, to] = [
    { x, y: head.from.y },
    { x, y: head.to.y },
  ];
  // A text too long for it, or for the height where the letters stand, goes above the roof: below the
  // ground others stand.
  const beside = clearHeightAt(shelter, at - 16 / frame.scale) ?? 0;
  const fits = head.textAt === 'middle' && beside * frame.scale > textWidth(head.text, DIMENSION_SIZE) + 16;
  const textGap = (skinOver(shelter, frame, at) - clear) * frame.scale;
  return { ...head, from, to, witness: [from, to], textAt: fits ? 'middle' : 'before', textGap };
}
