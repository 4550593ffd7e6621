/**
 * What was worked out of frames before. While somebody types, most edits are of prices, films, crops and claims, and
 * leave the frame as it is; then its whole analysis is found again.
 */
import type { Shelter } from '@tautline/shelter';
import { type AnalyseOptions, analyseFrame } from './analyse.ts';
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
      const said = frameSaid(shelter, options);
      const known = analyses.get(said);
      // Worked out of the words that it is kept under: nothing else can have a part in it.
      const answer = known ?? analyseFrame(JSON.parse(said).shelter as Shelter, { ...options, solve });
      // What ran out of time may have an answer another time.
      if (answer.ok && answer.analysis.noPonding === undefined) kept(analyses, said, answer, most);
      return answer;
    },
  };
}

/** All that bears on the frame, word for word: not what it costs, when it was put up, or what is asked of it. */
function frameSaid(shelter: Shelter, { person, soil }: AnalyseOptions): string {
  const { irrigation: _irrigation, built: _built, ...rest } = shelter;
  const bare: Shelter = {
    ...rest,
    assumed: [],
    unmodelled: [],
    requirements: [],
    acceptances: [],
    things: [],
  };
  return JSON.stringify({ shelter: bare, person, soil }, (key, value: unknown) =>
    key === 'prices' ? [] : key === 'installed' ? undefined : value,
  );
}
