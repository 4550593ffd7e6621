/**
 * The typical frame under other gusts than the site's. Wind pressure goes with the square of the speed in
 * both standards, so the wind cases are scaled and the same combinations solved again from the built state.
 */
import type { Shelter } from '@tautline/shelter';
import type { CombinedLoad } from '../actions/load-case.ts';
import type { FrameAnalysis } from '../analyse.ts';
import type { Response } from '../response/response.ts';
import { respond } from '../response/solve.ts';
import type { Solve } from '../response/solved-frames.ts';
import { stateIn } from '../system/condition.ts';
import { blowsForStrength, loadsAtGust, searchBound } from './at-gust.ts';

/** Gusts tried, as multiples of the site's: down to calm, and up to three times as fast (nine times the load). */
const rungsDown = [0.75, 0.5, 0.25, 0];
const rungsUp = [1.3, 1.7, 2.2, 3];

/** Fastest gust looked at, as a multiple of the site's. */
export const furthestGust = 3;

/** Corrections of a limit gust once it lies between two rungs. */
const corrections = 5;
/** The same for the gust at which the frame breaks: each costs a search for a balance that is not there. */
const breakingCorrections = 3;
/** A gust is known well enough at this share of the site's. */
const closeEnough = 0.002;

/** What a part takes of its limit under one combination: 1 is the limit; undefined where it has no part in it. */
export type Measure = (response: Response) => number | undefined;

export interface GustLimit {
  /** 3 s gust in the terms of the site's, m/s; 0 when the limit is passed without wind. */
  readonly gust: number;
  /** Title of the combination that brings it there. */
  readonly loadCase: string;
  /**
   * True when the frame as a whole breaks before: the part's share at the last gust that the frame held is
   * carried on with the square of the gust.
   */
  readonly estimated?: boolean;
}

/** Where the frame as a whole stops holding. */
export interface BreakingGust extends GustLimit {
  readonly status: Response['status'];
}

export interface GustSweep {
  /** Gust from which the frame as a whole gives way or has no answer; undefined when it holds at all rungs. */
  givesWay(): BreakingGust | undefined;
  /** Lowest gust at which a measure reaches 1; undefined when it does not in the gusts looked at. */
  limitOf(measure: Measure): GustLimit | undefined;
}

interface Rung {
  readonly gust: number;
  readonly responses: readonly Response[];
  readonly broken: Response | undefined;
}

/** Opens the sweep: the site's gust is taken from the analysis, other gusts are solved when asked for. */
export function gustSweep(
  shelter: Shelter,
  analysis: Pick<FrameAnalysis, 'cases' | 'states' | 'responses'>,
  solve?: Solve,
): GustSweep {
  const site = shelter.site.gust;
  const known = new Map<string, Response>();
  for (const response of analysis.responses)
    if (blowsForStrength(response.load)) known.set(key(site, response.load.id), response);

  const loadsAt = new Map<number, readonly CombinedLoad[]>();
  const loads = (gust: number): readonly CombinedLoad[] => {
    let found = loadsAt.get(gust);
    if (found === undefined) {
      found = loadsAtGust(shelter, analysis.cases, gust).filter(blowsForStrength);
      loadsAt.set(gust, found);
    }
    return found;
  };
  const responseAt = (gust: number, load: CombinedLoad): Response => {
    const name = key(gust, load.id);
    const found =
      known.get(name) ??
      respond(stateIn(analysis.states, load.duration), load, load.duration, {
        corrections: searchBound,
        solve,
      });
    known.set(name, found);
    return found;
  };
  const rungAt = (gust: number): Rung => {
    const responses = loads(gust).map((load) => responseAt(gust, load));
    return { gust, responses, broken: responses.find((response) => response.status !== 'holds') };
  };

  const rungs = new Map<number, Rung>();
  const rung = (multiple: number): Rung => {
    const found = rungs.get(multiple) ?? rungAt(multiple * site);
    rungs.set(multiple, found);
    return found;
  };
  const useAt = (at: Rung, measure: Measure): Use | undefined => worstOf(at.responses, measure);
  /** Two neighbouring rungs between which a question turns from no to yes, walking from the site's gust. */
  const bracket = (yes: (at: Rung) => boolean): { low: Rung | undefined; high: Rung } | undefined => {
    let last = rung(1);
    if (yes(last)) {
      for (const multiple of rungsDown) {
        const next = rung(multiple);
        if (!yes(next)) return { low: next, high: last };
        last = next;
      }
      return { low: undefined, high: last };
    }
    for (const multiple of rungsUp) {
      const next = rung(multiple);
      if (yes(next)) return { low: last, high: next };
      if (next.broken !== undefined) return undefined;
      last = next;
    }
    return undefined;
  };

  return {
    givesWay() {
      const found = bracket((at) => at.broken !== undefined);
      return found === undefined
        ? undefined
        : whereItBreaks(found.low?.gust ?? 0, found.high, loads, responseAt);
    },
    limitOf(measure) {
      const over = (at: Rung): boolean => (useAt(at, measure)?.value ?? 0) >= 1;
      const found = bracket((at) => at.broken !== undefined || over(at));
      if (found === undefined) return undefined;
      if (!over(found.high)) return carriedOn(found.low ?? found.high, measure);
      const upper = useAt(found.high, measure)!;
      const lower = found.low === undefined ? undefined : useAt(found.low, measure);
      if (found.low === undefined || lower === undefined)
        return { gust: found.high.gust, loadCase: upper.load.title };
      return between(found.low.gust, found.high.gust, lower, upper, (gust) => {
        // Only the combinations that govern at either end are solved again in between.
        const ids = new Set([lower.load.id, upper.load.id]);
        const some = loads(gust)
          .filter((load) => ids.has(load.id))
          .map((load) => responseAt(gust, load));
        return worstOf(some, measure);
      });
    },
  };
}

/** Limit of a part that outlives the frame: its share grows with the square of the gust. */
function carriedOn(last: Rung, measure: Measure): GustLimit | undefined {
  const use = worstOf(last.responses, measure);
  if (use === undefined || use.value <= 0) return undefined;
  const gust = last.gust / Math.sqrt(use.value);
  return { gust, loadCase: use.load.title, estimated: true };
}

interface Use {
  readonly value: number;
  readonly load: CombinedLoad;
}

function worstOf(responses: readonly Response[], measure: Measure): Use | undefined {
  let worst: Use | undefined;
  for (const response of responses) {
    const value = response.status === 'holds' ? measure(response) : undefined;
    if (value !== undefined && Number.isFinite(value) && (worst === undefined || value > worst.value))
      worst = { value, load: response.load };
  }
  return worst;
}

/** Closes in between the last rung that held and the first that did not; the lower end is returned. */
function whereItBreaks(
  from: number,
  breaking: Rung,
  loads: (gust: number) => readonly CombinedLoad[],
  responseAt: (gust: number, load: CombinedLoad) => Response,
): BreakingGust {
  // What holds at the faster gust held at the slower ones too, so only the broken ones are solved again.
  const suspects = new Set(
    breaking.responses.filter((response) => response.status !== 'holds').map((response) => response.load.id),
  );
  let broken = breaking.broken!;
  let low = from;
  let high = breaking.gust;
  for (let pass = 0; pass < breakingCorrections && high > 0; pass++) {
    // The share of the load that was reached says about where; then halving.
    const guess = high * Math.sqrt(broken.reached);
    const middle = pass === 0 && guess > low && guess < high ? guess : (low + high) / 2;
    const found = loads(middle)
      .filter((load) => suspects.has(load.id))
      .map((load) => responseAt(middle, load))
      .find((response) => response.status !== 'holds');
    if (found === undefined) low = middle;
    else {
      high = middle;
      broken = found;
    }
  }
  return { gust: low, loadCase: broken.load.title, status: broken.status };
}

/**
 * Where a use that grows with the square of the gust passes 1: regula falsi on the square, kept between its
 * two ends, with the ends' weights halved when one end stays (Illinois rule), so that it never stalls.
 */
function between(
  from: number,
  to: number,
  lower: Use,
  upper: Use,
  at: (gust: number) => Use | undefined,
): GustLimit {
  let low = { square: from * from, miss: lower.value - 1 };
  let high = { square: to * to, miss: upper.value - 1 };
  let load = upper.load;
  let square = high.square;
  let side = 0;
  for (let pass = 0; pass < corrections; pass++) {
    square = low.square - (low.miss * (high.square - low.square)) / (high.miss - low.miss);
    const gust = Math.sqrt(Math.max(0, square));
    const use = at(gust);
    if (use === undefined) break;
    const miss = use.value - 1;
    if (miss >= 0) {
      load = use.load;
      high = { square, miss };
      if (side > 0) low = { ...low, miss: low.miss / 2 };
      side = 1;
    } else {
      low = { square, miss };
      if (side < 0) high = { ...high, miss: high.miss / 2 };
      side = -1;
    }
    if (Math.abs(miss) < closeEnough) break;
  }
  return { gust: Math.sqrt(Math.max(0, square)), loadCase: load.title };
}

function key(gust: number, load: string): string {
  return `${gust}|${load}`;
}
