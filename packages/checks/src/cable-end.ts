/** Why an end post of a ridge cable is pressed far more than the posts between: said alike by every check of it. */
import type { Step } from '@tautline/loads';
import type { CableEnd } from '@tautline/structure';
import type { MessagePiece } from './finding.ts';
import { given, measured, step } from './judge.ts';

export function whyAtTheEnd(end: CableEnd): readonly MessagePiece[] {
  return [
    ' It is an end post: the ridge cable, pulled to ',
    measured(end.pull, 'force'),
    ', runs over its head and down to the anchor at ',
    measured(end.slope, 'angle'),
    ', and presses it down with about its whole pull. Less pull in the cable, or an anchor set further out, presses less.',
  ];
}

/** Upright share of the pull on the anchor of one end, N. */
export function upwardPull(end: CableEnd): number {
  return end.stay * Math.sin(end.slope);
}

export function stayStep(end: CableEnd): Step {
  return step(
    'S',
    'pull of the part of the cable that runs down from the end post',
    'S = H / cos α',
    [
      given('H', 'level pull of the cable', end.pull, 'force'),
      given('α', 'slope down to the anchor', end.slope, 'angle'),
    ],
    end.stay,
    'force',
    'parabola',
  );
}
