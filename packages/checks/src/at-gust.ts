/** What every part takes of its limit at one gust: the same limits that put the first-failure gusts in order. */
import type { Shelter } from '@tautline/shelter';
import { analysisAtGust, blowsForStrength, type FrameAnalysis } from '@tautline/structure';
import { measured } from './gust-parts.ts';
import { scaledByPressure } from './gust-pressure.ts';

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
  const add = (
    { part, what, check, sacrificial }: Omit<GustUse, 'part' | 'use' | 'loadCase'> & { part: { id: string } },
    use: number | undefined,
    loadCase: string,
  ): void => {
    if (use !== undefined && Number.isFinite(use))
      uses.push({ part: part.id, what, check, sacrificial, use: Math.max(0, use), loadCase });
  };
  for (const entry of measured(shelter, blown, on)) {
    let worst: { readonly use: number; readonly loadCase: string } | undefined;
    for (const response of responses) {
      const use = response.status === 'holds' ? entry.measure(response) : undefined;
      if (use !== undefined && !(use <= (worst?.use ?? Number.NEGATIVE_INFINITY)))
        worst = { use, loadCase: response.load.title };
    }
    if (worst !== undefined) add(entry, worst.use, worst.loadCase);
  }
  for (const entry of scaledByPressure(shelter, on))
    add(entry, entry.use((gust / shelter.site.gust) ** 2), entry.loadCase);
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
