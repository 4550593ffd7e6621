/**
 * End zones of ASCE 7-16 for frames: the envelope procedure for low-rise buildings (28.3.1), whose end zones the
 * directional procedure of chapter 27 does not have. The frames in between stay with chapter 27.
 */
import { along, type Curve } from '../interpolate.ts';
import { given, type Step } from '../step.ts';
import { INSIDE } from './asce-net.ts';
import { type Outline, outlineOf } from './shape.ts';
import { asceVelocityPressure } from './velocity-pressure.ts';
import type { EndWind, EndWindCase, WindInput, WindShape, WindZone } from './wind-case.ts';

const SOURCE = 'asce7-16:28.3-1';
/** Highest low-rise building of ASCE 7-16 26.2, 60 ft, m. */
const LOW_RISE = 18.3;

export interface EnvelopeCoefficients {
  readonly windwardWall: number;
  readonly windwardRoof: number;
  readonly leewardRoof: number;
  readonly leewardWall: number;
}

interface InnerAndEnd {
  readonly inner: EnvelopeCoefficients;
  readonly end: EnvelopeCoefficients;
}

/** [angle, 1, 2, 3, 4, 1E, 2E, 3E, 4E] of load case A. */
const ACROSS: readonly (readonly number[])[] = [
  [5, 0.4, -0.69, -0.37, -0.29, 0.61, -1.07, -0.53, -0.43],
  [20, 0.53, -0.69, -0.48, -0.43, 0.8, -1.07, -0.69, -0.64],
  [30, 0.56, 0.21, -0.43, -0.37, 0.69, 0.27, -0.53, -0.48],
  [45, 0.56, 0.21, -0.43, -0.37, 0.69, 0.27, -0.53, -0.48],
  [90, 0.56, 0.56, -0.37, -0.37, 0.69, 0.69, -0.48, -0.48],
];
/** Load case B, at all angles. */
const ALONG: InnerAndEnd = {
  inner: { windwardWall: -0.45, windwardRoof: -0.69, leewardRoof: -0.37, leewardWall: -0.45 },
  end: { windwardWall: -0.48, windwardRoof: -1.07, leewardRoof: -0.53, leewardWall: -0.48 },
};

/** GC_pf of figure 28.3-1 for gable roofs: wind across (load case A) and along (B), inside and in the end zone. */
export function endCoefficients(degrees: number): {
  readonly across: InnerAndEnd;
  readonly along: InnerAndEnd;
} {
  const zone = (column: number): number =>
    along(
      ACROSS.map((row): Curve[number] => [row[0]!, row[column]!]),
      degrees,
    );
  const four = (from: number): EnvelopeCoefficients => ({
    windwardWall: zone(from),
    windwardRoof: zone(from + 1),
    leewardRoof: zone(from + 2),
    leewardWall: zone(from + 3),
  });
  return { across: { inner: four(1), end: four(5) }, along: ALONG };
}

/** a of figures 28.3-1 and 30.3-2A: a tenth of the least side or 0.4 h, at least 4 % of the side and 0.9 m. m */
export function asceEdge(shape: WindShape, outline: Outline): number {
  const least = Math.min(shape.span, shape.length);
  return Math.max(Math.min(0.1 * least, 0.4 * outline.meanHeight), 0.04 * least, 0.9);
}

export function asceEndWind(input: WindInput, shape: WindShape): EndWind {
  const outline = outlineOf(shape);
  const least = Math.min(shape.span, shape.length);
  const none = (why: string): EndWind => ({
    width: 0,
    cases: [],
    none: `ASCE 7 gives frames no end zones ${why}`,
    notCovered: [],
  });
  if (outline.enclosure === 'open') return none('under open roofs (figures 27.3-4 to 27.3-7)');
  if (shape.form === 'arch') return none('under arched roofs (figure 27.3-3)');
  if (shape.form === 'single-slope') return none('under single slopes (figure 28.3-1 is for flat and gable)');
  if (outline.meanHeight > Math.min(LOW_RISE, least))
    return none('in houses higher than they are wide (figure 28.3-1 is for low-rise buildings)');
  const q = asceVelocityPressure(input, outline.meanHeight);
  const a = asceEdge(shape, outline);
  const steps: Step[] = [
    ...q.steps,
    {
      symbol: '2a',
      meaning: 'reach of the end zone from either end',
      formula: '2a = 2 max(min(0.1 L, 0.4 h), 0.04 L, a_least)',
      inputs: [
        given('L', 'least side of the house', least, 'length'),
        given('h', 'mean height of the roof', outline.meanHeight, 'length'),
        given('a_least', 'least width of an edge', 0.9, 'length'),
      ],
      value: 2 * a,
      kind: 'length',
      source: SOURCE,
    },
  ];
  const { across, along: lengthwise } = endCoefficients(outline.pitch);
  const inside = INSIDE[outline.enclosure];
  const make = (id: string, title: string, c: InnerAndEnd, pi: number, direction: 'across' | 'along') =>
    endCase({ id, title, direction, c, pi, q: q.pressure, reach: 2 * a, outline, steps });
  return {
    width: 2 * a,
    cases: [
      make(
        'end-across-inside-plus',
        'Wind across in the end zone, blown up inside',
        across,
        inside,
        'across',
      ),
      make(
        'end-across-inside-minus',
        'Wind across in the end zone, sucked in inside',
        across,
        -inside,
        'across',
      ),
      make('end-along', 'Wind along the house in the end zone, blown up inside', lengthwise, inside, 'along'),
    ],
    notCovered: [],
  };
}

interface CaseInput {
  readonly id: string;
  readonly title: string;
  readonly direction: 'across' | 'along';
  readonly c: InnerAndEnd;
  readonly pi: number;
  readonly q: number;
  readonly reach: number;
  readonly outline: Outline;
  readonly steps: readonly Step[];
}

function endCase({ id, title, direction, c, pi, q, reach, outline, steps }: CaseInput): EndWindCase {
  const net = (cp: number): number => q * (cp - pi);
  const zones = (at: EnvelopeCoefficients): WindZone[] => [
    { surface: 'roof', from: 0, to: 0.5, net: net(at.windwardRoof) },
    { surface: 'roof', from: 0.5, to: 1, net: net(at.leewardRoof) },
    ...(outline.walls
      ? ([
          { surface: 'windward-wall', from: 0, to: 1, net: outline.wallShare * net(at.windwardWall) },
          { surface: 'leeward-wall', from: 0, to: 1, net: outline.wallShare * net(at.leewardWall) },
        ] as const)
      : []),
  ];
  const pressed = (zone: string, where: string, cp: number): Step => ({
    symbol: `p_${zone}`,
    meaning: `net pressure in the end zone, ${where}`,
    formula: 'p = q_h (GC_pf - GC_pi)',
    inputs: [
      given('q_h', 'velocity pressure', q, 'pressure'),
      given('GC_pf', `coefficient of zone ${zone}`, cp, 'ratio'),
      given('GC_pi', 'inside coefficient (table 26.13-1)', pi, 'ratio'),
    ],
    value: net(cp),
    kind: 'pressure',
    source: SOURCE,
  });
  return {
    id,
    title,
    direction,
    strips: [
      { from: 0, to: reach, zones: zones(c.end) },
      { from: reach, to: Number.POSITIVE_INFINITY, zones: zones(c.inner) },
    ],
    steps: [
      ...steps,
      pressed('2E', 'windward slope', c.end.windwardRoof),
      pressed('3E', 'leeward slope', c.end.leewardRoof),
    ],
    source: SOURCE,
  };
}
