/**
 * Pressure coefficients of EN 1991-1-4:2005 clause 7 (recommended values, areas of 10 m² and more), each looked
 * up in public restatements of the tables; the vault curves agree with a published reading of figure 7.11.
 */
import { along, between, type Curve } from '../interpolate.ts';

export interface VaultCoefficients {
  /** Outer windward quarter: one value, or two to try for low arches on high walls. */
  readonly windward: readonly number[];
  readonly crown: number;
  readonly leeward: number;
}

const VAULT_LOW: Curve = [
  [0.05, 0.1],
  [0.5, 0.8],
];
const VAULT_HIGH: Curve = [
  [0.2, 0],
  [0.5, 0.8],
];
const VAULT_HIGH_SUCTION: Curve = [
  [0.05, -1.2],
  [0.2, -0.9],
];

/**
 * c_pe,10 of vaulted roofs by rise/span f/d and springing height/span h/d (figure 7.11).
 * Between h/d = 0 and 0.5 straight; for 0 < f/d < 0.2 with h/d >= 0.5 two values are given.
 */
export function vaultCoefficients(riseRatio: number, springingRatio: number): VaultCoefficients {
  const f = Math.min(0.5, riseRatio);
  const share = springingRatio / 0.5;
  const windward = [between(along(VAULT_LOW, f), along(VAULT_HIGH, f), share)];
  if (f < 0.2 && springingRatio > 0) {
    windward.push(between(along(VAULT_LOW, f), along(VAULT_HIGH_SUCTION, f), share));
  }
  return { windward, crown: -0.7 - f, leeward: -0.4 };
}

/**
 * Duopitch roof, wind across (table 7.4a): windward edge strip G, near the ends F, rest H, ridge strip J, leeward
 * rest I.
 */
const PITCH: Record<'F' | 'G' | 'H' | 'I' | 'J', { low: Curve; high: Curve }> = {
  F: {
    low: [
      [5, -1.7],
      [15, -0.9],
      [30, -0.5],
      [45, 0],
      [60, 0.7],
      [75, 0.8],
    ],
    high: [
      [5, 0],
      [15, 0.2],
      [30, 0.7],
      [60, 0.7],
      [75, 0.8],
    ],
  },
  G: {
    low: [
      [5, -1.2],
      [15, -0.8],
      [30, -0.5],
      [45, 0],
      [60, 0.7],
      [75, 0.8],
    ],
    high: [
      [5, 0],
      [15, 0.2],
      [30, 0.7],
      [60, 0.7],
      [75, 0.8],
    ],
  },
  H: {
    low: [
      [5, -0.6],
      [15, -0.3],
      [30, -0.2],
      [45, 0],
      [60, 0.7],
      [75, 0.8],
    ],
    high: [
      [5, 0],
      [15, 0.2],
      [30, 0.4],
      [45, 0.6],
      [60, 0.7],
      [75, 0.8],
    ],
  },
  I: {
    low: [
      [5, -0.6],
      [15, -0.4],
      [30, -0.4],
      [45, -0.2],
    ],
    high: [
      [5, -0.6],
      [15, 0],
      [45, 0],
      [60, -0.2],
    ],
  },
  J: {
    low: [
      [5, -0.6],
      [15, -1],
      [30, -0.5],
      [45, -0.3],
    ],
    high: [
      [5, 0.2],
      [15, 0],
      [45, 0],
      [60, -0.3],
    ],
  },
};

/**
 * Monopitch roof met on its high eave (table 7.3a, 180°). Restated of the Danish edition; two other restatements
 * print -0.8 in H from 45° on. F, near the ends, from memory.
 */
const SLOPE_HIGH: Record<'F' | 'G' | 'H', Curve> = {
  F: [
    [5, -2.3],
    [15, -2.5],
    [30, -1.1],
    [45, -0.6],
    [60, -0.5],
  ],
  G: [
    [5, -1.3],
    [15, -1.3],
    [30, -0.8],
    [45, -0.5],
  ],
  H: [
    [5, -0.8],
    [15, -0.9],
    [30, -0.8],
    [45, -0.7],
    [60, -0.5],
  ],
};

export interface PitchCoefficients {
  readonly edge: number;
  readonly rest: number;
}

/**
 * Windward slope of a duopitch roof, or a single slope met on its low side: suction or pressure set; the edge strip
 * is zone G, or F near the ends.
 */
export function windwardSlope(
  degrees: number,
  set: 'low' | 'high',
  edge: 'F' | 'G' = 'G',
): PitchCoefficients {
  return {
    edge: along(PITCH[edge][set], degrees),
    rest: along(PITCH.H[set], degrees),
  };
}

/** Leeward slope of a duopitch roof: strip behind the ridge (J) and the rest (I). */
export function leewardSlope(degrees: number, set: 'low' | 'high'): PitchCoefficients {
  return {
    edge: along(PITCH.J[set], degrees),
    rest: along(PITCH.I[set], degrees),
  };
}

/** A single slope met on its high side (table 7.3a, 180°). */
export function highSideSlope(degrees: number, edge: 'F' | 'G' = 'G'): PitchCoefficients {
  return {
    edge: along(SLOPE_HIGH[edge], degrees),
    rest: along(SLOPE_HIGH.H, degrees),
  };
}

export interface RidgewiseCoefficients {
  /** Zone F at the low and the high eave (alike under a ridge), G between them, H behind these, I the rest. */
  readonly low: number;
  readonly high: number;
  readonly middle: number;
  readonly behind: number;
  readonly rest: number;
}

/**
 * Wind along the ridge: [angle, F low, F high, G, H, I] of tables 7.4b (duopitch) and 7.3b (single slope), as a public
 * restatement of the Danish edition has them; that of 7.3b agrees with a second one.
 */
const RIDGEWISE: Record<'duo' | 'mono', readonly (readonly number[])[]> = {
  duo: [
    [5, -1.6, -1.6, -1.3, -0.7, -0.6],
    [15, -1.3, -1.3, -1.3, -0.6, -0.5],
    [30, -1.1, -1.1, -1.4, -0.8, -0.5],
    [45, -1.1, -1.1, -1.4, -0.9, -0.5],
    [60, -1.1, -1.1, -1.2, -0.8, -0.5],
  ],
  mono: [
    [5, -2.1, -2.1, -1.8, -0.6, -0.5],
    [15, -1.6, -2.4, -1.9, -0.8, -0.7],
    [30, -1.3, -2.1, -1.5, -1, -0.8],
    [45, -1.3, -1.5, -1.4, -1, -0.9],
    [60, -1.2, -1.2, -1.2, -1, -0.7],
  ],
};

/** Roof with the wind along the ridge: the strip at the windward end, and what lies behind it. */
export function ridgewiseEnd(kind: 'duo' | 'mono', degrees: number): RidgewiseCoefficients {
  const column = (k: number): number =>
    along(
      RIDGEWISE[kind].map((row): Curve[number] => [row[0]!, row[k]!]),
      degrees,
    );
  return { low: column(1), high: column(2), middle: column(3), behind: column(4), rest: column(5) };
}

/** Walls, table 7.1: windward D and leeward E by height/depth. */
export function wallCoefficients(heightRatio: number): {
  readonly windward: number;
  readonly leeward: number;
} {
  return {
    windward: along(
      [
        [0.25, 0.7],
        [1, 0.8],
      ],
      heightRatio,
    ),
    leeward: along(
      [
        [0.25, -0.3],
        [1, -0.5],
        [5, -0.7],
      ],
      heightRatio,
    ),
  };
}

const MONO_CANOPY: { max: Curve; empty: Curve; blocked: Curve } = {
  max: [
    [0, 0.2],
    [5, 0.4],
    [10, 0.5],
    [15, 0.7],
    [20, 0.8],
    [25, 1],
    [30, 1.2],
  ],
  empty: [
    [0, -0.5],
    [5, -0.7],
    [10, -0.9],
    [15, -1.1],
    [20, -1.3],
    [25, -1.6],
    [30, -1.8],
  ],
  blocked: [
    [0, -1.3],
    [5, -1.4],
    [30, -1.4],
  ],
};
const DUO_CANOPY: { max: Curve; empty: Curve; blocked: Curve } = {
  max: [
    [0, 0.2],
    [5, 0.3],
    [10, 0.4],
    [15, 0.4],
    [20, 0.6],
    [25, 0.7],
    [30, 0.9],
  ],
  empty: [
    [0, -0.5],
    [5, -0.6],
    [10, -0.7],
    [15, -0.8],
    [20, -0.9],
    [25, -1],
    [30, -1],
  ],
  blocked: [
    [0, -1.3],
    [30, -1.3],
  ],
};

/**
 * Overall force coefficients c_f of a canopy (tables 7.6 and 7.7): greatest, and least between the empty and the
 * fully blocked canopy. Table 7.7 as SANS 10160-3 restates it; one other restatement prints -1.4 for a blocked
 * duopitch canopy of 20°. A level duopitch canopy, which table 7.7 leaves out, has the values of table 7.6.
 */
export function canopyCoefficients(
  kind: 'mono' | 'duo',
  degrees: number,
  blockage: number,
): { readonly max: number; readonly min: number } {
  const table = kind === 'mono' ? MONO_CANOPY : DUO_CANOPY;
  return {
    max: along(table.max, degrees),
    min: between(along(table.empty, degrees), along(table.blocked, degrees), blockage),
  };
}
