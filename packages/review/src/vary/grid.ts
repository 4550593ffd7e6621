/** Every combination of the values of some axes. */
import type { SpecEdit, SpecValue } from '@tautline/shelter';
import type { Axis } from './axes.ts';

/** More combinations than anybody reads; the axes are then to be made coarser. */
export const mostVariants = 20_000;

export function gridSize(axes: readonly Axis[]): number {
  return axes.reduce((product, axis) => product * axis.values.length, 1);
}

/**
 * The values of one combination, one for each axis; the last axis turns fastest. Throws RangeError for an
 * index outside the grid.
 */
export function valuesAt(axes: readonly Axis[], index: number): readonly SpecValue[] {
  if (!Number.isInteger(index) || index < 0 || index >= gridSize(axes))
    throw new RangeError(`${index} is outside the grid`);
  let rest = index;
  return [...axes]
    .reverse()
    .map((axis) => {
      const value = axis.values[rest % axis.values.length] as SpecValue;
      rest = Math.floor(rest / axis.values.length);
      return value;
    })
    .reverse();
}

export function editsAt(axes: readonly Axis[], index: number): readonly SpecEdit[] {
  return valuesAt(axes, index).flatMap((value, at) => axes[at]?.edits(value) ?? []);
}
