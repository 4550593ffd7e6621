import { type WindActions, type WindCase, type WindShape, windActions } from '@tautline/loads';
import type { MeshItem, Shelter } from '@tautline/shelter';
import type { FrameSystem } from '../system/frame-system.ts';
import type { LineLoad, LoadCase } from './load-case.ts';

/** The shelter's outer shape in the words of the wind standards. */
export function windShape(shelter: Shelter): WindShape {
  const { roof, opening } = shelter;
  const form = roof.type === 'rafters' ? roof.form : 'arch';
  const mesh = shelter.covers.find((cover) => cover.place === 'sides' && cover.skin.kind === 'mesh');
  const porosity = mesh === undefined ? undefined : (mesh.skin as MeshItem).porosity;
  return {
    form,
    span: shelter.width,
    length: shelter.length,
    rise: roof.rise,
    springing: roof.springing,
    sides: opening.sides,
    ends: opening.ends,
    ...(porosity === undefined ? {} : { sidePorosity: porosity }),
    blockage: blockageOf(shelter),
  };
}

/**
 * Share of the section under the eaves that crop, benches and tanks fill when the crop is grown: what stands in the way
 * of a wind through under an open roof.
 */
function blockageOf({ roof, width, crops, things }: Shelter): number {
  const section = width * roof.springing;
  if (!(section > 0)) return 0;
  const up = (height: number): number => Math.min(height, roof.springing);
  const grown = crops.reduce(
    (sum, { height, fromSide }) => Math.max(sum, up(height) * Math.max(0, width - 2 * fromSide)),
    0,
  );
  const standing = things.reduce(
    (sum, thing) => sum + up(thing.height) * thing.width * thing.lefts.length,
    0,
  );
  return Math.min(1, Math.max(grown, standing) / section);
}

/** Wind on this shelter by the standard its site has chosen, optionally at another gust (m/s). */
export function windOn(shelter: Shelter, gust = shelter.site.gust): WindActions {
  return windActions({ ...shelter.site, gust }, windShape(shelter));
}

/**
 * A single slope is not the same from both sides: a case that names no side is blown from each of the two.
 * All other roofs are mirror images, and wind from the left stands for both.
 */
export function bothWays(shelter: Shelter, cases: readonly WindCase[]): readonly WindCase[] {
  if (shelter.roof.type !== 'rafters' || shelter.roof.form !== 'single-slope') return cases;
  return cases.flatMap((wind): readonly WindCase[] =>
    wind.direction === 'along' || wind.from !== undefined
      ? [wind]
      : [
          { ...wind, id: `${wind.id}-low`, title: `${wind.title}, from the low side`, from: 'low side' },
          { ...wind, id: `${wind.id}-high`, title: `${wind.title}, from the high side`, from: 'high side' },
        ],
  );
}

/** Whether the wind of a case meets the right-hand foot first: the high side of a single slope may be there. */
function fromTheRight(shelter: Shelter, wind: WindCase): boolean {
  if (wind.from === undefined || shelter.roof.type !== 'rafters') return false;
  const { line } = shelter.roof;
  const highOnTheRight = line[line.length - 1]!.y >= line[0]!.y;
  return (wind.from === 'high side') === highOnTheRight;
}

/**
 * One wind case on the frame. Zones run from the windward foot, so a case from the right is laid on mirrored.
 * Pressure acts square to the surface as built (dead pressure: it does not
 * turn with the deflected frame; a follower pressure differs by 5 to 11 % in the critical load).
 */
export function windCaseOnFrame(shelter: Shelter, system: FrameSystem, wind: WindCase): LoadCase {
  const lines: LineLoad[] = [];
  const mirrored = fromTheRight(shelter, wind);
  const total = system.roof.reduce((sum, index) => sum + system.elements[index]!.length, 0);
  let run = 0;
  for (const index of system.roof) {
    const element = system.elements[index]!;
    const from = run / total;
    run += element.length;
    const to = run / total;
    const net = mirrored ? averageOver(wind, 'roof', 1 - to, 1 - from) : averageOver(wind, 'roof', from, to);
    if (net !== 0) lines.push(push(system, index, net, system.tributary));
  }
  const clad = shelter.covers.filter((cover) => cover.place === 'sides');
  if (clad.length > 0) {
    for (const [walls, surface, inwards] of [
      // Pressing inwards is to the right on the left wall and to the left on the other.
      [system.leftWall, mirrored ? 'leeward-wall' : 'windward-wall', 1],
      [system.rightWall, mirrored ? 'windward-wall' : 'leeward-wall', -1],
    ] as const) {
      const height = Math.max(...walls.map((index) => system.elements[index]!.to), 0);
      for (const index of walls) {
        const element = system.elements[index]!;
        const middle = (element.from + element.to) / 2;
        if (!clad.some((cover) => middle >= cover.from && middle <= cover.upTo)) continue;
        const net = averageOver(wind, surface, element.from / height, element.to / height);
        if (net !== 0)
          lines.push({
            element: index,
            wx: inwards * net * system.tributary,
            wy: 0,
          });
      }
    }
  }
  return blow(wind, lines);
}

/** A wind as a load case. */
export function blow(
  { id, title, source }: Pick<WindCase, 'id' | 'title' | 'source'>,
  lines: readonly LineLoad[],
): LoadCase {
  return { id, title, nature: 'wind', lines, points: [], source };
}

/** Mean net pressure of the zones over a stretch of the surface, Pa. */
export function averageOver(wind: WindCase, surface: string, from: number, to: number): number {
  let sum = 0;
  for (const zone of wind.zones) {
    if (zone.surface !== surface) continue;
    const overlap = Math.min(to, zone.to) - Math.max(from, zone.from);
    if (overlap > 0) sum += zone.net * overlap;
  }
  return sum / (to - from);
}

/** Pressure on a roof element that runs left to right: positive presses inwards (to its right side). */
function push(system: FrameSystem, index: number, net: number, breadth: number): LineLoad {
  const { dx, dy } = system.elements[index]!;
  const chord = Math.hypot(dx, dy);
  return {
    element: index,
    wx: (net * breadth * dy) / chord,
    wy: (-net * breadth * dx) / chord,
  };
}
