import type { Check } from './check.ts';
import { bendRadius } from './checks/bend-radius.ts';
import { bowDeflection } from './checks/bow-deflection.ts';
import { crossFittingAngle } from './checks/cross-fitting-angle.ts';
import { filmGrade } from './checks/film-grade.ts';
import { filmLife } from './checks/film-life.ts';
import { filmPonding } from './checks/film-ponding.ts';
import { framePonding } from './checks/frame-ponding.ts';
import { lockedInStress } from './checks/locked-in-stress.ts';
import { overSpan } from './checks/over-span.ts';
import { pullOut } from './checks/pull-out.ts';
import { rafterPonding } from './checks/rafter-ponding.ts';
import { railSpan } from './checks/rail-span.ts';
import { requirement } from './checks/requirement.ts';
import { rollWidth } from './checks/roll-width.ts';
import { stockLength } from './checks/stock-length.ts';
import { weakCoupler } from './checks/weak-coupler.ts';

/** Every check, in the order a report shows them: what is bought first, then what is made of it. */
export const checks: readonly Check[] = [
  filmGrade,
  rollWidth,
  stockLength,
  bendRadius,
  lockedInStress,
  overSpan,
  bowDeflection,
  filmPonding,
  framePonding,
  rafterPonding,
  weakCoupler,
  crossFittingAngle,
  railSpan,
  pullOut,
  filmLife,
  requirement,
];

/** The check with that id, if there is one. */
export function checkOf(id: string): Check | undefined {
  return checks.find((check) => check.id === id);
}
