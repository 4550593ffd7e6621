/** Local suction on small areas: film between fastenings, sheets, clips. */
import { along, type Curve } from '../interpolate.ts';
import { given, type Step } from '../step.ts';
import { archCoefficients } from './asce-coefficients.ts';
import { asceEdge } from './asce-end.ts';
import { freeRoofLocal, type Place } from './free-roof-local.ts';
import { type Outline, outlineOf } from './shape.ts';
import { asceVelocityPressure, enVelocityPressure } from './velocity-pressure.ts';
import type { CladdingSuction, CladdingZone, WindInput, WindShape } from './wind-case.ts';

/** [angle from (exclusive), zone 1, zone 2, zone 3]: GC_p of ASCE 7-22 figures 30.3-2A to -2C, <= 0.93 m². */
const ASCE_GABLE: readonly (readonly [number, number, number, number])[] = [
  [-1, -1.7, -2.3, -3.2],
  [7, -2, -2.7, -3.6],
  [20, -1.5, -2.5, -3],
];
/** c_pe,1 of EN 1991-1-4 tables 7.4a and 7.4b, worst of both winds: H, G and F (F no better than G). */
const EN_PITCH: Record<Place, Curve> = {
  middle: [
    [5, -1.2],
    [45, -1.2],
  ],
  edge: [
    [5, -2],
    [45, -2],
  ],
  corner: [
    [5, -2.5],
    [15, -2],
    [45, -2],
  ],
};
/** c_p,net of EN 1991-1-4 table 7.7 (duopitch canopies) zones A, B, C: least of φ = 0 and 1, and greatest. */
const EN_CANOPY: Record<Place, { suction: Curve; pressure: Curve }> = {
  middle: {
    suction: [
      [5, -1.3],
      [15, -1.3],
      [20, -1.4],
      [30, -1.4],
    ],
    pressure: [
      [5, 0.6],
      [10, 0.7],
      [15, 0.9],
      [20, 1.1],
      [30, 1.3],
    ],
  },
  edge: {
    suction: [
      [5, -1.8],
      [15, -1.6],
      [25, -1.5],
      [30, -1.4],
    ],
    pressure: [
      [5, 1.3],
      [15, 1.4],
      [30, 1.6],
    ],
  },
  corner: {
    suction: [
      [5, -2],
      [15, -2.2],
      [20, -2.2],
      [30, -1.9],
    ],
    pressure: [
      [5, 1.8],
      [15, 1.9],
      [30, 1.9],
    ],
  },
};
/**
 * c_pe,1 of EN 1991-1-4 tables 7.3a and 7.3b (single slopes), worst of the winds: H, G and F. F and G at 15° in public
 * text; the rest from memory.
 */
const EN_SLOPE: Record<Place, Curve> = {
  middle: [
    [15, -1.2],
    [30, -1.3],
  ],
  edge: [
    [5, -2],
    [15, -2.5],
    [30, -2],
  ],
  corner: [
    [5, -2.6],
    [15, -2.9],
    [30, -2.9],
    [45, -2.4],
  ],
};
/** c_p,net of EN 1991-1-4 table 7.6 (single-slope canopies): A, C, and the worse of B and C; φ = 0 or 1, from memory. */
const EN_SLOPE_CANOPY: Record<Place, { suction: Curve; pressure: Curve }> = {
  middle: {
    suction: [
      [0, -1.5],
      [5, -1.6],
      [10, -1.6],
      [15, -1.8],
      [20, -2.2],
      [25, -2.6],
      [30, -3],
    ],
    pressure: [
      [0, 0.5],
      [5, 0.8],
      [10, 1.2],
      [15, 1.4],
      [20, 1.7],
      [25, 2],
      [30, 2.2],
    ],
  },
  edge: {
    suction: [
      [0, -2.2],
      [5, -2.5],
      [10, -2.7],
      [15, -3],
      [20, -3],
      [25, -3.2],
      [30, -3.6],
    ],
    pressure: [
      [0, 1.1],
      [5, 1.3],
      [10, 1.6],
      [15, 1.8],
      [20, 2.1],
      [25, 2.3],
      [30, 2.4],
    ],
  },
  corner: {
    suction: [
      [0, -2.2],
      [5, -2.5],
      [10, -2.7],
      [15, -3],
      [20, -3],
      [25, -3.2],
      [30, -3.8],
    ],
    pressure: [
      [0, 1.8],
      [5, 2.1],
      [10, 2.4],
      [15, 2.7],
      [20, 2.9],
      [25, 3.1],
      [30, 3.2],
    ],
  },
};
const PLACES: readonly Place[] = ['middle', 'edge', 'corner'];

/**
 * Local net pressures for the film and its fastenings, Pa, on areas of a square metre or less.
 * ASCE 7 chapter 30 (components and cladding) or EN 1991-1-4 c_pe,1 and c_p,net; same level as `windActions`.
 */
export function claddingSuction(input: WindInput, shape: WindShape): CladdingSuction {
  const outline = outlineOf(shape);
  return input.basis === 'eurocode' ? enCladding(input, shape, outline) : asceCladding(input, shape, outline);
}

function asceCladding(input: WindInput, shape: WindShape, outline: Outline): CladdingSuction {
  const q = asceVelocityPressure(input, outline.meanHeight);
  const edgeWidth = asceEdge(shape, outline);
  const open = outline.enclosure === 'open';
  const notCovered: string[] = [];
  if (outline.pitch > 27 && !open)
    notCovered.push('Local suction on roofs over 27°: the values up to 27° are used.');
  if (shape.form === 'single-slope' && !open)
    notCovered.push(
      'Closed single slopes: the local values of gables are used, which are no smaller than those of figure 30.3-5 (from memory).',
    );
  const row = ASCE_GABLE.findLast(([from]) => outline.pitch > from)!;
  const arch = shape.form === 'arch' && !open;
  if (arch) notCovered.push('Edges of arches: the gable values at the chord slope are used.');
  const source = open ? 'asce7-16:30.7' : arch ? 'asce7-16:30.3-8' : 'asce7-22:30.3-2';
  const steps: Step[] = [...q.steps];
  const free = shape.form === 'single-slope' ? 'single-slope' : 'pitched';
  const zones = PLACES.map((place, i): CladdingZone => {
    const local = open
      ? { ...freeRoofLocal(free, place, outline.pitch, outline.flows), inside: 0 }
      : {
          suction:
            arch && place === 'middle'
              ? 0.87 * archCoefficients(shape.rise / shape.span, shape.springing > 0).centreHalf
              : row[(i + 1) as 1 | 2 | 3],
          pressure: 0.6,
          inside: outline.enclosure === 'partly enclosed' ? 0.55 : 0.18,
        };
    const gust = open ? 0.85 : 1;
    const suction = q.pressure * (gust * local.suction - local.inside);
    steps.push(localStep(place, q.pressure, gust, local.suction, local.inside, suction, source));
    return {
      place,
      suction,
      pressure: q.pressure * (gust * local.pressure + local.inside),
    };
  });
  return { zones, edgeWidth, steps, source, notCovered };
}

function enCladding(input: WindInput, shape: WindShape, outline: Outline): CladdingSuction {
  const q = enVelocityPressure(input, outline.ridgeHeight);
  const edgeWidth = Math.min(shape.length, 2 * outline.ridgeHeight) / 10;
  const open = outline.enclosure === 'open';
  const notCovered: string[] = [];
  if (shape.form === 'arch')
    notCovered.push('Edges of vaults: the duopitch values at the chord slope are used.');
  const mono = shape.form === 'single-slope';
  const canopy = mono ? EN_SLOPE_CANOPY : EN_CANOPY;
  const closed = mono ? EN_SLOPE : EN_PITCH;
  const source = open
    ? `en1991-1-4:7.3-${mono ? 'mono' : 'duo'}`
    : mono
      ? 'en1991-1-4:7.2.4'
      : 'en1991-1-4:7.2.5';
  const steps: Step[] = [...q.steps];
  const zones = PLACES.map((place): CladdingZone => {
    const inside = open ? 0 : outline.enclosure === 'partly enclosed' ? 0.72 : 0.2;
    const crown =
      shape.form === 'arch' && place === 'middle' ? -0.7 - Math.min(0.5, shape.rise / shape.span) : 0;
    const cp = open
      ? along(canopy[place].suction, outline.pitch)
      : Math.min(crown, along(closed[place], outline.pitch));
    const push = open
      ? along(canopy[place].pressure, outline.pitch)
      : 0.7 + (outline.enclosure === 'partly enclosed' ? 0.72 : 0.3);
    const suction = q.pressure * (cp - inside);
    steps.push(localStep(place, q.pressure, 1, cp, inside, suction, source));
    return { place, suction, pressure: q.pressure * push };
  });
  return { zones, edgeWidth, steps, source, notCovered };
}

function localStep(
  place: Place,
  q: number,
  gust: number,
  cp: number,
  inside: number,
  value: number,
  source: string,
): Step {
  return {
    symbol: 'p_local',
    meaning: `local suction, ${place} of the roof`,
    formula: gust === 1 ? 'p = q (c - c_i)' : 'p = q (G c - c_i)',
    inputs: [
      given('q', 'velocity pressure', q, 'pressure'),
      ...(gust === 1 ? [] : [given('G', 'gust factor', gust, 'ratio')]),
      given('c', 'local coefficient', cp, 'ratio'),
      given('c_i', 'inside coefficient', inside, 'ratio'),
    ],
    value,
    kind: 'pressure',
    source,
  };
}
