/** Loads on the whole house: those of one frame, each frame by the breadth it carries, and what acts along the house. */
import type { EndWindCase } from '@tautline/loads';
import type { SpaceLoads } from '@tautline/mechanics';
import type { Shelter } from '@tautline/shelter';
import { casesOn } from '../actions/cases.ts';
import { endWindsAbove } from '../actions/end-frames.ts';
import type { CombinedLoad, LineLoad, LoadCase } from '../actions/load-case.ts';
import { blow, bothWays, windCaseOnFrame, windOn } from '../actions/wind.ts';
import { combinedLoads } from '../response/combinations.ts';
import { ownWeight } from '../system/frame-system.ts';
import type { Reach } from '../system/reaches.ts';
import { endWallShares } from './end-walls.ts';
import type { HouseSystem } from './house.ts';

/**
 * Combinations on the whole house. Lines stand on the slice's elements as in the plane tier; one more line, just past
 * the slice's last element, rides along: wx is the push along the house (N), wy the share of own weight (-1 for all).
 */
export interface HouseLoads {
  readonly loads: readonly CombinedLoad[];
  readonly cases: readonly LoadCase[];
  /** Whether the push along stands on the windward end, or drags on the whole skin. */
  readonly push: 'end' | 'skin';
  readonly notCovered: readonly string[];
}

export function houseLoads(shelter: Shelter, house: HouseSystem): HouseLoads {
  const rider = house.slice.elements.length;
  // Purlins carry their own weight here: they have elements of their own.
  const { all, notCovered } = casesOn({ ...shelter, purlins: [] }, house.slice);
  const { cases: winds } = windOn(shelter);
  const pushes = new Map(winds.map((wind) => [wind.id, wind.alongForce ?? 0]));
  const ends = endWindsAbove(shelter, house.slice, bothWays(shelter, winds));
  const usual = Math.max(...pushes.values());
  for (const wind of ends.winds) pushes.set(wind.id, wind.direction === 'along' ? usual : 0);
  const onEnds = ends.winds.map((wind) => endCaseOnHouse(shelter, house, wind));
  const cases = [...all, ...onEnds].map((one): LoadCase => {
    const push = pushes.get(one.id) ?? 0;
    const line: LineLoad = { element: rider, wx: push, wy: one.nature === 'dead' ? -1 : 0 };
    return line.wx === 0 && line.wy === 0 ? one : { ...one, lines: [...one.lines, line] };
  });
  return {
    loads: combinedLoads(shelter, cases),
    cases,
    push: shelter.opening.ends === 'clad' ? 'end' : 'skin',
    notCovered: [
      ...notCovered,
      ...ends.notCovered,
      'Wind from the back of the house is taken as the mirror image of wind from its front.',
      ...(shelter.opening.ends === 'clad'
        ? [
            house.uprights.length > 0
              ? 'The pull on the lee end: the whole push on both ends is put on the windward one.'
              : 'The pull on the lee end: the whole push on the windward end is put into its frame instead, though part of it goes straight into the ground.',
          ]
        : []),
    ],
  };
}

/** Wind of the end zones, strip by strip: at both ends when it blows across, at the front when it blows along. */
function endCaseOnHouse(shelter: Shelter, { slice }: HouseSystem, wind: EndWindCase): LoadCase {
  const { strips, ...rest } = wind;
  const { length } = shelter;
  const most = wind.direction === 'across' ? length / 2 : length;
  const lines = strips.flatMap(({ from, to, zones }): LineLoad[] => {
    const front = { from: Math.min(from, most), to: Math.min(to, most) };
    if (front.to <= front.from) return [];
    const stretches =
      wind.direction === 'across' ? [front, { from: length - front.to, to: length - front.from }] : [front];
    return windCaseOnFrame(shelter, slice, { ...rest, zones }).lines.flatMap((line) =>
      stretches.map((along) => ({ ...line, along })),
    );
  });
  return { ...blow(wind, lines), steps: wind.steps };
}

/** Length of a stretch on which a line acts, m. */
function shared({ from, to }: Reach, { along }: LineLoad): number {
  if (along === undefined) return to - from;
  return Math.max(0, Math.min(to, along.to) - Math.max(from, along.from));
}

/** A combination as it stands on the nodes and elements of the house. */
export function layOnHouse(
  house: HouseSystem,
  load: CombinedLoad,
  push: HouseLoads['push'],
): Required<Pick<SpaceLoads, 'line'>> {
  const { slice } = house;
  const rider = load.lines.find((line) => line.element === slice.elements.length);
  const weight = -(rider?.wy ?? 0);
  const along = rider?.wx ?? 0;
  const spacing = slice.tributary;
  const sum = new Map<number, { wx: number; wy: number; wz: number }>();
  const put = (element: number, wx: number, wy: number, wz: number): void => {
    const at = sum.get(element) ?? { wx: 0, wy: 0, wz: 0 };
    sum.set(element, { wx: at.wx + wx, wy: at.wy + wy, wz: at.wz + wz });
  };
  const own = (k: number): number => ownWeight(slice.elements[k]!);
  for (const line of load.lines) {
    if (line.element >= slice.elements.length) continue;
    // A frame's own weight is all its own; it comes with the line that acts on the whole house.
    const weighs = line.along === undefined ? weight * own(line.element) : 0;
    for (const frame of house.frames) {
      const element = frame.elements[line.element]!;
      if (element < 0) continue;
      const share = shared(frame.reach, line) / spacing;
      put(element, line.wx * share, (line.wy + weighs) * share - weighs, 0);
    }
  }
  for (const post of house.posts) {
    const walls = post.side === 'left' ? slice.leftWall : slice.rightWall;
    for (const element of post.elements) {
      const { from, to } = house.elements[element]!;
      const [wx, wy] = onWall(house, load, walls, { from, to }, post.reach, weight);
      put(element, wx / spacing, wy / spacing, 0);
    }
  }
  for (const [element, perLength] of house.weights) put(element, 0, -weight * perLength, 0);
  if (along !== 0) for (const [element, wz] of pushAlong(house, along, push)) put(element, 0, 0, wz);
  return { line: [...sum].map(([element, w]) => ({ element, ...w })) };
}

/** Load of a post's reach of wall over a stretch of its height, without the post's own weight, N/m times the reach. */
function onWall(
  { slice }: HouseSystem,
  load: CombinedLoad,
  walls: readonly number[],
  height: Reach,
  reach: Reach,
  weight: number,
): readonly [number, number] {
  let [wx, wy] = [0, 0];
  for (const line of load.lines) {
    if (!walls.includes(line.element)) continue;
    const element = slice.elements[line.element]!;
    const over = Math.max(0, Math.min(height.to, element.to) - Math.max(height.from, element.from));
    const share = (shared(reach, line) * over) / (height.to - height.from);
    wx += share * line.wx;
    wy += share * (line.wy + (line.along === undefined ? weight * ownWeight(element) : 0));
  }
  return [wx, wy];
}

/**
 * A push along the house, N in all: on the windward end, or dragging evenly on the skin of all frames. Where uprights
 * stand in the end, each takes half the way to its neighbours; else the frame takes all, each piece the strip of end
 * wall below it. N/m by element.
 */
function pushAlong(house: HouseSystem, force: number, how: HouseLoads['push']): Map<number, number> {
  const { slice } = house;
  const walled = how === 'end' && house.uprights.length > 0;
  const shares = walled ? endWallShares(house) : new Map<number, number>();
  const frames = walled ? [] : how === 'end' ? house.frames.slice(0, 1) : house.frames;
  for (const frame of frames)
    for (const k of slice.roof) {
      const plane = slice.model.elements[k]!;
      const middle = (slice.nodes[plane.i]!.y + slice.nodes[plane.j]!.y) / 2;
      const { dx, length } = slice.elements[k]!;
      shares.set(
        frame.elements[k]!,
        how === 'end' ? Math.abs(dx) * middle : length * (frame.reach.to - frame.reach.from),
      );
    }
  const all = [...shares.values()].reduce((total, share) => total + share, 0);
  return new Map(
    [...shares].map(([element, share]) => [element, (force * share) / all / house.elements[element]!.length]),
  );
}
