import { DURATIONS, type Duration, lasts } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import { casesOn } from './actions/cases.ts';
import type { CombinedLoad, LoadCase } from './actions/load-case.ts';
import { type FilmPanel, filmPanel, pocketDepth, pullAt, rainTemperature } from './film/film-panel.ts';
import { type RailDemand, ridgeDemand } from './rail/rail-demand.ts';
import { combinedLoads } from './response/combinations.ts';
import { type FramePonding, framePonding } from './response/frame-ponding.ts';
import type { BuiltState, Response } from './response/response.ts';
import { build, respond } from './response/solve.ts';
import type { Solve } from './response/solved-frames.ts';
import { goOn, type Stages, stagesBy } from './stages.ts';
import { blownFrame } from './system/blown-frame.ts';
import { bowFrame } from './system/bow-frame.ts';
import {
  type ByCondition,
  type Condition,
  type ConditionId,
  conditionAt,
  stateIn,
} from './system/condition.ts';
import { asStiff, type FrameSystem } from './system/frame-system.ts';
import { rafterFrame } from './system/rafter-frame.ts';
import { type RidgeStiffness, ridgeStiffness } from './system/ridge-stiffness.ts';

/** Everything the checks need to know about how the typical frame behaves. */
export interface FrameAnalysis {
  readonly built: BuiltState;
  /** The frame before any load, for each duration that a load of it has. */
  readonly states: ByCondition<BuiltState>;
  readonly responses: readonly Response[];
  /** The single load cases the combinations are made of. */
  readonly cases: readonly LoadCase[];
  readonly film?: FilmPanel;
  readonly ponding?: FramePonding;
  /** Why there is no answer on standing water though a film is there to hold it. */
  readonly noPonding?: string;
  readonly ridge?: RailDemand;
  /** The inner lines of a grid, in the order of the shelter's. */
  readonly inner: readonly RailDemand[];
  readonly notCovered: readonly string[];
  /** Why no frame near an end is looked at by itself, where none is. */
  readonly endsUnseen?: string;
  readonly notes: readonly string[];
}

export interface AnalyseOptions {
  /** Asked between and within stages; true stops the work and throws `Cancelled`. */
  readonly cancelled?: () => boolean;
  /** Times the stages and ends those that take too long; nothing is timed without it. */
  readonly stages?: Stages;
  /** Also looks at somebody working on the frame or leaning on it; off unless asked for. */
  readonly person?: boolean;
  /** Feet in the ground give as the soil does; they stand firm unless asked for. */
  readonly soil?: boolean;
  /** Finds what was solved before (`solvedFrames`); everything is solved anew when left out. */
  readonly solve?: Solve | undefined;
}

/** Plane analysis of the typical frame, or the reason why there is none. */
export function analyseFrame(
  shelter: Shelter,
  options: AnalyseOptions = {},
): { ok: true; analysis: FrameAnalysis } | { ok: false; reason: string } {
  const { roof, sidePosts } = shelter;
  if (roof.type === 'cap')
    return { ok: false, reason: 'a cap has no bows or rafters, and the frame analysis covers only those' };
  if (roof.type === 'inflated' && sidePosts === undefined)
    return { ok: false, reason: 'no posts were said that hold up the edges of the blown-up roof' };
  const stages = options.stages ?? stagesBy(undefined, options.cancelled);
  const soil = options.soil === true;
  const { solve } = options;
  const systemFor = (id: ConditionId, ridge: RidgeStiffness | undefined): FrameSystem => {
    const condition = conditionAt(shelter.site, id);
    if (roof.type === 'inflated') return blownFrame(shelter, roof, sidePosts!, condition, { soil });
    return roof.type === 'bows'
      ? bowFrame(shelter, roof, condition, ridge, { soil })
      : rafterFrame(shelter, roof, condition, ridge, { soil });
  };

  const formed = stages.run('form', (stop) => {
    const ridge = settleRidge(shelter, (stiffness) => systemFor('permanent', stiffness), stop, soil, solve);
    const made: (readonly [Condition, BuiltState])[] = [];
    const inState = (id: ConditionId): BuiltState => {
      const condition = conditionAt(shelter.site, id);
      const alike = made.find(([other, { system }]) => asStiff(system, other, condition));
      if (alike !== undefined) return alike[1];
      goOn(stop);
      const state = build(systemFor(id, ridge), stop, solve);
      made.push([condition, state]);
      return state;
    };
    const built = inState('built');
    const cases = casesOn(shelter, built.system, { person: options.person === true, ends: true });
    const loads = combinedLoads(shelter, cases.all);
    const asked = DURATIONS.filter(
      (one) => always.includes(one) || loads.some(({ duration }) => duration === one),
    );
    return {
      cases,
      loads,
      states: { built, ...Object.fromEntries(asked.map((one) => [one, inState(one)])) },
    };
  });
  if (!formed.ok) return formed;
  const { cases, loads } = formed.value;
  const states: ByCondition<BuiltState> = formed.value.states;
  const dead = loads.find(lasting) ?? emptyLoad;
  const loaded = stages.run('plane', (stop) => {
    const under = (load: CombinedLoad, condition: ConditionId): Response => {
      const response = respond(stateIn(states, condition), load, condition, { cancelled: stop, solve });
      goOn(stop);
      return response;
    };
    return [under(dead, 'built'), ...loads.map((load) => under(load, load.duration))];
  });
  if (!loaded.ok) return loaded;
  const responses = loaded.value;
  const roofCover = shelter.covers.find((cover) => cover.place === 'roof');
  // Nothing stands on a blown-up film as long as the fan runs.
  const film =
    roofCover === undefined || roof.type === 'inflated' ? undefined : filmPanel(roofCover, roof.spacing);
  const ponded =
    film === undefined
      ? undefined
      : stages.run('ponding', (stop) =>
          framePonding(
            stateIn(states, 'days'),
            dead,
            pocketDepth(film, pullAt(film, rainTemperature)),
            stop,
            solve,
          ),
        );
  const ponding = ponded?.ok === true ? countedWith(roof.type, ponded.value) : undefined;
  const noPonding = ponded?.ok === false ? ponded.reason : undefined;
  return {
    ok: true,
    analysis: {
      built: states.built,
      states,
      responses,
      cases: cases.all,
      ...(film === undefined ? {} : { film }),
      ...(ponding === undefined ? {} : { ponding }),
      ...(noPonding === undefined ? {} : { noPonding }),
      ...(shelter.ridge === undefined
        ? {}
        : {
            ridge: ridgeDemand(shelter, shelter.ridge, responses, ponding?.standing ?? 0),
          }),
      inner: (shelter.inner ?? []).map((rail) => ridgeDemand(shelter, rail, responses)),
      notCovered: [...cases.notCovered, ...(noPonding === undefined ? [] : [noPonding])],
      ...(cases.endsUnseen === undefined ? {} : { endsUnseen: cases.endsUnseen }),
      notes: states.built.system.notes,
    },
  };
}

/**
 * A ridge under bows is judged for the water of a pond that runs away too, up to where it does. On rafters, where no
 * check asks whether water runs away, it is judged for what comes to rest.
 */
const countedWith = (roof: Shelter['roof']['type'], ponding: FramePonding): FramePonding =>
  roof === 'bows' || ponding.rest !== undefined ? ponding : { ...ponding, standing: 0 };

/** Durations looked at whatever the loads: own weight, water that stands on the film, and the gusts of a search. */
const always: readonly Duration[] = ['permanent', 'days', 'gust'];

const lasting = ({ duration }: CombinedLoad): boolean => lasts(duration);

const emptyLoad: CombinedLoad = {
  id: 'none',
  title: 'no load',
  source: 'derived',
  lines: [],
  points: [],
  duration: 'permanent',
  use: 'service',
};

/** A cable ridge stiffens as it sags: two passes settle the push and the stiffness it meets. */
function settleRidge(
  shelter: Shelter,
  systemWith: (stiffness: RidgeStiffness) => FrameSystem,
  stop: () => boolean,
  soil: boolean,
  solve: Solve | undefined,
): RidgeStiffness | undefined {
  if (shelter.ridge === undefined) return undefined;
  let stiffness = ridgeStiffness(shelter, shelter.ridge, 100, soil);
  if (shelter.ridge.member.kind !== 'cable') return stiffness;
  for (let pass = 0; pass < 2; pass++) {
    goOn(stop);
    const built = build(systemWith(stiffness), stop, solve);
    const cases = casesOn(shelter, built.system);
    const heaviest = combinedLoads(shelter, cases.all).find(lasting);
    if (heaviest === undefined) break;
    const response = respond(built, heaviest, 'permanent', { cancelled: stop, solve });
    const push = response.reactions.find((reaction) => reaction.side === 'crown')?.vertical ?? 0;
    stiffness = ridgeStiffness(shelter, shelter.ridge, Math.abs(push), soil);
  }
  return stiffness;
}
