/** Net local coefficients of open roofs on areas of a² or less: ASCE 7-16 figures 30.7-1 (single slope) and 30.7-2 (pitched). */
import { along, type Curve } from '../interpolate.ts';
import type { Flow } from './shape.ts';
import type { CladdingZone } from './wind-case.ts';

export type Place = CladdingZone['place'];

interface Local {
  readonly suction: Curve;
  readonly pressure: Curve;
}

/** [degrees, zone 1, zone 2, zone 3] of a figure, suction and pressure. */
type Row = readonly [number, number, number, number];

const curves = (suction: readonly Row[], pressure: readonly Row[]): Record<Place, Local> => {
  const of = (i: 1 | 2 | 3): Local => ({
    suction: suction.map((row) => [row[0], row[i]] as const),
    pressure: pressure.map((row) => [row[0], row[i]] as const),
  });
  return { middle: of(1), edge: of(2), corner: of(3) };
};

/** Figure 30.7-2. Clear flow, and obstructed flow at 15°: a public restatement (BNBC 2020, 6.2.19); the rest from memory. */
const PITCHED: Record<Flow, Record<Place, Local>> = {
  clear: curves(
    [
      [0, -1.1, -1.7, -3.3],
      [7.5, -1.2, -1.8, -3.6],
      [15, -1.1, -1.7, -2.2],
      [30, -0.9, -1.4, -1.8],
      [45, -0.8, -1.2, -1.6],
    ],
    [
      [0, 1.2, 1.8, 2.4],
      [7.5, 1.1, 1.7, 2.2],
      [15, 1.1, 1.7, 2.2],
      [30, 1.3, 2, 2.6],
      [45, 1.1, 1.7, 2.2],
    ],
  ),
  obstructed: curves(
    [
      [0, -1.2, -1.8, -3.6],
      [7.5, -1.7, -2.6, -5.1],
      [15, -1.6, -2.4, -3.2],
      [30, -1.2, -1.8, -2.4],
      [45, -1.2, -1.8, -2.4],
    ],
    [
      [0, 0.5, 0.8, 1],
      [45, 0.5, 0.8, 1],
    ],
  ),
};

/**
 * Figure 30.7-1. Suction in clear flow at 7.5°, 15° and 30°: a public restatement (BNBC 2020, 6.2.19a); the rest from
 * memory.
 */
const SINGLE_SLOPE: Record<Flow, Record<Place, Local>> = {
  clear: curves(
    [
      [0, -1.1, -1.7, -3.3],
      [7.5, -1.4, -2.1, -4.2],
      [15, -1.9, -2.9, -3.8],
      [30, -2.5, -3.8, -5],
      [45, -2.3, -3.5, -4.6],
    ],
    [
      [0, 1.2, 1.8, 2.4],
      [7.5, 1.6, 2.4, 3.2],
      [15, 1.8, 2.7, 3.6],
      [30, 2.6, 3.9, 5.2],
      [45, 2.6, 3.9, 5.2],
    ],
  ),
  obstructed: curves(
    [
      [0, -1.2, -1.8, -3.6],
      [7.5, -1.7, -2.6, -5.1],
      [15, -2.1, -3.2, -4.2],
      [30, -2.3, -3.5, -4.6],
      [45, -1.9, -2.9, -3.8],
    ],
    [
      [0, 0.5, 0.8, 1],
      [7.5, 0.8, 1.2, 1.6],
      [15, 1.2, 1.8, 2.4],
      [30, 1.6, 2.4, 3.2],
      [45, 2.1, 3.2, 4.2],
    ],
  ),
};

/** C_N of an open roof at a place, the worst of the ways the wind may pass under it. */
export function freeRoofLocal(
  form: 'pitched' | 'single-slope',
  place: Place,
  degrees: number,
  flows: readonly Flow[],
): { readonly suction: number; readonly pressure: number } {
  const table = form === 'pitched' ? PITCHED : SINGLE_SLOPE;
  return {
    suction: Math.min(...flows.map((flow) => along(table[flow][place].suction, degrees))),
    pressure: Math.max(...flows.map((flow) => along(table[flow][place].pressure, degrees))),
  };
}
