/** Loads on the typical frame, by nature. Forces per metre of element length, fixed in direction. */
export type Nature = 'dead' | 'crop' | 'snow' | 'rain' | 'wind' | 'person';

export interface LineLoad {
  readonly element: number;
  /** N per m of element. */
  readonly wx: number;
  readonly wy: number;
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
}

/** A combination as solved: factors times cases. */
export interface CombinedLoad {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly lines: readonly LineLoad[];
  readonly points: readonly PointLoad[];
  /** Share of the total that stays for months, for the long-term modulus. */
  readonly sustained: boolean;
  /** Wind case in it, if any. */
  readonly wind?: string;
  /** What the standard means it for: members and joints, staying down, or use. */
  readonly use: 'strength' | 'stability' | 'service';
}

/** Sum of cases with factors, merged by element and node. */
export function combine(parts: readonly { readonly factor: number; readonly loadCase: LoadCase }[]): {
  lines: LineLoad[];
  points: PointLoad[];
} {
  const lines = new Map<number, { wx: number; wy: number }>();
  const points = new Map<number, { fx: number; fy: number }>();
  for (const { factor, loadCase } of parts) {
    if (factor === 0) continue;
    for (const line of loadCase.lines) {
      const sum = lines.get(line.element) ?? { wx: 0, wy: 0 };
      lines.set(line.element, {
        wx: sum.wx + factor * line.wx,
        wy: sum.wy + factor * line.wy,
      });
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
    lines: [...lines].map(([element, load]) => ({ element, ...load })),
    points: [...points].map(([node, load]) => ({ node, ...load })),
  };
}
