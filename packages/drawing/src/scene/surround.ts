import { type Bounds, boundsOf } from './bounds.ts';
import { type Measured, stackDimensions } from './dimension.ts';
import type { DimensionShape } from './shapes.ts';

export interface Surround {
  readonly below?: readonly Measured[];
  readonly above?: readonly Measured[];
  readonly left?: readonly Measured[];
  readonly right?: readonly Measured[];
}

/** Dimensions on all sides of a subject; the upright ones stand clear of level ones that stick out at a corner. */
export function surroundDimensions(subject: Bounds, sides: Surround): readonly DimensionShape[] {
  const level = [
    ...stackDimensions('below', subject.bottom, sides.below ?? []),
    ...stackDimensions('above', subject.top, sides.above ?? []),
  ];
  const reach = level.length === 0 ? subject : boundsOf(level);
  return [
    ...level,
    ...stackDimensions('left', Math.min(subject.left, reach.left), sides.left ?? []),
    ...stackDimensions('right', Math.max(subject.right, reach.right), sides.right ?? []),
  ];
}
