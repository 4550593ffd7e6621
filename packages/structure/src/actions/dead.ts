import type { Cover, Shelter } from '@tautline/shelter';
import { type FrameSystem, ownWeight } from '../system/frame-system.ts';
import { gravity, weightPerLength } from '../system/member.ts';
import type { LineLoad, LoadCase } from './load-case.ts';

/** Weight of a covering per square metre of its own surface, N/m2. */
export function coverWeight(cover: Cover): number {
  const { skin } = cover;
  const mass = skin.kind === 'film' ? skin.thickness * skin.density : skin.massPerArea;
  return mass * gravity * cover.layers;
}

/** The frame's own weight, and the covering's over the breadth one frame carries. */
export function deadCase(shelter: Shelter, system: FrameSystem): LoadCase {
  const roofSkin = shelter.covers
    .filter((cover) => cover.place === 'roof')
    .reduce((sum, cover) => sum + coverWeight(cover), 0);
  const sideCovers = shelter.covers.filter((cover) => cover.place === 'sides');
  const purlinWeight = shelter.purlins.reduce(
    (sum, purlin) =>
      sum +
      (purlin.member.kind === 'cable'
        ? purlin.member.massPerLength * gravity
        : weightPerLength(purlin.member)) *
        purlin.lines.length,
    0,
  );
  const roofLength = system.roof.reduce((sum, index) => sum + system.elements[index]!.length, 0);
  const lines: LineLoad[] = system.elements.map((element, index) => {
    let weight = ownWeight(element);
    if (element.role === 'roof')
      weight += roofSkin * system.tributary + (purlinWeight * system.tributary) / roofLength;
    else if (element.role !== 'tie') {
      for (const cover of sideCovers) {
        const middle = (element.from + element.to) / 2;
        if (middle >= cover.from && middle <= cover.upTo) weight += coverWeight(cover) * system.tributary;
      }
    }
    return { element: index, wx: 0, wy: -weight };
  });
  return {
    id: 'dead',
    title: 'own weight',
    nature: 'dead',
    lines,
    points: [],
    source: 'derived',
  };
}

/** Crop hung from the frame: an even load on plan, carried by the roof line. */
export function cropCase(shelter: Shelter, system: FrameSystem): LoadCase | undefined {
  const hung = shelter.crops.reduce((sum, crop) => sum + crop.hung, 0);
  if (hung <= 0) return undefined;
  return {
    id: 'crop',
    title: 'hung crop',
    nature: 'crop',
    lines: onPlan(system, hung),
    points: [],
    source: 'derived',
  };
}

/** An even load per square metre of plan, brought down on the roof's elements. N/m2, positive down. */
export function onPlan(
  system: FrameSystem,
  pressure: number,
  share: (x: number) => number = () => 1,
): LineLoad[] {
  return system.roof.map((index) => {
    const element = system.elements[index]!;
    const middle = middleX(system, index);
    return {
      element: index,
      wx: 0,
      wy: (-pressure * share(middle) * system.tributary * Math.abs(element.dx)) / element.length,
    };
  });
}

export function middleX(system: FrameSystem, index: number): number {
  const element = system.model.elements[index]!;
  return (system.nodes[element.i]!.x + system.nodes[element.j]!.x) / 2;
}
