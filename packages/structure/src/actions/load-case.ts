/** Loads on the typical frame, by nature. Forces per metre of element length, fixed in direction. */
import type { Duration, Step } from '@tautline/loads';

export type Nature = 'dead' | 'crop' | 'snow' | 'rain' | 'wind' | 'person';

/**
 * How long each kind of load stays. A gust is over in seconds, a person works for hours, water stands for days, snow
 * lies for weeks, a crop hangs for a season.
 */
export const stayOf: Readonly<Record<Nature, Duration>> = {
  dead: 'permanent',
  crop: 'season',
  snow: 'weeks',
  rain: 'days',
  person: 'person',
  wind: 'gust',
};

export interface LineLoad {
  readonly element: number;
  /** N per m of element. */
  readonly wx: number;
  readonly wy: number;
  /** The stretch of the house it acts on, m from its front; all of it without. Only for a whole house. */
  readonly along?: { readonly from: number; readonly to: number };
}

export interface PointLoad {
  readonly node: number;
  readonly fx: number;
  readonly fy: number;
}

export interface LoadCase {
  readonly id: string;
  readonly title: string;
  readonly nature: Nature;
  readonly lines: readonly LineLoad[];
  readonly points: readonly PointLoad[];
  readonly source: string;
  /** A frame near an end that these loads are for, e.g. 'the end bow'; the typical one without. */
  readonly on?: string;
  /** How the pressures of an end zone were found. */
  readonly steps?: readonly Step[];
}

/** A combination as solved: factors times cases. */
export interface CombinedLoad {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly lines: readonly LineLoad[];
  readonly points: readonly PointLoad[];
  /** How long all of it stays: as long as its shortest-acting part. */
  readonly duration: Duration;
  /** Wind case in it, if any. */
  readonly wind?: string;
  /** A frame near an end that these loads are for; the typical one without. */
  readonly on?: string;
  /** How the pressures of an end zone were found. */
  readonly steps?: readonly Step[];
  /** What the standard means it for: members and joints, staying down, or use. */
  readonly use: 'strength' | 'stability' | 'service';
}

/** Sum of cases with factors, merged by element and node. */
export function combine(parts: readonly { readonly factor: number; readonly loadCase: LoadCase }[]): {
  lines: LineLoad[];
  points: PointLoad[];
} {
  // By element, and where a load is not on the whole house, by where it begins, too.
  const lines = new Map<number | string, LineLoad>();
  const points = new Map<number, { fx: number; fy: number }>();
  for (const { factor, loadCase } of parts) {
    if (factor === 0) continue;
    for (const line of loadCase.lines) {
      const { element, along } = line;
      const key = along === undefined ? element : `${element}/${along.from}`;
      const sum = lines.get(key);
      const wx = (sum?.wx ?? 0) + factor * line.wx;
      const wy = (sum?.wy ?? 0) + factor * line.wy;
      lines.set(key, along === undefined ? { element, wx, wy } : { element, wx, wy, along });
    }
    for (const point of loadCase.points) {
      const sum = points.get(point.node) ?? { fx: 0, fy: 0 };
      points.set(point.node, {
        fx: sum.fx + factor * point.fx,
        fy: sum.fy + factor * point.fy,
      });
    }
  }
  return {
    lines: [...lines.values()],
    points: [...points].map(([node, load]) => ({ node, ...load })),
  };
}
