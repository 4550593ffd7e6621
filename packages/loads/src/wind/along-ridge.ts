/** Wind along the ridge: what is the same by either standard. */
import { given, type Step } from '../step.ts';
import type { Outline } from './shape.ts';
import type { WindCase, WindShape, WindZone } from './wind-case.ts';

export interface AlongRidge {
  /** Net pressure on the roof at the windward end, and on the side walls where there are any, Pa. */
  readonly roof: number;
  readonly side: number;
  readonly steps: readonly Step[];
  /** Force along the house on one end. */
  readonly force: Step;
  readonly source: string;
}

/** The case: the greatest lift of the end bows, and the push on an end. */
export function alongCase(outline: Outline, { roof, side, steps, force, source }: AlongRidge): WindCase {
  const zones: WindZone[] = [{ surface: 'roof', from: 0, to: 1, net: roof }];
  if (outline.walls && outline.enclosure !== 'open') {
    const net = outline.wallShare * side;
    zones.push({ surface: 'windward-wall', from: 0, to: 1, net });
    zones.push({ surface: 'leeward-wall', from: 0, to: 1, net });
  }
  return {
    id: 'along-uplift',
    title: 'Wind along the house, lift at the windward end',
    direction: 'along',
    zones,
    alongForce: force.value,
    steps: [...steps, force],
    source,
  };
}

/** Friction of a ribbed surface, EN 1991-1-4 table 7.10; ASCE 7 has none of its own. */
const RIBBED = 0.04;

/** Drag of the wind along the skin where the ends are open: an open roof is swept on both faces. */
export function skinDrag(q: number, shape: WindShape, outline: Outline): Step {
  const surface = outline.developed * shape.length * (outline.enclosure === 'open' ? 2 : 1);
  return {
    symbol: 'F_fr',
    meaning: 'drag of the wind along the skin (open ends)',
    formula: 'F = c_fr q A',
    inputs: [
      given('c_fr', 'friction of a ribbed skin (EN 1991-1-4 table 7.10)', RIBBED, 'ratio'),
      given('q', 'velocity pressure', q, 'pressure'),
      given('A', 'skin swept', surface, 'area'),
    ],
    value: RIBBED * q * surface,
    kind: 'force',
    source: 'en1991-1-4:7.5',
  };
}
