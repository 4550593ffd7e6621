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
  type GustSweep,
  gustSweep,
  type HouseAnswer,
  type Solve,
} from '@tautline/structure';
import type { CheckInput } from './check.ts';
import type { MessagePiece } from './finding.ts';
import { type FirstFailure, filmOffMargin, type GustOrder } from './gust-order.ts';
import { unrankedOf } from './gust-rest.ts';
import { measured as speed } from './judge.ts';
import { asksUnder, type Limit, type Use, usesOf, worstOf } from './limit.ts';
import { checks } from './registry.ts';
import { applies } from './run-check.ts';
import { notSurvived } from './stress.ts';

/** On which day, with what is known of the whole house, and who may stop it. */
export interface GustOptions {
  /** Day that ages are counted to, ISO; everything is as strong as new without one. */
  readonly on?: string | undefined;
  /** The whole house in space knows what braces across and side guys get. */
  readonly house?: HouseAnswer | undefined;
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
  const sweep = analysis === undefined ? undefined : gustSweep(shelter, analysis, solve);
  for (const { check, limit } of limitsOf(shelter, analysis, { on, house })) {
    if (cancelled()) throw new Cancelled();
    const { part } = limit;
    if (limit.by === 'unknown') {
      reasons.set(part.id, [limit.reason]);
      continue;
    }
    const found = gustOf(limit, site, analysis, sweep);
    if (limit.by === 'frame' && limit.bound !== undefined) {
      reasons.set(part.id, boundedBy(found?.gust ?? upTo));
      continue;
    }
    if (isAsked(limit, analysis)) asked.add(part.id);
    if (found === undefined || found.gust > upTo) continue;
    const { gust, loadCase, estimated = false, status } = found;
    const what = status === 'no answer' ? 'the frame finds no balance any more' : limit.gives;
    const { id, origin } = part;
    failures.push({
      part: id,
      origin,
      what,
      check,
      gust,
      loadCase,
      sacrificial: limit.sacrificial,
      estimated,
    });
  }
  failures.sort((a, b) => a.gust - b.gust || (a.part < b.part ? -1 : 1));
  const calm = failures.find(({ gust, sacrificial }) => gust === 0 && !sacrificial);
  const first = failures.find((failure) => !failure.sacrificial);
  return {
    failures,
    unranked: unrankedOf(shelter, failures, asked, reasons, upTo),
    upTo,
    ...(calm === undefined ? {} : { withoutWind: calm }),
    ...(first === undefined || calm !== undefined
      ? {}
      : { filmOff: { gust: filmOffMargin * first.gust, margin: filmOffMargin, first } }),
  };
}

/** Every limit of every check, with the check that states it. */
export function limitsOf(
  shelter: Shelter,
  analysis: FrameAnalysis | undefined,
  { on, house }: Pick<GustOptions, 'on' | 'house'>,
): readonly { readonly check: string; readonly limit: Limit }[] {
  const input: CheckInput = {
    shelter,
    frame: analysis === undefined ? { ok: false, reason: 'there is no frame' } : { ok: true, analysis },
    ...(on === undefined ? {} : { on }),
    ...(house === undefined ? {} : { house }),
  };
  return checks.flatMap((check) =>
    check.limits === undefined ||
    !applies(check, input) ||
    (check.needs === 'frame' && analysis === undefined) ||
    (check.needs === 'house' && house?.ok !== true)
      ? []
      : check.limits(input).map((limit) => ({ check: check.id, limit })),
  );
}

/** The lowest gust at which a limit is reached; 0 where it is passed without wind. */
function gustOf(
  limit: Exclude<Limit, { by: 'unknown' }>,
  site: number,
  analysis: FrameAnalysis | undefined,
  sweep: GustSweep | undefined,
): (GustLimit & { readonly status?: string }) | undefined {
  switch (limit.by) {
    case 'balance': {
      const broken = analysis && notSurvived(analysis).find(({ load }) => load.wind === undefined);
      if (broken !== undefined) return { gust: 0, loadCase: broken.load.title, status: broken.status };
      return sweep?.givesWay();
    }
    case 'pressure': {
      const calm = worstOf([limit.use(0), ...(limit.calm ?? [])]);
      if (calm !== undefined && calm.utilisation > 1) return { gust: 0, loadCase: calm.loadCase };
      return gustAt(site, limit.use);
    }
    case 'frame': {
      if (analysis === undefined) return undefined;
      const still = analysis.responses.filter(({ load }) => load.wind === undefined);
      const calm = worstOf(usesOf(limit, { responses: still }));
      if (calm !== undefined && calm.utilisation > 1) return { gust: 0, loadCase: calm.loadCase };
      return sweep?.limitOf((response) =>
        asksUnder(limit, response) ? limit.use(response)?.utilisation : undefined,
      );
    }
  }
}

/** Whether a part is asked for by any load that was looked at, so that it can be said to reach no limit. */
function isAsked(limit: Exclude<Limit, { by: 'unknown' }>, analysis: FrameAnalysis | undefined): boolean {
  if (limit.by === 'balance') return false;
  if (limit.by === 'pressure') return limit.use(1) !== undefined;
  return analysis?.responses.some((response) => limit.use(response) !== undefined) === true;
}

/** What the typical frame can say of a guy: as if the guys alone held the house against the whole push. */
function boundedBy(gust: number): readonly MessagePiece[] {
  return [
    'its share of the wind only the whole house in space (the full analysis) tells; even if the guys held all of it, not before ',
    speed(gust, 'speed'),
  ];
}

/** Steps in which a limit by the pressure is looked for, as a share of the site's gust: own choice. */
const rung = 0.25;

/** Lowest gust at which a share passes 1, by rungs and then by halving; undefined when it does not. */
function gustAt(site: number, use: (factor: number) => Use | undefined): GustLimit | undefined {
  const passed = (multiple: number): boolean => (use(multiple * multiple)?.utilisation ?? 0) >= 1;
  let high = rung;
  while (!passed(high)) {
    high += rung;
    if (high > furthestGust) return undefined;
  }
  let low = high - rung;
  for (let pass = 0; pass < 30; pass++) {
    const middle = (low + high) / 2;
    if (passed(middle)) high = middle;
    else low = middle;
  }
  return { gust: high * site, loadCase: use(high * high)?.loadCase ?? 'wind' };
}
