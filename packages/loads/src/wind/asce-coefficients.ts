/**
 * Pressure coefficients of ASCE 7-16 chapter 27 (the same numbers stand in -05, -10 and -22).
 * Angles in degrees here because the tables are. All tables were checked against a public restatement
 * (a national building code that adopts them).
 */
import { along, between, type Curve } from '../interpolate.ts';

/** Windward roof, wind across the ridge, for h/L = 0.25, 0.5, 1.0 (figure 27.3-1). */
const WINDWARD_SUCTION: readonly Curve[] = [
  [
    [10, -0.7],
    [15, -0.5],
    [20, -0.3],
    [25, -0.2],
    [30, -0.2],
    [35, 0],
  ],
  [
    [10, -0.9],
    [15, -0.7],
    [20, -0.4],
    [25, -0.3],
    [30, -0.2],
    [35, -0.2],
    [45, 0],
  ],
  [
    [10, -1.3],
    [15, -1],
    [20, -0.7],
    [25, -0.5],
    [30, -0.3],
    [35, -0.2],
    [45, 0],
  ],
];
const WINDWARD_PRESSURE: readonly Curve[] = [
  [
    [10, -0.18],
    [15, 0],
    [20, 0.2],
    [25, 0.3],
    [30, 0.3],
    [35, 0.4],
    [45, 0.4],
    [60, 0.6],
    [80, 0.8],
  ],
  [
    [10, -0.18],
    [15, -0.18],
    [20, 0],
    [25, 0.2],
    [30, 0.2],
    [35, 0.3],
    [45, 0.4],
    [60, 0.6],
    [80, 0.8],
  ],
  [
    [10, -0.18],
    [15, -0.18],
    [20, -0.18],
    [25, 0],
    [30, 0.2],
    [35, 0.2],
    [45, 0.3],
    [60, 0.6],
    [80, 0.8],
  ],
];
const LEEWARD: readonly Curve[] = [
  [
    [10, -0.3],
    [15, -0.5],
    [20, -0.6],
  ],
  [
    [10, -0.5],
    [15, -0.5],
    [20, -0.6],
  ],
  [
    [10, -0.7],
    [15, -0.6],
    [20, -0.6],
  ],
];

function byHeight(curves: readonly Curve[], degrees: number, heightRatio: number): number {
  const [low, middle, high] = curves.map((curve) => along(curve, degrees)) as [number, number, number];
  return heightRatio <= 0.5
    ? between(low, middle, (heightRatio - 0.25) / 0.25)
    : between(middle, high, (heightRatio - 0.5) / 0.5);
}

export interface GableCoefficients {
  readonly windwardSuction: number;
  readonly windwardPressure: number;
  readonly leeward: number;
}

/** C_p of a gable of 10° or more, wind across; `heightRatio` is h/L. Figure 27.3-1. */
export function gableCoefficients(degrees: number, heightRatio: number): GableCoefficients {
  return {
    windwardSuction: byHeight(WINDWARD_SUCTION, degrees, heightRatio),
    windwardPressure: byHeight(WINDWARD_PRESSURE, degrees, heightRatio),
    leeward: byHeight(LEEWARD, degrees, heightRatio),
  };
}

/**
 * C_p of a roof under 10° or with the wind along the ridge, by distance from the windward edge in
 * heights h. Each row: [from, to] in h, coefficient. Figure 27.3-1.
 */
export function parallelCoefficients(heightRatio: number): readonly (readonly [number, number, number])[] {
  const share = (heightRatio - 0.5) / 0.5;
  return [
    [0, 0.5, between(-0.9, -1.3, share)],
    [0.5, 1, between(-0.9, -0.7, share)],
    [1, 2, between(-0.5, -0.7, share)],
    [2, Number.POSITIVE_INFINITY, between(-0.3, -0.7, share)],
  ];
}

/** Leeward wall C_p by L/B (plan length along the wind over width across it). Figure 27.3-1. */
export function leewardWall(planRatio: number): number {
  return along(
    [
      [1, -0.5],
      [2, -0.3],
      [4, -0.2],
    ],
    planRatio,
  );
}

export interface ArchCoefficients {
  /** One or two values: the standard has both tried for 0.2 <= r <= 0.3 on raised arches. */
  readonly windwardQuarter: readonly number[];
  readonly centreHalf: number;
  readonly leewardQuarter: number;
}

/**
 * C_p of an arched roof by rise-to-span r, on raised springings or from the ground. Figure 27.3-3.
 * Defined for 0 < r <= 0.6; steeper arches take r = 0.6 and are reported.
 */
export function archCoefficients(riseRatio: number, raised: boolean): ArchCoefficients {
  const r = Math.min(0.6, riseRatio);
  const rest = { centreHalf: -0.7 - r, leewardQuarter: -0.5 };
  if (!raised) return { windwardQuarter: [1.4 * r], ...rest };
  if (r < 0.2) return { windwardQuarter: [-0.9], ...rest };
  if (r <= 0.3) return { windwardQuarter: [1.5 * r - 0.3, 6 * r - 2.1], ...rest };
  return { windwardQuarter: [2.75 * r - 0.7], ...rest };
}

/** [angle, C_NW case A, C_NL case A, C_NW case B, C_NL case B] */
type FreeRow = readonly [number, number, number, number, number];

/** Pitched free roofs, figure 27.3-5. */
const PITCHED_CLEAR: readonly FreeRow[] = [
  [7.5, 1.1, -0.3, 0.2, -1.2],
  [15, 1.1, -0.4, 0.1, -1.1],
  [22.5, 1.1, 0.1, -0.1, -0.8],
  [30, 1.3, 0.3, -0.1, -0.9],
  [37.5, 1.3, 0.6, -0.2, -0.6],
  [45, 1.1, 0.9, -0.3, -0.5],
];
const PITCHED_OBSTRUCTED: readonly FreeRow[] = [
  [7.5, -1.6, -1, -0.9, -1.7],
  [15, -1.2, -1, -0.6, -1.6],
  [22.5, -1.2, -1.2, -0.8, -1.7],
  [30, -0.7, -0.7, -0.2, -1.1],
  [37.5, -0.6, -0.6, -0.3, -0.9],
  [45, -0.5, -0.5, -0.3, -0.7],
];
/**
 * Monoslope free roofs, figure 27.3-4, net and positive towards the top (its note 5). γ = 0° lifts: the wind comes in
 * under the high eave. γ = 180° presses: it meets the roof from its low side.
 */
const SLOPE_HIGH_CLEAR: readonly FreeRow[] = [
  [0, 1.2, 0.3, -1.1, -0.1],
  [7.5, -0.6, -1, -1.4, 0],
  [15, -0.9, -1.3, -1.9, 0],
  [22.5, -1.5, -1.6, -2.4, -0.3],
  [30, -1.8, -1.8, -2.5, -0.5],
  [37.5, -1.8, -1.8, -2.4, -0.6],
  [45, -1.6, -1.8, -2.3, -0.7],
];
const SLOPE_HIGH_OBSTRUCTED: readonly FreeRow[] = [
  [0, -0.5, -1.2, -1.1, -0.6],
  [7.5, -1, -1.5, -1.7, -0.8],
  [15, -1.1, -1.5, -2.1, -0.6],
  [22.5, -1.5, -1.7, -2.3, -0.9],
  [30, -1.5, -1.8, -2.3, -1.1],
  [37.5, -1.5, -1.8, -2.2, -1.1],
  [45, -1.3, -1.8, -1.9, -1.2],
];
const SLOPE_LOW_CLEAR: readonly FreeRow[] = [
  [0, 1.2, 0.3, -1.1, -0.1],
  [7.5, 0.9, 1.5, 1.6, 0.3],
  [15, 1.3, 1.6, 1.8, 0.6],
  [22.5, 1.7, 1.8, 2.2, 0.7],
  [30, 2.1, 2.1, 2.6, 1],
  [37.5, 2.1, 2.2, 2.7, 1.1],
  [45, 2.2, 2.5, 2.6, 1.4],
];
const SLOPE_LOW_OBSTRUCTED: readonly FreeRow[] = [
  [0, -0.5, -1.2, -1.1, -0.6],
  [7.5, -0.2, -1.2, 0.8, -0.3],
  [15, 0.4, -1.1, 1.2, -0.3],
  [22.5, 0.5, -1, 1.3, 0],
  [30, 0.6, -1, 1.6, 0.1],
  [37.5, 0.7, -0.9, 1.9, 0.3],
  [45, 0.8, -0.9, 2.1, 0.4],
];

export interface FreeRoofCase {
  readonly name: 'A' | 'B';
  readonly windward: number;
  readonly leeward: number;
}

/**
 * Net coefficients C_N of an open building, top and bottom together, for both load cases.
 * Below 7.5° the flat row of figure 27.3-4 applies to both kinds of roof and both directions (its note 3).
 * @param kind 'pitched' (figure 27.3-5), 'low' or 'high' for a single slope with the wind from that side (figure 27.3-4)
 */
export function freeRoofCoefficients(
  kind: 'pitched' | 'low' | 'high',
  degrees: number,
  obstructed: boolean,
): readonly FreeRoofCase[] {
  const slope =
    kind === 'high'
      ? obstructed
        ? SLOPE_HIGH_OBSTRUCTED
        : SLOPE_HIGH_CLEAR
      : obstructed
        ? SLOPE_LOW_OBSTRUCTED
        : SLOPE_LOW_CLEAR;
  const rows = kind !== 'pitched' || degrees < 7.5 ? slope : obstructed ? PITCHED_OBSTRUCTED : PITCHED_CLEAR;
  const at = degrees < 7.5 ? 0 : degrees;
  const column = (i: 1 | 2 | 3 | 4): number =>
    along(
      rows.map((row) => [row[0], row[i]] as const),
      at,
    );
  return [
    { name: 'A', windward: column(1), leeward: column(2) },
    { name: 'B', windward: column(3), leeward: column(4) },
  ];
}

/** C_N of an open roof with the wind along the ridge, within h of the windward edge. Figure 27.3-7. */
export function freeRoofAlong(obstructed: boolean): {
  readonly uplift: number;
  readonly down: number;
} {
  return obstructed ? { uplift: -1.2, down: 0.5 } : { uplift: -0.8, down: 0.8 };
}
