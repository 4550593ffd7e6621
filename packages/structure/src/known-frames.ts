/**
 * What was worked out of frames before. While somebody types, most edits are of prices, films, crops and claims, and
 * leave the frame as it is; then its whole analysis is found again.
 */
import type { Shelter } from '@tautline/shelter';
import { analyseFrame } from './analyse.ts';
import { kept } from './response/kept.ts';
import { type Solve, solvedFrames } from './response/solved-frames.ts';

export interface KnownFrames {
  /** Solves a plane frame, or finds what it came to. */
  readonly solve: Solve;
  /** Analyses the typical frame of a shelter, or finds what that came to. */
  readonly analyse: typeof analyseFrame;
}

/** Analyses kept: each some hundred kB. */
const usual = 12;

/** Keeps the last `most` analyses and the last frames solved. */
export function knownFrames(most = usual): KnownFrames {
  const solve = solvedFrames();
  const analyses = new Map<string, ReturnType<typeof analyseFrame>>();
  return {
    solve,
    analyse: (shelter, options = {}) => {
      const bare = bareFrame(shelter);
      const said = JSON.stringify([bare, options.person, options.soil]);
      const known = analyses.get(said);
      // Worked out of the copy whose words it is kept under: nothing else can have a part in it.
      const answer = known ?? analyseFrame(bare, { ...options, solve });
      // What ran out of time may have an answer another time.
      if (answer.ok && answer.analysis.noPonding === undefined) kept(analyses, said, answer, most);
      return answer;
    },
  };
}

/** All that bears on the frame, as words can say it: not what it costs, when it was put up, or what is asked of it. */
function bareFrame(shelter: Shelter): Shelter {
  const { irrigation: _irrigation, built: _built, ...rest } = shelter;
  return bare({
    ...rest,
    assumed: [],
    unmodelled: [],
    requirements: [],
    acceptances: [],
    things: [],
  }) as Shelter;
}

/** Stock items, which say the same from one edit to the next, without their prices. */
const bareItems = new WeakMap<object, object>();

/** Plain data without prices and dates, and without what a text would not tell apart: no value, and minus nothing. */
function bare(value: unknown): unknown {
  if (value === 0) return 0;
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(bare);
  const known = bareItems.get(value);
  if (known !== undefined) return known;
  const copy: Record<string, unknown> = {};
  for (const [key, part] of Object.entries(value)) {
    if (key === 'installed' || part === undefined) continue;
    copy[key] = key === 'prices' ? [] : bare(part);
  }
  if ('prices' in value) bareItems.set(value, copy);
  return copy;
}
