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
  };
}

/** Wind on this shelter by the standard its site has chosen, optionally at another gust (m/s). */
export function windOn(shelter: Shelter, gust = shelter.site.gust): WindActions {
  return windActions({ ...shelter.site, gust }, windShape(shelter));
}

/**
 * One wind case on the frame. Pressure acts square to the surface as built (dead pressure: it does not
 * turn with the deflected frame; a follower pressure differs by 5 to 11 % in the critical load).
 */
export function windCaseOnFrame(shelter: Shelter, system: FrameSystem, wind: WindCase): LoadCase {
  const lines: LineLoad[] = [];
  const total = system.roof.reduce((sum, index) => sum + system.elements[index]!.length, 0);
  let run = 0;
  for (const index of system.roof) {
    const element = system.elements[index]!;
    const net = averageOver(wind, 'roof', run / total, (run + element.length) / total);
    run += element.length;
    if (net !== 0) lines.push(push(system, index, net, system.tributary));
  }
  const clad = shelter.covers.filter((cover) => cover.place === 'sides');
  if (clad.length > 0) {
    for (const [walls, surface] of [
      [system.leftWall, 'windward-wall'],
      [system.rightWall, 'leeward-wall'],
    ] as const) {
      const height = Math.max(...walls.map((index) => system.elements[index]!.to), 0);
      for (const index of walls) {
        const element = system.elements[index]!;
        const middle = (element.from + element.to) / 2;
        if (!clad.some((cover) => middle >= cover.from && middle <= cover.upTo)) continue;
        const net = averageOver(wind, surface, element.from / height, element.to / height);
        // Pressing inwards is to the right on the windward (left) wall and to the left on the other.
        const inwards = surface === 'windward-wall' ? 1 : -1;
        if (net !== 0)
          lines.push({
            element: index,
            wx: inwards * net * system.tributary,
            wy: 0,
          });
      }
    }
  }
  return {
    id: wind.id,
    title: wind.title,
    nature: 'wind',
    lines,
    points: [],
    source: wind.source,
  };
}

/** Mean net pressure of the zones over a stretch of the surface, Pa. */
function averageOver(wind: WindCase, surface: string, from: number, to: number): number {
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
