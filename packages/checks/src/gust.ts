/**
 * First-failure gust: the wind is raised until each part comes to the limit its own check sets, with the
 * combinations and safety factors of the site's load basis kept. So a part whose check passes at the site's
 * gust has a higher gust here, and the real thing will usually stand more than the number says.
 */
import type { Shelter } from '@tautline/shelter';
import { Cancelled, type FrameAnalysis, furthestGust, type GustLimit, gustSweep } from '@tautline/structure';
import { type FirstFailure, filmOffMargin, type GustOrder, type Ranked } from './gust-order.ts';
import { measured } from './gust-parts.ts';
import { scaledByPressure } from './gust-pressure.ts';

/** On which day, and who may stop it. */
export interface GustOptions {
  /** Day that ages are counted to, ISO; everything is as strong as new without one. */
  readonly on?: string;
  /** Asked between parts; when true `Cancelled` is thrown. */
  readonly cancelled?: () => boolean;
}

/** Every part of the typical frame with the gust it gives way at, lowest first. */
export function firstFailures(
  shelter: Shelter,
  analysis: FrameAnalysis,
  { on, cancelled = () => false }: GustOptions = {},
): readonly FirstFailure[] {
  const sweep = gustSweep(shelter, analysis);
  const failures: FirstFailure[] = [];
  const furthest = furthestGust * shelter.site.gust;
  const add = (ranked: Ranked, { gust, loadCase, estimated = false }: GustLimit): void => {
    const { part, what, check, sacrificial } = ranked;
    if (gust <= furthest)
      failures.push({
        part: part.id,
        origin: part.origin,
        what,
        check,
        gust,
        loadCase,
        sacrificial,
        estimated,
      });
  };
  for (const { measure, ...ranked } of measured(shelter, analysis, on)) {
    if (cancelled()) throw new Cancelled();
    const limit = sweep.limitOf(measure);
    if (limit !== undefined) add(ranked, limit);
  }
  for (const { use, loadCase, ...ranked } of scaledByPressure(shelter, analysis, on)) {
    if (cancelled()) throw new Cancelled();
    const gust = gustAt(shelter.site.gust, use);
    if (gust !== undefined) add(ranked, { gust, loadCase });
  }
  const broken = sweep.givesWay();
  if (broken !== undefined) {
    const what =
      broken.status === 'gives way' ? 'the whole frame gives way' : 'the frame finds no balance any more';
    const { roof } = shelter;
    add({ part: roof, what, check: 'over-span', sacrificial: roof.sacrificial === true }, broken);
  }
  return failures.sort((a, b) => a.gust - b.gust || (a.part < b.part ? -1 : 1));
}

/** The ranking with the gust by which the film should be off. */
export function gustOrder(shelter: Shelter, analysis: FrameAnalysis, options: GustOptions = {}): GustOrder {
  const failures = firstFailures(shelter, analysis, options);
  const first = failures.find((failure) => !failure.sacrificial);
  return {
    failures,
    upTo: furthestGust * shelter.site.gust,
    ...(first === undefined
      ? {}
      : { filmOff: { gust: filmOffMargin * first.gust, margin: filmOffMargin, first } }),
  };
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
