/** How far a foot in the ground gives sideways and in turning before it fails: springs at ground level. */
import type { KindName } from '@tautline/quantity';
import { given, type Step } from '../step.ts';
import { needPositive } from './ground-result.ts';
import { isGranular, type Soil, type SoilClass, soilOf } from './soil.ts';

export interface FootSprings {
  /** Push over movement at ground level while the foot may turn, N/m. */
  readonly sideways: number;
  /** Moment over turning at ground level while the foot may move, N·m/rad. */
  readonly turning: number;
  readonly steps: readonly Step[];
}

export interface FootSpringInput {
  readonly soil: SoilClass;
  /** Depth in the ground, m. */
  readonly depth: number;
  /** Bending stiffness of what stands in the ground, N·m²; a stiff one when absent. */
  readonly rigidity?: number;
  readonly waterlogged?: boolean | undefined;
}

/** Give at ground level: m/N, rad/(N·m). */
interface Give {
  readonly sideways: number;
  readonly turning: number;
}

/**
 * Springs of a foot at ground level: push and moment each by itself, with the foot free to move the other way. The
 * coupling of the two is left out. The subgrade is even in clay (k = 67 c_u over the depth, Davisson 1970) and grows
 * with depth in sand (k = n_h z, Terzaghi 1955). In clay the foot is a beam of finite length on that bed (Hetényi
 * 1946, from memory); in sand the softer of the stiff stub and of the long one (Reese and Matlock 1956, whose 2.435
 * a public calculation prints; 1.750 from memory).
 */
export function footSprings(input: FootSpringInput): FootSprings {
  const { depth, rigidity = Number.POSITIVE_INFINITY } = input;
  needPositive({ depth, rigidity });
  const soil = soilOf(input.soil, input);
  const granular = isGranular(soil);
  const give = granular ? inSand(soil, depth, rigidity) : inClay(soil, depth, rigidity);
  const source = granular ? 'terzaghi:1955' : 'davisson:67cu';
  const bed = granular
    ? given('n_h', 'growth of the subgrade with depth, N/m³', soil.subgradeGrowth, 'ratio')
    : given('c_u', 'shear strength', soil.shear, 'stress');
  const inputs = [
    bed,
    given('L', 'depth', depth, 'length'),
    ...(Number.isFinite(rigidity)
      ? [given('EI', 'bending stiffness of the foot, N·m²', rigidity, 'ratio')]
      : []),
  ];
  const spring = (symbol: string, meaning: string, formula: string, value: number, kind: KindName): Step => ({
    symbol,
    meaning,
    formula,
    inputs,
    value,
    kind,
    source,
  });
  const [sideways, turning] = [1 / give.sideways, 1 / give.turning];
  return {
    sideways,
    turning,
    steps: [
      spring(
        'k_H',
        'sideways spring of the foot at ground level, free to turn',
        granular
          ? '1/k_H = max(18 / n_h L², 2.435 T³ / EI), T = (EI / n_h)^(1/5)'
          : '1/k_H = 2β/k (sinh cosh - sin cos) / (sinh² - sin²) of βL, k = 67 c_u, β⁴ = k / 4 EI',
        sideways,
        'stiffness',
      ),
      spring(
        'k_θ',
        'turning spring of the foot at ground level, free to move',
        granular
          ? '1/k_θ = max(36 / n_h L⁴, 1.750 T / EI), T = (EI / n_h)^(1/5)'
          : '1/k_θ = 4β³/k (sinh cosh + sin cos) / (sinh² - sin²) of βL, k = 67 c_u, β⁴ = k / 4 EI',
        turning,
        'rotational-stiffness',
      ),
    ],
  };
}

/** βL from which on a beam is as good as endless, and up to which it is as good as stiff: own choice. */
const endless = 6;
const stiff = 0.05;

function inClay(soil: Soil, L: number, EI: number): Give {
  const k = 67 * soil.shear;
  const beta = (k / (4 * EI)) ** 0.25;
  const x = beta * L;
  if (x < stiff) return { sideways: 4 / (k * L), turning: 12 / (k * L ** 3) };
  const [sh, ch, s, c] = x > endless ? [1, 1, 0, 0] : [Math.sinh(x), Math.cosh(x), Math.sin(x), Math.cos(x)];
  const under = sh * sh - s * s;
  return {
    sideways: ((2 * beta) / k) * ((sh * ch - s * c) / under),
    turning: ((4 * beta ** 3) / k) * ((sh * ch + s * c) / under),
  };
}

function inSand(soil: Soil, L: number, EI: number): Give {
  const growth = soil.subgradeGrowth;
  const short = { sideways: 18 / (growth * L ** 2), turning: 36 / (growth * L ** 4) };
  if (!Number.isFinite(EI)) return short;
  const T = (EI / growth) ** 0.2;
  return {
    sideways: Math.max(short.sideways, (2.435 * T ** 3) / EI),
    turning: Math.max(short.turning, (1.75 * T) / EI),
  };
}
