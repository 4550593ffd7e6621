/** Local pressure on small areas of side and end walls: film, mesh, sheets and what holds them. */
import { given, type Step } from '../step.ts';
import { asceEdge } from './asce-end.ts';
import { INSIDE } from './asce-net.ts';
import { insideOf as enInside } from './en-net.ts';
import { type Outline, outlineOf } from './shape.ts';
import { asceVelocityPressure, enVelocityPressure } from './velocity-pressure.ts';
import type { CladdingSuction, CladdingZone, WindInput, WindShape } from './wind-case.ts';

/**
 * GC_p of ASCE 7 figure 30.3-1 on 0.93 m² or less (zones 4 and 5), and c_pe,1 of EN 1991-1-4 table 7.1 (zones B and
 * A): the same numbers in both, with the pressure that meets either zone (EN: zone D).
 */
const WALL = { middle: -1.1, edge: -1.4, pressure: 1 } as const;

/**
 * Local net pressures on walls, Pa, on areas of a square metre or less; the same level as `windActions`. A wall of
 * mesh takes the share of a pierced wall. Behind the ends of a house with open sides the inside pressure of one
 * with a dominant opening is used, for the wind that passes through sucks at their backs. Throws RangeError on a shape without size.
 */
export function wallCladding(input: WindInput, shape: WindShape, which: 'sides' | 'ends'): CladdingSuction {
  const outline = outlineOf(shape);
  const en = input.basis === 'eurocode';
  const q = en
    ? enVelocityPressure(input, outline.ridgeHeight)
    : asceVelocityPressure(input, outline.meanHeight);
  const source = en ? 'en1991-1-4:7.2.2' : 'asce7-16:30.3-1';
  const inside = insideOf(outline, en);
  const share = which === 'sides' ? outline.wallShare : 1;
  const edgeWidth = en ? Math.min(shape.length, 2 * outline.ridgeHeight) / 5 : asceEdge(shape, outline);
  const steps: Step[] = [...q.steps];
  const zones = (['middle', 'edge'] as const).map((place): CladdingZone => {
    const suction = share * q.pressure * (WALL[place] - inside.blown);
    steps.push({
      symbol: 'p_wall',
      meaning: `local suction, ${place} of a wall`,
      formula: 'p = φ q (c - c_i)',
      inputs: [
        given('φ', 'share that a wall of mesh takes, 1 for film', share, 'ratio'),
        given('q', 'velocity pressure', q.pressure, 'pressure'),
        given('c', 'local coefficient', WALL[place], 'ratio'),
        given('c_i', 'inside coefficient', inside.blown, 'ratio'),
      ],
      value: suction,
      kind: 'pressure',
      source,
    });
    return { place, suction, pressure: share * q.pressure * (WALL.pressure + inside.sucked) };
  });
  const notCovered =
    outline.enclosure === 'open' && which === 'ends'
      ? [
          'End walls of a house with open sides: the inside pressure of a house with one dominant opening is used.',
        ]
      : [];
  return { zones, edgeWidth, steps, source, notCovered };
}

/** Inside coefficients, both as sizes: blown up, and sucked in; open sides count as a dominant opening. */
function insideOf(outline: Outline, en: boolean): { readonly blown: number; readonly sucked: number } {
  const enclosure = outline.enclosure === 'open' ? 'partly enclosed' : outline.enclosure;
  const [blown, sucked] = en
    ? enInside({ ...outline, enclosure }).across
    : [INSIDE[enclosure], -INSIDE[enclosure]];
  return { blown, sucked: -sucked };
}
