/** Gutters along the eaves or between two houses. */
import type { Gutter } from '@tautline/shelter';
import { looseLine, metres, type TakeoffLine, type Told } from '../line.ts';

/** Spacing of gutter brackets, m: common practice, no source. */
const BRACKETS = 0.6;

/** Gutter by length, brackets by spacing and two stop ends a run; `length` is that of the house, m. */
export function gutterLines(gutter: Gutter, length: number): readonly TakeoffLine[] {
  const runs = gutter.where === 'sides' ? 2 : 1;
  const size: Told =
    gutter.across === undefined
      ? [', no size is said']
      : [', ', { value: gutter.across, kind: 'thickness' }, ' across'];
  const brackets = runs * (Math.floor(length / BRACKETS + 1e-9) + 1);
  return [
    looseLine('sundries', 'Gutter', 'length', runs * length, gutter, [
      `${runs} run(s) of `,
      metres(length),
      ...size,
    ]),
    looseLine('sundries', 'Gutter brackets', 'count', brackets, gutter, [
      `${brackets}, every `,
      metres(BRACKETS),
      ' and one more at each end (assumed: common practice, no source)',
    ]),
    looseLine('sundries', 'Gutter stop ends', 'count', 2 * runs, gutter, [
      `${2 * runs}, two a run; outlets and downpipes are not counted`,
    ]),
  ];
}
