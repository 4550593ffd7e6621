import { WATER } from '../ponding.ts';
import { emptyPass } from './assemble.ts';
import { layLoads } from './loads.ts';
import type { PlaneLoads, PlaneModel, PlaneState } from './model.ts';
import { pocketsOf, spillOf } from './pocket.ts';
import { addWater, emptyWater, lineOf, type Pocket, type PondScene, type RoofLine } from './pond.ts';
import { balancePond, type NoPond, type PondAt } from './pond-balance.ts';
import { pondOn, standingPond } from './pond-standing.ts';
import { roofFault } from './ponding-factor.ts';
import type { PondingAnswer, PondingOptions, PondingStep } from './ponding-model.ts';
import { planeSystem } from './system.ts';

/** Less water than this on a line, m3, is wetness, not a pond. */
const WETNESS = 1e-5;
/** A reserve that is large enough not to be followed further. */
const ENOUGH = 10;
/** Steps are narrowed to this share of the water where the path ends or the reserve is greatest. */
const CLOSE = 0.03;
/** The reserve has passed its greatest value once it has fallen to this share of it. */
const PAST = 0.95;
/** The pond at its brim is found to this share of its water. */
const AT_BRIM = 1e-4;
/** Times that the pocket is found again on the shape that its own water bends. */
const ROUNDS = 4;
/** A step that moves the frame by more than this part of the line's width on plan has leapt into another shape. */
const LEAP = 24;
const MOST_STEPS = 200;

/** A balanced step: the pond in the pocket it was balanced in, and what the largest pocket of the bent shape holds. */
interface Step {
  readonly pond: PondAt;
  readonly within: Pocket;
  readonly largest: Pocket;
  readonly holds: number;
}

/**
 * Rain on a roof line of a frame in balance: water in steps into the pocket of the skin that holds most, the pocket
 * following the bent shape. The amount of water is what is controlled and its level an unknown, so the path is
 * followed where more water lowers the surface too; every step is in balance and stable. Where the water comes up to
 * the brim the pond is at rest and runs over. From there on the pocket is taken as walled at its brim, to see how
 * much more the frame would bear.
 *
 * `start` is the frame under all that acts besides standing water; the drawn shape without loads when left out.
 */
export function pondingPath(
  model: PlaneModel,
  roof: RoofLine,
  start?: PlaneState,
  options: PondingOptions = {},
): PondingAnswer {
  const system = planeSystem(model);
  const fault = typeof system === 'string' ? system : roofFault(system, roof);
  if (typeof system === 'string' || fault !== undefined) return none('no answer', fault);
  const loads = layLoads(system, start?.loads ?? {});
  if (typeof loads === 'string') return none('no answer', loads);
  const scene: PondScene = {
    system,
    roof,
    weight: options.weight ?? WATER,
    loads,
    pass: emptyPass(system),
    water: emptyWater(system, roof),
  };
  const u = new Float64Array(system.dofs);
  if (start) u.set([...start.displacements, ...start.endRotations]);
  const dry: PondAt = { u, volume: 0, level: 0 };
  const answers: PondingAnswer[] = [];
  for (const pocket of pocketsOf(lineOf(scene, u), options.sag ?? 0)) {
    const empty = measured(scene, dry, pocket);
    if (empty.holds >= WETNESS) answers.push(fill(scene, start?.loads ?? {}, empty, options));
  }
  if (answers.length === 0) return none('drains');
  const worst = answers.reduce((least, answer) => (answer.reserve < least.reserve ? answer : least));
  const together = answers.reduce((sum, answer) => sum + answer.together, 0);
  return { ...worst, together };
}

/** Fills the pocket step by step until the frame gives way, the reserve has passed its greatest value or is enough. */
function fill(scene: PondScene, base: PlaneLoads, empty: Step, options: PondingOptions): PondingAnswer {
  const { system, roof } = scene;
  const plan = roof.elements.reduce((sum, e) => sum + Math.abs(system.chordX[e]!), 0);
  const first = pondOn(scene, empty.pond.u, empty.largest, brimOf(scene, empty));
  const deepest = first.depth + (options.rise ?? plan / 16);
  const path: PondingStep[] = [];
  // water of half the volume stands at about 0.7 of the depth: a level to start from
  let last: Step = { ...empty, pond: { ...empty.pond, level: first.level - 0.3 * first.depth } };
  let rest: Step | undefined;
  let reserve = 0;
  let tipping = 0;
  let step = empty.holds / 2;
  // least water that was seen not to be borne, or to fill the pocket less
  let failing = Number.POSITIVE_INFINITY;
  const end = (ended: NonNullable<PondingAnswer['ended']>): PondingAnswer => ({
    verdict: rest ? 'comes to rest' : 'runs away',
    ended,
    first,
    ...(rest ? { rest: standingPond(scene, base, rest.pond, rest.within) } : {}),
    reserve,
    atLeast: rest !== undefined && (ended === 'deep' || ended === 'enough'),
    together: rest?.pond.volume ?? tipping,
    tipping,
    path,
  });
  for (let n = 0; n < MOST_STEPS; n++) {
    if (options.cancelled?.()) return none('cancelled');
    const from = last.pond.volume;
    const close = failing - from <= CLOSE * Math.max(from, empty.holds / 4);
    const volume = Math.min(from + step, close ? failing : (from + failing) / 2);
    const tried = more(scene, last, volume);
    const next =
      typeof tried !== 'string' && leapt(last, tried, plan / LEAP, 3 * system.nodes) ? 'sudden' : tried;
    const ratio = typeof next === 'string' ? 0 : Math.min(ENOUGH, volume / next.holds);
    if ((typeof next === 'string' || ratio < reserve) && !close && volume - from > CLOSE * from) {
      failing = volume;
      continue;
    }
    if (typeof next === 'string') {
      if (path.length === 0 && next === 'diverged')
        return none('no answer', 'no balance was found with the first water');
      return end('gives way');
    }
    if (ratio < PAST * reserve) return end('outgrows');
    const { depth } = pondOn(scene, next.pond.u, next.within, next.pond.level);
    path.push({ volume, holds: next.holds, depth, level: next.pond.level });
    if (rest === undefined && ratio >= 1) rest = atBrim(scene, last, next);
    if (volume >= failing) failing = Number.POSITIVE_INFINITY;
    step = ratio < reserve ? CLOSE * volume : Math.min(2 * (volume - from), volume);
    if (ratio > reserve) {
      reserve = ratio;
      tipping = volume;
    }
    if (reserve >= ENOUGH) return end('enough');
    if (depth > deepest) return end('deep');
    last = next;
  }
  return end('deep');
}

/** A balance with `volume` water from a step with less or more of it, in the largest pocket of the bent shape. */
function more(scene: PondScene, from: Step, volume: number): Step | NoPond {
  let step = from;
  for (let n = 0; n < ROUNDS; n++) {
    const within = step.largest;
    const pond = balancePond(scene, step.pond, within, volume);
    if (typeof pond === 'string') return pond;
    step = measured(scene, pond, within);
    if (step.largest.edge === within.edge && step.largest.middle === within.middle) break;
  }
  return step;
}

/** What the largest pocket of a bent shape holds up to its brim, there where the water is. */
function measured(scene: PondScene, pond: PondAt, within: Pocket): Step {
  const line = lineOf(scene, pond.u);
  const largest = pocketsOf(line, within.sag, within)[0] ?? within;
  addWater(scene, pond.u, largest, spillOf(line, largest));
  return { pond, within, largest, holds: Math.max(scene.water.volume, WETNESS / 1e3) };
}

/** Whether a node has moved by more than `most` m between two steps; `moves` of the dofs are those of nodes. */
function leapt(before: Step, after: Step, most: number, moves: number): boolean {
  for (let dof = 0; dof < moves; dof++)
    if (dof % 3 < 2 && Math.abs(after.pond.u[dof]! - before.pond.u[dof]!) > most) return true;
  return false;
}

const brimOf = (scene: PondScene, { pond, largest }: Step): number => spillOf(lineOf(scene, pond.u), largest);

/** The pond that just fills its pocket, between a step with too little water for that and one with too much. */
function atBrim(scene: PondScene, under: Step, over: Step): Step {
  let [a, b] = [under, over];
  const off = ({ pond, holds }: Step): number => pond.volume - holds;
  let best = over;
  for (let n = 0; n < 12 && Math.abs(off(best)) > AT_BRIM * best.pond.volume; n++) {
    const volume = a.pond.volume - (off(a) * (b.pond.volume - a.pond.volume)) / (off(b) - off(a));
    const tried = more(scene, best, volume);
    if (typeof tried === 'string') break;
    if (off(tried) < 0) a = tried;
    else b = tried;
    if (Math.abs(off(tried)) < Math.abs(off(best))) best = tried;
  }
  return best;
}

const none = (verdict: 'drains' | 'no answer' | 'cancelled', reason?: string): PondingAnswer => ({
  verdict,
  ...(reason === undefined ? {} : { reason }),
  reserve: verdict === 'drains' ? Number.POSITIVE_INFINITY : 0,
  atLeast: false,
  together: 0,
  tipping: 0,
  path: [],
});
