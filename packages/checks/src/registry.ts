import type { Check } from './check.ts';
import { abrasion } from './checks/abrasion.ts';
import { beamBearing } from './checks/beam-bearing.ts';
import { bendRadius } from './checks/bend-radius.ts';
import { bowBuckling } from './checks/bow-buckling.ts';
import { bowDeflection } from './checks/bow-deflection.ts';
import { cableAnchor } from './checks/cable-anchor.ts';
import { cableSlack } from './checks/cable-slack.ts';
import { crossFittingAngle } from './checks/cross-fitting-angle.ts';
import { cutWaste } from './checks/cut-waste.ts';
import { dissimilarMetals } from './checks/dissimilar-metals.ts';
import { eaveSag } from './checks/eave-sag.ts';
import { edgeRail } from './checks/edge-rail.ts';
import { endFrame } from './checks/end-frame.ts';
import { fanFailure } from './checks/fan-failure.ts';
import { fanPressure } from './checks/fan-pressure.ts';
import { fasteningPull } from './checks/fastening-pull.ts';
import { filledPipe } from './checks/filled-pipe.ts';
import { filmGrade } from './checks/film-grade.ts';
import { filmLife } from './checks/film-life.ts';
import { filmPonding } from './checks/film-ponding.ts';
import { filmStressCheck } from './checks/film-stress.ts';
import { flatCrown } from './checks/flat-crown.ts';
import { flutter } from './checks/flutter.ts';
import { footBearing } from './checks/foot-bearing.ts';
import { frameGivesWay } from './checks/frame-gives-way.ts';
import { framePonding } from './checks/frame-ponding.ts';
import { guyAnchor } from './checks/guy-anchor.ts';
import { guyPullCheck } from './checks/guy-pull.ts';
import { heat } from './checks/heat.ts';
import { hotContact } from './checks/hot-contact.ts';
import { hotSlack } from './checks/hot-slack.ts';
import { irrigation } from './checks/irrigation.ts';
import { jointKind } from './checks/joint-kind.ts';
import { lastBay } from './checks/last-bay.ts';
import { lateralFoot } from './checks/lateral-foot.ts';
import { lightCheck } from './checks/light.ts';
import { lockedInStress } from './checks/locked-in-stress.ts';
import { meshAirflow } from './checks/mesh-airflow.ts';
import { missingPrice } from './checks/missing-price.ts';
import { neighbourGap } from './checks/neighbour-gap.ts';
import { overSpan } from './checks/over-span.ts';
import { overturning } from './checks/overturning.ts';
import { postBuckling } from './checks/post-buckling.ts';
import { pullOut } from './checks/pull-out.ts';
import { purlinSpan } from './checks/purlin-span.ts';
import { racking } from './checks/racking.ts';
import { rafterPonding } from './checks/rafter-ponding.ts';
import { railSpan } from './checks/rail-span.ts';
import { requirement } from './checks/requirement.ts';
import { rollWidth } from './checks/roll-width.ts';
import { rot } from './checks/rot.ts';
import { runoff } from './checks/runoff.ts';
import { sheetHold } from './checks/sheet-hold.ts';
import { siteFacts } from './checks/site-facts.ts';
import { sliding } from './checks/sliding.ts';
import { spliceOverlap } from './checks/splice-overlap.ts';
import { staleAcceptance } from './checks/stale-acceptance.ts';
import { stockLength } from './checks/stock-length.ts';
import { stormOrder } from './checks/storm-order.ts';
import { tieBuckling } from './checks/tie-buckling.ts';
import { tierDifference } from './checks/tier-difference.ts';
import { wallCover } from './checks/wall-cover.ts';
import { weakCoupler } from './checks/weak-coupler.ts';
import { wholeHouse } from './checks/whole-house.ts';
import { withstand } from './checks/withstand.ts';

/** Every check, in the order a report shows them: what is bought first, then what is made of it. */
export const checks: readonly Check[] = [
  filmGrade,
  rollWidth,
  stockLength,
  cutWaste,
  lastBay,
  missingPrice,
  frameGivesWay,
  bendRadius,
  lockedInStress,
  overSpan,
  bowBuckling,
  postBuckling,
  tieBuckling,
  bowDeflection,
  flatCrown,
  filmPonding,
  framePonding,
  rafterPonding,
  fanFailure,
  weakCoupler,
  spliceOverlap,
  jointKind,
  crossFittingAngle,
  railSpan,
  edgeRail,
  beamBearing,
  cableAnchor,
  cableSlack,
  guyPullCheck,
  guyAnchor,
  purlinSpan,
  sheetHold,
  eaveSag,
  pullOut,
  overturning,
  sliding,
  lateralFoot,
  footBearing,
  racking,
  wholeHouse,
  endFrame,
  tierDifference,
  fanPressure,
  filmStressCheck,
  fasteningPull,
  wallCover,
  flutter,
  hotSlack,
  abrasion,
  hotContact,
  rot,
  filledPipe,
  dissimilarMetals,
  heat,
  lightCheck,
  meshAirflow,
  runoff,
  neighbourGap,
  irrigation,
  stormOrder,
  withstand,
  filmLife,
  requirement,
  siteFacts,
  staleAcceptance,
];

/** The check with that id, if there is one. */
export function checkOf(id: string): Check | undefined {
  return checks.find((check) => check.id === id);
}

const needing = (what: NonNullable<Check['needs']>): ReadonlySet<string> =>
  new Set(checks.filter(({ needs }) => needs === what).map(({ id }) => id));

/** Ids of the checks that judge by the order in which parts give way. */
export const gustChecks = needing('gusts');

/** Ids of the checks that only the whole house in space answers; the live tier says nothing about them. */
export const wholeHouseChecks = needing('house');
