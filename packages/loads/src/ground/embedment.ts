/** Sideways load of posts in earth by the building code. */
import { given } from '../step.ts';
import { type GroundResult, groundResult, needPositive } from './ground-result.ts';
import { type SoilClass, soilOf } from './soil.ts';

export interface EmbedmentInput {
  readonly soil: SoilClass;
  /** Width or diameter of post or concrete, m. */
  readonly width: number;
  readonly depth: number;
  /** Height of the push over the ground, m. */
  readonly height: number;
  /** Held at ground level by a slab or floor. */
  readonly constrained: boolean;
}

/**
 * Allowable sideways load on a post in earth by IBC 1807.3 (the older ASABE EP486 formula), N.
 * Free: P = S_1 b d² / (2.34 (d + 1.09 h)), S_1 at a third of the depth; held at grade: P = S_3 b d² / (4.25 h). Both
 * are the code's d = A/2 (1 + √(1 + 4.36 h/A)), A = 2.34 P/(S_1 b), and d = √(4.25 P h/(S_3 b)), solved for P. The
 * safety is in the allowable pressures, so the factor is 1. The depth counts up to 12 ft.
 */
export function postEmbedmentLateral(input: EmbedmentInput): GroundResult {
  needPositive({ width: input.width, depth: input.depth, height: input.height });
  const soil = soilOf(input.soil);
  const d = Math.min(3.658, input.depth);
  const third = input.constrained ? 1 : 3;
  const pressure = (soil.lateral * d) / third;
  const value = input.constrained
    ? (pressure * input.width * d * d) / (4.25 * input.height)
    : (pressure * input.width * d * d) / (2.34 * (d + 1.09 * input.height));
  const symbol = input.constrained ? 'S_3' : 'S_1';
  return groundResult(
    {
      symbol: 'P',
      meaning: 'sideways load the post may take',
      formula: input.constrained ? 'P = S_3 b d² / (4.25 h)' : 'P = S_1 b d² / (2.34 (d + 1.09 h))',
      inputs: [
        given(symbol, 'allowable lateral pressure', pressure, 'stress'),
        given('b', 'width', input.width, 'length'),
        given('d', 'depth, up to 12 ft', d, 'length'),
        given('h', 'height of the push', input.height, 'length'),
      ],
      value,
      source: 'ibc2018:1807.3',
    },
    1,
    input.soil,
  );
}
