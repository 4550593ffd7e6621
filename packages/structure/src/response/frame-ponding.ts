import { type PondingAnswer, pondingPath, WATER } from '@tautline/mechanics';
import type { CombinedLoad } from '../actions/load-case.ts';
import { Cancelled, goOn } from '../stages.ts';
import type { BuiltState } from './response.ts';
import { balance, statusOf } from './solve.ts';
import type { Solve } from './solved-frames.ts';

/**
 * Standing water and a frame that gives under it, for the breadth of roof that one frame carries: the volume-controlled
 * path of the mechanics on the bent shape of the frame.
 */
export interface FramePonding extends Omit<PondingAnswer, 'verdict'> {
  readonly verdict: Exclude<PondingAnswer['verdict'], 'cancelled'>;
  /**
   * Weight of the water that stands on one frame in all its pockets, N: what comes to rest or, where the pond runs
   * away, what it comes to before that.
   */
  readonly standing: number;
  /** Furthest fall of the roof line under the pond that comes to rest, m. */
  readonly fall: number;
}

/**
 * Rain on the film of a frame under its own weight. The film sags up to `sag` (m) between the frames. Throws
 * `Cancelled` when told to stop.
 */
export function framePonding(
  built: BuiltState,
  base: CombinedLoad,
  sag: number,
  stop: () => boolean = () => false,
  solve?: Solve,
): FramePonding {
  const { system } = built;
  const dry = balance(built, base, { cancelled: stop, solve });
  goOn(stop);
  if (statusOf(dry) !== 'holds') return { ...unanswered, reason: 'the frame does not carry its own weight' };
  const line = { elements: system.roof, breadth: system.tributary };
  const { verdict, ...answer } = pondingPath(system.model, line, dry.state, { sag, cancelled: stop });
  if (verdict === 'cancelled') throw new Cancelled();
  const { rest } = answer;
  const falls = roofLineNodes(built).map(
    (node) => dry.displacements[node]!.dy - (rest?.state.displacements[3 * node + 1] ?? 0),
  );
  return {
    ...answer,
    verdict,
    standing: answer.together * WATER,
    fall: rest === undefined ? 0 : Math.max(0, ...falls),
  };
}

const unanswered: FramePonding = {
  verdict: 'no answer',
  reserve: 0,
  atLeast: false,
  together: 0,
  tipping: 0,
  path: [],
  standing: 0,
  fall: 0,
};

/** Nodes of the roof line from left to right. */
export function roofLineNodes(built: BuiltState): number[] {
  const { system } = built;
  const elements = system.roof.map((index) => system.model.elements[index]!);
  return elements.length === 0 ? [] : [elements[0]!.i, ...elements.map((element) => element.j)];
}
