/**
 * First-failure gust: the wind is raised until each part comes to the limit its own check sets, with the
 * combinations and safety factors of the site's load basis kept. So a part whose check passes at the site's
 * gust has a higher gust here, and the real thing will usually stand more than the number says.
 */
import type { Shelter } from '@tautline/shelter';
import {
  Cancelled,
  type FrameAnalysis,
  furthestGust,
  type GustLimit,
  gustSweep,
  type HouseAnswer,
  type Solve,
} from '@tautline/structure';
import type { MessagePiece } from './finding.ts';
import { type FirstFailure, filmOffMargin, type GustOrder, type Ranked } from './gust-order.ts';
import { measured } from './gust-parts.ts';
import { scaledByPressure } from './gust-pressure.ts';
import { unrankedOf } from './gust-rest.ts';
import { bracedInHouse, endsInHouse, guyBounds } from './gust-rigging.ts';
import { measured as speed } from './judge.ts';

/** On which day, with what is known of the whole house, and who may stop it. */
export interface GustOptions {
  /** Day that ages are counted to, ISO; everything is as strong as new without one. */
  readonly on?: string;
  /** The whole house in space knows what braces across and side guys get. */
  readonly house?: HouseAnswer;
  /** Asked between parts; when true `Cancelled` is thrown. */
  readonly cancelled?: () => boolean;
  /** Finds what was solved before. */
  readonly solve?: Solve | undefined;
}

/**
 * The order in which parts give way, lowest gust first, the parts that have no place in it with the reason, and the
 * gust by which the film should be off. A cap has no frame analysis, and needs none.
 */
export function gustOrder(
  shelter: Shelter,
  analysis: FrameAnalysis | undefined,
  { on, house, cancelled = () => false, solve }: GustOptions = {},
): GustOrder {
  const site = shelter.site.gust;
  const upTo = furthestGust * site;
  const failures: FirstFailure[] = [];
  const asked = new Set<string>();
  const reasons = new Map<string, readonly MessagePiece[]>();
  const add = ({ part, what, check, sacrificial }: Ranked, limit: GustLimit): void => {
    const { gust, loadCase, estimated = false } = limit;
    if (gust > upTo) return;
    const { id, origin } = part;
    failures.push({ part: id, origin, what, check, gust, loadCase, sacrificial, estimated });
  };
  if (analysis !== undefined) {
    const sweep = gustSweep(shelter, analysis, solve);
    for (const { measure, ...ranked } of measured(shelter, analysis, on)) {
      if (cancelled()) throw new Cancelled();
      const limit = sweep.limitOf(measure);
      if (limit !== undefined) add(ranked, limit);
      if (analysis.responses.some((response) => measure(response) !== undefined)) asked.add(ranked.part.id);
    }
    if (house?.ok !== true)
      for (const { measure, part } of guyBounds(shelter)) {
        if (cancelled()) throw new Cancelled();
        reasons.set(part.id, boundedBy(sweep.limitOf(measure)?.gust ?? upTo));
      }
    const broken = sweep.givesWay();
    if (broken !== undefined) {
      const what =
        broken.status === 'gives way' ? 'the whole frame gives way' : 'the frame finds no balance any more';
      const { roof } = shelter;
      add({ part: roof, what, check: 'over-span', sacrificial: roof.sacrificial === true }, broken);
    }
  }
  for (const { use, loadCase, ...ranked } of [
    ...scaledByPressure(shelter, on),
    ...bracedInHouse(shelter, house),
    ...endsInHouse(shelter, house),
  ]) {
    if (cancelled()) throw new Cancelled();
    const gust = gustAt(site, use);
    if (gust !== undefined) add(ranked, { gust, loadCase });
    if (use(1) !== undefined) asked.add(ranked.part.id);
  }
  failures.sort((a, b) => a.gust - b.gust || (a.part < b.part ? -1 : 1));
  const first = failures.find((failure) => !failure.sacrificial);
  return {
    failures,
    unranked: unrankedOf(shelter, failures, asked, reasons, upTo),
    upTo,
    ...(first === undefined
      ? {}
      : { filmOff: { gust: filmOffMargin * first.gust, margin: filmOffMargin, first } }),
  };
}

/** What the typical frame can say of a guy: as if the guys alone held the house against the whole push. */
function boundedBy(gust: number): readonly MessagePiece[] {
  return [
    'its share of the wind only the whole house in space (the full analysis) tells; even if the guys held all of it, not before ',
    speed(gust, 'speed'),
  ];
}

/** Gust at which a share that grows with the pressure passes 1, by halving; undefined when it does not. */
function gustAt(site: number, use: (factor: number) => number | undefined): number | undefined {
  const at = (multiple: number): number | undefined => use(multiple * multiple);
  const most = at(furthestGust);
  const calm = at(0);
  if (most === undefined || most < 1) return undefined;
  if (calm !== undefined && calm >= 1) return 0;
  let low = 0;
  let high = furthestGust;
  for (let pass = 0; pass < 30; pass++) {
    const middle = (low + high) / 2;
    if ((at(middle) ?? 0) >= 1) high = middle;
    else low = middle;
  }
  return high * site;
}
