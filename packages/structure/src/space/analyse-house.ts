import { DURATIONS, type Duration, lasts } from '@tautline/loads';
import { linearSpaceFrame, solveSpaceFrame } from '@tautline/mechanics';
import type { Bows, MemberItem, Rafters, Shelter } from '@tautline/shelter';
import type { CombinedLoad } from '../actions/load-case.ts';
import type { ResponseStatus } from '../response/response.ts';
import { type ConditionId, conditionAt, stateIn } from '../system/condition.ts';
import { weightPerLength } from '../system/member.ts';
import type { HouseSystem } from './house.ts';
import { type HouseLoads, houseLoads, layOnHouse } from './house-loads.ts';
import type { HouseAnalysis, HouseResponse, HouseState, HouseStates, LinearShare } from './house-result.ts';
import { houseSystem, unknownsOf } from './house-system.ts';
import { loadPaths, movedBy } from './load-path.ts';
import { endRailsOf, rackingOf, runnersOf } from './racking.ts';
import { uprightsUnder } from './upright-forces.ts';

/** More unknowns than this are not solved. */
export const mostUnknowns = 60_000;
/** Newton corrections for all combinations together, and for one. */
const mostIterations = 3_000;
const mostEach = 120;

export interface HouseAnalyseOptions {
  /** Asked within and between the combinations; true stops the work. */
  readonly cancelled?: () => boolean;
  /** Told the share of the work that is done, 0 to 1, and what comes next. */
  readonly progress?: (share: number, next: string) => void;
  /** Feet give by springs of the soil; off unless asked for. */
  readonly soil?: boolean;
  /** False leaves out how many times its load the house would stand, and what small movements would give. */
  readonly beyond?: boolean;
}

export type HouseAnswer =
  | { readonly ok: true; readonly house: HouseAnalysis }
  | { readonly ok: false; readonly reason: string };

/**
 * The whole house in space under every combination of its site: large movements, cables that go slack, sprung bows
 * from their locked-in state. What cannot be worked out is said; nothing is thrown.
 */
export function analyseHouse(shelter: Shelter, options: HouseAnalyseOptions = {}): HouseAnswer {
  const { roof } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters')
    return {
      ok: false,
      reason: `a roof of kind '${roof.type}' has no bows or rafters, and the full analysis covers only those`,
    };
  if (unknownsOf(shelter) > mostUnknowns)
    return { ok: false, reason: `too large for the full analysis: more than ${mostUnknowns} unknowns` };
  const stopped = { ok: false, reason: 'stopped before the full analysis was done' } as const;
  const tell = options.progress ?? (() => undefined);
  tell(0, 'the house as built');
  const built = builtStates(shelter, roof, options);
  if (built === 'cancelled') return stopped;
  if (typeof built === 'string') return { ok: false, reason: built };
  const { states, laid, unheld } = built;
  const { system } = states.built;
  const { loads, cases, push, notCovered } = laid;
  const responses: HouseResponse[] = [];
  const missed: string[] = [];
  let iterations = 0;
  // The cold day it goes up, with nothing on it but its weight, as the plane tier looks at it.
  const first = loads.find((load) => lasts(load.duration));
  if (first !== undefined) responses.push(respondHouse(states, 'built', first, push, options));
  for (const [index, load] of loads.entries()) {
    if (options.cancelled?.()) return stopped;
    tell(index / (loads.length + 1), load.title);
    if (iterations > mostIterations) {
      missed.push(`Not worked out within ${mostIterations} corrections: ${load.title}.`);
      continue;
    }
    const response = respondHouse(states, load.duration, load, push, options);
    if (response.result.status === 'cancelled') return stopped;
    iterations += response.result.iterations;
    responses.push(response);
  }
  tell(loads.length / (loads.length + 1), 'how many times its load the house would stand');
  const beyond = options.beyond !== false;
  const paths = beyond ? loadPaths(states, responses, push, options.cancelled) : [];
  if (options.cancelled?.()) return stopped;
  tell(1, 'done');
  const { result } = states.built;
  return {
    ok: true,
    house: {
      states,
      responses,
      cases,
      racking: rackingOf(system, states, responses, unheld),
      runners: runnersOf(states, responses),
      uprights: uprightsUnder(states, responses),
      endRails: endRailsOf(states, responses),
      linear: beyond ? linearShares(states, responses, push) : [],
      loadPaths: paths,
      cost: { unknowns: result.unknowns, entries: result.entries, iterations },
      notCovered: [...notCovered, ...missed],
      notes: [
        ...system.notes,
        ...(unheld
          ? ['Nothing holds the house along its length: springs along it were put in to work out the rest.']
          : []),
      ],
    },
  };
}

/** The house in each condition before any load; steadied along its length where nothing holds it there. */
function builtStates(
  shelter: Shelter,
  roof: Bows | Rafters,
  options: HouseAnalyseOptions,
): { states: HouseStates; laid: HouseLoads; unheld: boolean } | 'cancelled' | string {
  const soil = options.soil === true;
  let reason = '';
  for (const steady of [false, true]) {
    const made: HouseState[] = [];
    const stateFor = (id: ConditionId): HouseState | 'cancelled' | string => {
      if (options.cancelled?.()) return 'cancelled';
      const system = houseSystem(shelter, roof, conditionAt(shelter.site, id), { soil, steady });
      const alike = made.find((other) => sameStiffness(other.system, system));
      if (alike !== undefined) return alike;
      const state = buildHouse(system, options.cancelled);
      if (state.result.unknowns > mostUnknowns)
        return `too large for the full analysis: ${state.result.unknowns} unknowns`;
      if (state.result.status === 'cancelled') return 'cancelled';
      if (state.status !== 'holds') reason = state.result.reason ?? state.result.status;
      made.push(state);
      return state;
    };
    const built = stateFor('built');
    if (typeof built === 'string') return built;
    if (built.status !== 'holds' || (!steady && leansOver(built))) continue;
    const laid = houseLoads(shelter, built.system);
    const states: { [duration in Duration]?: HouseState } = {};
    for (const one of DURATIONS) {
      if (!laid.loads.some(({ duration }) => duration === one)) continue;
      const state = stateFor(one);
      if (typeof state === 'string') return state;
      states[one] = state;
    }
    if (Object.values(states).every(({ status }) => status === 'holds'))
      return { states: { built, ...states }, laid, unheld: steady };
  }
  return `the house does not stand by itself in the model: ${reason}`;
}

/** Whether two houses are alike in all that the solver is given: nothing in them creeps, or softens in the warmth. */
const sameStiffness = ({ model: a }: HouseSystem, { model: b }: HouseSystem): boolean =>
  a.elements.every((one, k) => JSON.stringify(one) === JSON.stringify(b.elements[k]));

/**
 * Whether the house has next to nothing that holds it along: its own weight, turned to act along it, would move it
 * further than it is high. Upright, that weight then pushes it over.
 */
function leansOver({ system, result }: HouseState): boolean {
  const line = system.elements.flatMap((element, k) => {
    const weight =
      element.role === 'frame' ? weightPerLength(element.item as MemberItem) : system.weights.get(k);
    return weight === undefined ? [] : [{ element: k, wx: 0, wy: 0, wz: weight }];
  });
  const pushed = linearSpaceFrame(system.model, { line }, { start: result.state });
  if (pushed.status !== 'converged') return true;
  const height = Math.max(...system.nodes.map((node) => node.y));
  return pushed.displacements.some((moved, n) => Math.abs(moved.dz - result.displacements[n]!.dz) > height);
}

/** Springs the house into place: bows bent from straight pipe, cables pulled. */
export function buildHouse(system: HouseSystem, cancelled?: () => boolean): HouseState {
  const result = solveSpaceFrame(
    system.model,
    {},
    { maxIterations: mostEach, ...(cancelled === undefined ? {} : { cancelled }) },
  );
  return { system, result, status: statusOf(result.status) };
}

/** The house under one combination, from the state it is in by then. */
export function respondHouse(
  states: HouseStates,
  condition: ConditionId,
  load: CombinedLoad,
  push: 'end' | 'skin',
  options: Pick<HouseAnalyseOptions, 'cancelled'> = {},
): HouseResponse {
  const state = stateIn(states, condition);
  const result = solveSpaceFrame(state.system.model, layOnHouse(state.system, load, push), {
    start: state.result.state,
    steps: 2,
    maxIterations: mostEach,
    ...(options.cancelled === undefined ? {} : { cancelled: options.cancelled }),
  });
  return {
    load,
    condition,
    status: statusOf(result.status),
    reached: result.loadFactor,
    result,
  };
}

function statusOf(status: string): ResponseStatus {
  if (status === 'converged') return 'holds';
  return status === 'unstable' || status === 'mechanism' ? 'gives way' : 'no answer';
}

/** How far the house moves in small-movement theory beside the full answer, for every combination that holds. */
function linearShares(
  states: HouseStates,
  responses: readonly HouseResponse[],
  push: 'end' | 'skin',
): LinearShare[] {
  return responses
    .filter((response) => response.status === 'holds')
    .map((response) => {
      const state = stateIn(states, response.condition);
      const { system, result } = state;
      const linear = linearSpaceFrame(system.model, layOnHouse(system, response.load, push), {
        start: result.state,
      });
      return {
        load: response.load.title,
        linear: linear.status === 'converged' ? movedBy(states, { ...response, result: linear }) : Number.NaN,
        full: movedBy(states, response),
      };
    })
    .filter((share) => Number.isFinite(share.linear));
}
