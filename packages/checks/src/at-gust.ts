/** What every part takes of its limit at one gust: the same limits that put the first-failure gusts in order. */
import type { Shelter } from '@tautline/shelter';
import { analysisAtGust, blowsForStrength, type FrameAnalysis, type Response } from '@tautline/structure';
import { limitsOf } from './gust.ts';
import { type Limit, type Use, worstOf } from './limit.ts';

export interface GustUse {
  readonly part: string;
  /** What gives at the limit, e.g. 'the bow bends past its strength'. */
  readonly what: string;
  /** Check that sets the limit. */
  readonly check: string;
  /** Declared to give way first. */
  readonly sacrificial: boolean;
  /** Demand over capacity; 1 is the limit. */
  readonly use: number;
  readonly loadCase: string;
}

export interface AtGust {
  /** 3 s gust at 10 m in the terms of the site's, m/s. */
  readonly gust: number;
  /** The frame at that gust. */
  readonly analysis: FrameAnalysis;
  /** Hardest first. */
  readonly uses: readonly GustUse[];
  /** The combination under which the frame as a whole does not hold any more. */
  readonly breaks?: { readonly loadCase: string; readonly status: 'gives way' | 'no answer' };
}

/** Throws RangeError on a gust that is negative or not finite. `on` is the day that ages are counted to, ISO. */
export function atGust(shelter: Shelter, analysis: FrameAnalysis, gust: number, on?: string): AtGust {
  const blown = analysisAtGust(shelter, analysis, gust);
  const responses = blown.responses.filter(({ load }) => blowsForStrength(load));
  const uses: GustUse[] = [];
  const factor = (gust / shelter.site.gust) ** 2;
  for (const { check, limit } of limitsOf(shelter, blown, { on })) {
    const worst = worstAt(limit, responses, factor);
    if (worst === undefined || limit.by === 'unknown' || !Number.isFinite(worst.utilisation)) continue;
    const { utilisation, loadCase } = worst;
    const { part, gives: what, sacrificial } = limit;
    uses.push({ part: part.id, what, check, sacrificial, use: Math.max(0, utilisation), loadCase });
  }
  const broken = responses.find(({ status }) => status !== 'holds');
  return {
    gust,
    analysis: blown,
    uses: uses.sort((a, b) => b.use - a.use || (a.part < b.part ? -1 : 1)),
    ...(broken === undefined || broken.status === 'holds'
      ? {}
      : { breaks: { loadCase: broken.load.title, status: broken.status } }),
  };
}

/** What a limit takes in the wind of the gust; nothing of what only bounds it. */
function worstAt(limit: Limit, responses: readonly Response[], factor: number): Use | undefined {
  if (limit.by === 'pressure') return limit.use(factor);
  if (limit.by !== 'frame' || limit.bound !== undefined) return undefined;
  return worstOf(responses.filter(({ status }) => status === 'holds').map(limit.use));
}
