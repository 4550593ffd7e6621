import { type PlaneResult, solvePlaneFrame } from '@tautline/mechanics';
import type { CombinedLoad } from '../actions/load-case.ts';
import type { ConditionId } from '../system/condition.ts';
import type { FrameSystem } from '../system/frame-system.ts';
import type { BuiltState, Reaction, Response, ResponseStatus, SectionForce } from './response.ts';
import type { Solve } from './solved-frames.ts';

/** Springs the frame into place: for a sprung bow the locked-in state, for others the unloaded shape. */
export function build(
  system: FrameSystem,
  cancelled?: () => boolean,
  solve: Solve = solvePlaneFrame,
): BuiltState {
  const result = solve(system.model, {}, cancelled === undefined ? {} : { cancelled });
  return { system, result, status: statusOf(result) };
}

export interface RespondOptions {
  /** Bounds the search for a balance (the solver's own bound when left out); one that runs out has no answer. */
  readonly corrections?: number;
  /** Asked between load steps; a search that is stopped has no answer either. */
  readonly cancelled?: () => boolean;
  /** Finds what was solved before; solves anew when left out. */
  readonly solve?: Solve | undefined;
}

/** What one combination does to a frame, starting from the state it was built in. */
export function balance(
  { system, result }: BuiltState,
  load: Pick<CombinedLoad, 'lines' | 'points'>,
  { corrections, cancelled, solve = solvePlaneFrame }: RespondOptions = {},
): PlaneResult {
  return solve(
    system.model,
    { line: load.lines, nodal: load.points },
    {
      start: result.state,
      steps: 2,
      ...(corrections === undefined ? {} : { maxIterations: corrections }),
      ...(cancelled === undefined ? {} : { cancelled }),
    },
  );
}

/** The frame under one combination, starting from the state it was built in. */
export function respond(
  built: BuiltState,
  load: CombinedLoad,
  condition: ConditionId,
  options: RespondOptions = {},
): Response {
  const { system } = built;
  const result = balance(built, load, options);
  return {
    load,
    condition,
    status: statusOf(result),
    reached: result.loadFactor,
    forces: forcesOf(system, result),
    reactions: reactionsOf(system, result),
    displacements: result.displacements.map((moved, node) => ({
      dx: moved.dx - built.result.displacements[node]!.dx,
      dy: moved.dy - built.result.displacements[node]!.dy,
    })),
  };
}

export function statusOf(result: PlaneResult): ResponseStatus {
  if (result.status === 'converged') return 'holds';
  return result.status === 'unstable' || result.status === 'mechanism' ? 'gives way' : 'no answer';
}

/** Forces that a frame has in it once built, before any load: those of a sprung bow, none in others. */
export function lockedIn(built: BuiltState): readonly SectionForce[] {
  const known = locked.get(built) ?? forcesOf(built.system, built.result);
  locked.set(built, known);
  return known;
}

/** Asked for with every response. */
const locked = new WeakMap<BuiltState, readonly SectionForce[]>();

/** Forces at both ends of every element, for one member. */
export function forcesOf(system: FrameSystem, result: PlaneResult): SectionForce[] {
  const forces: SectionForce[] = [];
  for (let element = 0; element < result.elementForces.length; element++) {
    const { axial, momentI, momentJ, shearI, shearJ } = result.elementForces[element]!;
    const { part, from, to, perFrame } = system.elements[element]!;
    const scale = 1 / perFrame;
    const thrust = axial * scale;
    forces.push(
      { element, part, at: from, axial: thrust, moment: momentI * scale, shear: shearI * scale },
      { element, part, at: to, axial: thrust, moment: momentJ * scale, shear: shearJ * scale },
    );
  }
  return forces;
}

function reactionsOf(system: FrameSystem, result: PlaneResult): Reaction[] {
  const byPlace = new Map<
    string,
    {
      part: string;
      side: Reaction['side'];
      horizontal: number;
      vertical: number;
      moment: number;
    }
  >();
  system.supports.forEach((support, index) => {
    const key = `${support.part}/${support.side}`;
    const sum = byPlace.get(key) ?? {
      part: support.part,
      side: support.side,
      horizontal: 0,
      vertical: 0,
      moment: 0,
    };
    const value = result.reactions[index] ?? 0;
    if (support.acts === 'x') sum.horizontal += value;
    else if (support.acts === 'y') sum.vertical += value;
    else sum.moment += value;
    byPlace.set(key, sum);
  });
  return [...byPlace.values()];
}
