import { DURATIONS, type Duration } from '@tautline/loads';
import { type Rail, type Shelter, staySlope } from '@tautline/shelter';
import type { Response } from '../response/response.ts';
import { gravity, sectionOf, weightPerLength } from '../system/member.ts';
import { cableUnderLoad } from './cable-rail.ts';
import type { CableEnd, RailDemand } from './rail-load.ts';

export type { CableEnd, PostLift, PostLoad, RailDemand } from './rail-load.ts';

/**
 * Worst load of the frames on the ridge, or on the worst line of a grid's inner rail, as an even line load, and the
 * bay's bending. Bays are taken as simply supported (w L²/8, 5 w L⁴/384 E I: handbook beam table), which is also the
 * largest moment of a rail that is continuous over its posts. Posts are pressed by what presses down most.
 */
export function ridgeDemand(
  shelter: Shelter,
  ridge: Rail,
  responses: readonly Response[],
  standingWater = 0,
): RailDemand {
  const { spacing } = shelter.roof;
  const under = (push: number, loadCase: string, duration: Duration): RailDemand => {
    const demand = railUnder(ridge, push / spacing, loadCase, duration);
    const end = cableEnd(demand);
    return end === undefined ? demand : { ...demand, ends: [end] };
  };
  const demands = responses.flatMap(({ reactions, load }) =>
    reactions
      .filter(({ part }) => part === ridge.id)
      .map(({ vertical }) => under(vertical, load.title, load.duration)),
  );
  // Water that stands at the crown stands on the ridge.
  const water = standingWater > 0 ? under(standingWater, 'standing water at the crown', 'days') : undefined;
  const worst = demands.reduce<RailDemand | undefined>(
    (most, demand) => (most === undefined ? demand : worseOf(most, demand)),
    undefined,
  );
  if (water === undefined) return worst ?? under(0, 'own weight', 'permanent');
  return { ...(worst === undefined ? water : worseOf(worst, water)), water };
}

/** The end of a ridge cable under the load on its bays. */
function cableEnd({ rail, load, loadCase, duration, pull }: RailDemand): CableEnd | undefined {
  if (rail.member.kind !== 'cable' || pull === undefined) return undefined;
  const half = ((load + rail.member.massPerLength * gravity) * rail.span) / 2;
  const slope = staySlope(rail);
  const down = Math.max(0, pull * Math.tan(slope) + half);
  return { down, stay: pull / Math.cos(slope), pull, slope, loadCase, duration };
}

/** Each of two answers where it is the worse one: the rail itself, a post between bays, the ends. */
export function worseOf(a: RailDemand, b: RailDemand): RailDemand {
  const size = (demand: RailDemand): number => demand.pull ?? demand.moment ?? 0;
  const ends = worstEnds([...(a.ends ?? []), ...(b.ends ?? [])]);
  return {
    ...(size(b) > size(a) ? b : a),
    post: b.post.down > a.post.down ? b.post : a.post,
    lift: b.lift.up > a.lift.up ? b.lift : a.lift,
    ...(ends.length === 0 ? {} : { ends }),
  };
}

/** The worst end under the loads of each duration: what may be pressed depends on it. */
export function worstEnds(ends: readonly CableEnd[]): CableEnd[] {
  return DURATIONS.map((duration) => ends.filter((end) => end.duration === duration)).flatMap((some) =>
    some.length === 0 ? [] : [some.reduce((worst, end) => (end.down > worst.down ? end : worst))],
  );
}

/** An even load on one bay of a rail, pipe or cable; its own weight is added. */
export function railUnder(rail: Rail, load: number, loadCase: string, duration: Duration): RailDemand {
  const span = rail.span;
  if (rail.member.kind === 'cable') {
    const total = Math.abs(load) + rail.member.massPerLength * gravity;
    const { sag, tension } = cableUnderLoad(rail.member, span, rail.tension ?? 0, total);
    return {
      rail,
      load,
      loadCase,
      duration,
      pull: tension,
      sag,
      post: { down: Math.max(0, load + rail.member.massPerLength * gravity) * span, loadCase, duration },
      lift: { up: Math.max(0, -load - rail.member.massPerLength * gravity) * span, loadCase },
    };
  }
  const total = load >= 0 ? load + weightPerLength(rail.member) : load;
  const rigidity = rail.member.material.modulus * sectionOf(rail.member).secondMoment;
  return {
    rail,
    load,
    loadCase,
    duration,
    moment: (Math.abs(total) * span * span) / 8,
    sag: (5 * Math.abs(total) * span ** 4) / (384 * rigidity),
    post: { down: Math.max(0, total) * span, loadCase, duration },
    lift: { up: Math.max(0, -load - weightPerLength(rail.member)) * span, loadCase },
  };
}
