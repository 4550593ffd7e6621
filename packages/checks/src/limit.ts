/**
 * The limits of a shelter: the part, the way it gives way, and its share of what it may take as a function of a state
 * of the house. A check states each of its limits once; the verdict at the site's loads, the order in which parts give
 * way, the film-off gust, the gust slider and the calculation all read that statement.
 */
import type { Part } from '@tautline/shelter';
import type { FrameAnalysis, Response } from '@tautline/structure';
import type { Judged } from './judge.ts';

/** What a finding says of a limit beyond its share. */
export type Told = Omit<Judged, 'part' | 'utilisation' | 'loadCase'>;

/** How much of a limit one state of the house takes. */
export interface Use {
  /** Demand over capacity: 1 is the limit. */
  readonly utilisation: number;
  readonly loadCase: string;
  /** In words and steps; worked out only for what is shown. */
  readonly tell: () => Told;
}

interface WayOfGivingWay {
  readonly part: Pick<Part, 'id' | 'origin'>;
  /** What gives, e.g. 'the bow bends past its strength'. */
  readonly gives: string;
  /** Declared to give way first. */
  readonly sacrificial: boolean;
}

/** What a limit takes without any wind, beside the combinations of the frame: water at rest, cold, its own pull. */
interface Calm {
  readonly calm?: readonly Use[];
  /** Why there is nothing to tell where no load asks for it; nothing is told when left out. */
  readonly unasked?: string;
}

/** Asked under each combination on the typical frame. */
export interface FrameLimit extends WayOfGivingWay, Calm {
  readonly by: 'frame';
  /** Undefined where the combination has no part in it. */
  readonly use: (response: Response) => Use | undefined;
  /** Asked on the day of building, too: where the thrust of a freshly sprung bow counts. */
  readonly onTheDay?: true;
  /** The use is more than what will be: it can pass, and where it does not, this says why nothing is told. */
  readonly bound?: string;
}

/** Asked by the wind pressure alone: `factor` times that of the site's gust. */
export interface PressureLimit extends WayOfGivingWay, Calm {
  readonly by: 'pressure';
  readonly use: (factor: number) => Use | undefined;
}

/** Asked of the frame as a whole: whether it finds a balance. */
export interface BalanceLimit extends WayOfGivingWay {
  readonly by: 'balance';
}

/** A part that may give way and of which nothing can be told. */
export interface UnknownLimit {
  readonly by: 'unknown';
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly reason: string;
}

export type Limit = FrameLimit | PressureLimit | BalanceLimit | UnknownLimit;

export const unknown = (part: UnknownLimit['part'], reason: string): UnknownLimit => ({
  by: 'unknown',
  part,
  reason,
});

/** The use that is furthest from passing; no number is worse than any. The first of equals. */
export function worstOf(uses: readonly (Use | undefined)[]): Use | undefined {
  let worst: Use | undefined;
  for (const use of uses) {
    if (use === undefined) continue;
    if (!Number.isFinite(use.utilisation)) return use;
    if (worst === undefined || use.utilisation > worst.utilisation) worst = use;
  }
  return worst;
}

/** Whether a limit is asked under a combination: not for deflections, and on the day of building only where told. */
export function asksUnder(
  { onTheDay }: Pick<FrameLimit, 'onTheDay'>,
  { load, condition }: Response,
): boolean {
  return load.use !== 'service' && (condition !== 'built' || onTheDay === true);
}

/** What a limit takes under every combination the frame survives, and without wind. */
export function usesOf(limit: FrameLimit, { responses }: Pick<FrameAnalysis, 'responses'>): readonly Use[] {
  const held = responses.filter((response) => response.status === 'holds' && asksUnder(limit, response));
  return [...held.map(limit.use), ...(limit.calm ?? [])].filter((use) => use !== undefined);
}

/** A use in the wind of the site's gust, taken to grow with the pressure, beside one without wind. */
export function grownByPressure(
  blown: Use | undefined,
  calm: Use | undefined,
): Pick<PressureLimit, 'by' | 'use' | 'calm'> {
  return {
    by: 'pressure',
    use: (factor) => blown && { ...blown, utilisation: factor * blown.utilisation },
    calm: calm === undefined ? [] : [calm],
  };
}
