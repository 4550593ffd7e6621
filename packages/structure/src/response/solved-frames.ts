/**
 * Frames that were solved before, by what went into them: model, loads and the state they start from, word for
 * word. So a change of price, film or name does not solve the frame again, and nothing depends on what was asked
 * before: what is found here is what solving would give.
 */
import {
  nodeShifts,
  type PlaneElementForces,
  type PlaneLoads,
  type PlaneModel,
  type PlaneOptions,
  type PlaneResult,
  type PlaneState,
  solvePlaneFrame,
} from '@tautline/mechanics';
import { kept } from './kept.ts';

type Options = Pick<PlaneOptions, 'start' | 'steps' | 'maxIterations' | 'cancelled'>;

/** Solves a plane frame, or finds what it came to. */
export type Solve = (model: PlaneModel, loads: PlaneLoads, options: Options) => PlaneResult;

/** Answers kept: some twelve shelters' worth, about 4 kB each. */
const usual = 600;

/** A model is kept for so many answers: a shelter has two to four, each under a dozen loads or more. */
const loadsOnOne = 8;

/** Keeps the last `most` answers; one that was called off is not kept. */
export function solvedFrames(most = usual): Solve {
  const answers = new Map<string, Packed>();
  /** Each model that was met with all it says, and the first object that said so: that one is laid out already. */
  const models = new Map<string, { readonly name: number; readonly model: PlaneModel }>();
  const seen = new WeakMap<PlaneModel, { readonly name: number; readonly model: PlaneModel }>();
  const states = new WeakMap<PlaneState, number>();
  let names = 0;

  const modelLike = (model: PlaneModel): { readonly name: number; readonly model: PlaneModel } => {
    const before = seen.get(model);
    if (before) return before;
    const said = JSON.stringify(model);
    const found = models.get(said) ?? { name: names++, model };
    kept(models, said, found, Math.ceil(most / loadsOnOne));
    seen.set(model, found);
    return found;
  };

  return (model, loads, options) => {
    const { start, steps, maxIterations } = options;
    const state = start === undefined ? -1 : states.get(start);
    // A state from elsewhere has no name to be found by.
    if (state === undefined) return solvePlaneFrame(model, loads, options);
    const like = modelLike(model);
    const key = `${like.name} ${state} ${steps} ${maxIterations} ${wordsOf(loads)}`;
    const found = answers.get(key);
    const answer = found === undefined ? solvePlaneFrame(like.model, loads, options) : unpacked(found);
    if (answer.status === 'cancelled') return answer;
    kept(answers, key, found ?? packed(answer), most);
    if (!states.has(answer.state)) states.set(answer.state, names++);
    return answer;
  };
}

/**
 * An answer as it is kept: the forces of its elements as bare numbers, its movements only in its state. As objects
 * they would take four times the room, and most answers are never asked for again.
 */
interface Packed extends Omit<PlaneResult, 'elementForces' | 'displacements'> {
  readonly forces: Float64Array;
}

/** Numbers of an element. */
const stride = 9;

function packed({ elementForces, displacements: _moved, ...rest }: PlaneResult): Packed {
  const forces = new Float64Array(stride * elementForces.length);
  let at = 0;
  for (const element of elementForces) {
    forces[at++] = element.axial;
    forces[at++] = element.axialI;
    forces[at++] = element.axialJ;
    forces[at++] = element.momentI;
    forces[at++] = element.momentJ;
    forces[at++] = element.momentMid;
    forces[at++] = element.shearI;
    forces[at++] = element.shearJ;
    forces[at++] = element.slack ? 1 : 0;
  }
  return { ...rest, forces };
}

function unpacked({ forces, reactions, residual, ...rest }: Packed): PlaneResult {
  const elementForces: PlaneElementForces[] = [];
  for (let at = 0; at < forces.length; at += stride) {
    elementForces.push({
      axial: forces[at]!,
      axialI: forces[at + 1]!,
      axialJ: forces[at + 2]!,
      momentI: forces[at + 3]!,
      momentJ: forces[at + 4]!,
      momentMid: forces[at + 5]!,
      shearI: forces[at + 6]!,
      shearJ: forces[at + 7]!,
      slack: forces[at + 8] === 1,
    });
  }
  const moved = rest.state.displacements;
  // A frame that makes no sense has a state, but no movements.
  const displacements = rest.status === 'invalid' ? [] : nodeShifts(moved, moved.length / 3);
  return { ...rest, displacements, elementForces, reactions, residual };
}

/** Loads as a text, to the last bit: numbers as they lie in memory, which is sooner done than writing them out. */
function wordsOf(loads: PlaneLoads): string {
  const { line = [], nodal = [], pressure } = loads;
  if (pressure !== undefined) return JSON.stringify(loads);
  const numbers = new Float64Array(1 + 3 * line.length + 4 * nodal.length);
  numbers[0] = line.length;
  let at = 1;
  for (const { element, wx, wy } of line) {
    numbers[at++] = element;
    numbers[at++] = wx;
    numbers[at++] = wy;
  }
  for (const { node, fx, fy, m = 0 } of nodal) {
    numbers[at++] = node;
    numbers[at++] = fx;
    numbers[at++] = fy;
    numbers[at++] = m;
  }
  // Handed over as they are: spreading them out takes five times as long.
  return String.fromCharCode.apply(null, new Uint16Array(numbers.buffer) as unknown as number[]);
}
