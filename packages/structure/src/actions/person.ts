import { personLoad } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import type { FrameSystem } from '../system/frame-system.ts';
import type { LoadCase } from './load-case.ts';

/** Places on the roof line where somebody may lean a ladder or hang on, as shares of its length. */
const places = [0.25, 0.5] as const;

/**
 * Somebody at work on the frame (upright, at a quarter of the roof line and at its middle) and somebody
 * leaning on its left side at the height of the standard. One frame takes it alone.
 */
export function personCases(shelter: Shelter, system: FrameSystem): readonly LoadCase[] {
  const load = personLoad(shelter.site.basis);
  const ends = system.roof.map((index) => system.model.elements[index]!.j);
  const total = system.roof.reduce((sum, index) => sum + system.elements[index]!.length, 0);
  const onRoof = places.map((share): LoadCase => {
    let run = 0;
    const place = system.roof.findIndex((index) => {
      run += system.elements[index]!.length;
      return run >= share * total - 1e-9;
    });
    return {
      id: `person-${Math.round(share * 100)}`,
      title: `a person at work ${share === 0.5 ? 'on the middle of the roof' : 'on the side of the roof'}`,
      nature: 'person',
      lines: [],
      points: [{ node: ends[place]!, fx: 0, fy: -load.onRoof }],
      source: load.source,
    };
  });
  const node = leaningNode(system, load.pushHeight);
  if (node === undefined) return onRoof;
  return [
    ...onRoof,
    {
      id: 'person-leaning',
      title: 'a person leaning on the side',
      nature: 'person',
      lines: [],
      points: [{ node, fx: load.push, fy: 0 }],
      source: load.source,
    },
  ];
}

/** The node of the left half nearest to the height of the push, on a wall or a bow's flank. */
function leaningNode(system: FrameSystem, height: number): number | undefined {
  const middle =
    (Math.min(...system.nodes.map((node) => node.x)) + Math.max(...system.nodes.map((node) => node.x))) / 2;
  let best: number | undefined;
  system.nodes.forEach((node, index) => {
    if (node.x > middle || node.y <= 0) return;
    if (best === undefined || Math.abs(node.y - height) < Math.abs(system.nodes[best]!.y - height))
      best = index;
  });
  return best;
}
