/** Rain off the roof: runoff, eaves gutters, channels. */
import { along } from '../interpolate.ts';
import { given, type Step } from '../step.ts';

export interface Flow {
  /** m³/s. */
  readonly flow: number;
  readonly step: Step;
}

/** Rational method, Q = C i A, m³/s: rain in m/s, plan area in m², C = 1 for film. */
export function runoff(rain: number, area: number, coefficient = 1): Flow {
  const flow = coefficient * rain * area;
  return {
    flow,
    step: {
      symbol: 'Q',
      meaning: 'water off the roof',
      formula: 'Q = C i A',
      inputs: [
        given('C', 'runoff coefficient', coefficient, 'ratio'),
        given('i', 'rain', rain, 'rain-rate'),
        given('A', 'area on plan', area, 'area'),
      ],
      value: flow,
      kind: 'flow',
      source: 'rational-method',
    },
  };
}

/** F_L of EN 12056-3 table 6 for level gutters, by length over depth. */
const LONG_GUTTER = [
  [50, 1],
  [75, 0.97],
  [100, 0.93],
  [125, 0.9],
  [150, 0.86],
  [175, 0.83],
  [200, 0.8],
  [300, 0.7],
  [500, 0.6],
] as const;

/**
 * Capacity of a half-round eaves gutter laid level, m³/s: Q_L = 0.9 · 2.78e-5 A^1.25 l/s with A in mm²,
 * times F_L for long gutters (EN 12056-3, 5.1). Diameter and length to the outlet in m.
 */
export function halfRoundGutter(diameter: number, length: number): Flow {
  const area = (Math.PI / 8) * (diameter * 1000) ** 2;
  const factor = along(LONG_GUTTER, length / (diameter / 2));
  return gutterFlow(2.78e-5 * area ** 1.25, factor, area, '2.78e-5');
}

/**
 * Capacity of a rectangular eaves gutter laid level, m³/s: Q_L = 0.9 · 3.48e-5 A^1.25 F_d l/s (EN 12056-3, 5.1),
 * F_d = (depth/width)^0.25 held at 1 or less, which stands in for the chart of the standard.
 */
export function boxGutter(width: number, depth: number, length: number): Flow {
  const area = width * depth * 1e6;
  const shape = Math.min(1, (depth / width) ** 0.25);
  return gutterFlow(3.48e-5 * area ** 1.25 * shape, along(LONG_GUTTER, length / depth), area, '3.48e-5 F_d');
}

function gutterFlow(litres: number, factor: number, area: number, coefficient: string): Flow {
  const flow = (0.9 * litres * factor) / 1000;
  return {
    flow,
    step: {
      symbol: 'Q_L',
      prose: true,
      meaning: 'water the gutter carries',
      formula: `0.9 · ${coefficient} A^1.25 F_L, in l/s with A in mm²`,
      inputs: [
        given('A', 'cross section', area / 1e6, 'area'),
        given('F_L', 'length factor', factor, 'ratio'),
      ],
      value: flow,
      kind: 'flow',
      source: 'en12056-3:5.1',
    },
  };
}

/**
 * Manning's formula, Q = A R^(2/3) S^(1/2) / n, m³/s: area m², wetted perimeter m, slope as a ratio,
 * n of sheet metal or film 0.011 to 0.013, of grassed ditch 0.03.
 */
export function manningFlow(area: number, wetted: number, slope: number, roughness: number): Flow {
  const radius = area / wetted;
  const flow = (area * radius ** (2 / 3) * Math.sqrt(slope)) / roughness;
  return {
    flow,
    step: {
      symbol: 'Q',
      meaning: 'water the channel carries',
      formula: 'Q = A R^(2/3) S^(1/2) / n',
      inputs: [
        given('A', 'water section', area, 'area'),
        given('R', 'hydraulic radius', radius, 'length'),
        given('S', 'fall', slope, 'slope'),
        given('n', 'roughness', roughness, 'ratio'),
      ],
      value: flow,
      kind: 'flow',
      source: 'manning',
    },
  };
}

/**
 * Depth of water in a level box gutter that carries a flow to a free outlet, m: critical depth at the outlet
 * y_c = (q²/g)^(1/3), and √3 y_c upstream where inflow is even along it (Beij 1934). Flow m³/s, width m.
 */
export function gutterDepth(flow: number, width: number): number {
  return Math.sqrt(3) * Math.cbrt((flow / width) ** 2 / 9.80665);
}

/** Velocity head and head over a rounded lip h with Q = 1.7 b h^1.5 (broad weir), m. */
export function spillHead(flow: number, breadth: number): number {
  return (flow / (1.7 * breadth)) ** (2 / 3);
}
