import type { Rail, Shelter } from '@tautline/shelter';
import type { Response } from '../response/response.ts';
import { gravity, sectionOf, weightPerLength } from '../system/member.ts';
import { cableUnderLoad } from './cable-rail.ts';

/** What a ridge or eave rail has to carry between its posts, in the worst combination. */
export interface RailDemand {
  readonly rail: Rail;
  /** Even load along the rail, N/m (positive down on the rail). */
  readonly load: number;
  readonly loadCase: string;
  /** True when the load stays for long (weight, crop, standing water). */
  readonly steady: boolean;
  /** Bending moment M = w L²/8 (N·m) for a rail or pipe over one bay; pull (N) for a cable. */
  readonly moment?: number;
  readonly pull?: number;
  /** Sag in the middle, m. */
  readonly sag: number;
  /** Load on one post, N. */
  readonly perPost: number;
}

/**
 * Worst load of the frames on the ridge (or eave rail) as an even line load, and the bay's bending.
 * Bays are taken as simply supported (w L²/8, 5 w L⁴/384 E I: handbook beam table), which is also the
 * largest moment of a rail that is continuous over its posts.
 */
export function ridgeDemand(
  shelter: Shelter,
  ridge: Rail,
  responses: readonly Response[],
  waterAtRest: number,
): RailDemand {
  let push = 0;
  let loadCase = 'own weight';
  let steady = true;
  for (const response of responses) {
    const reaction = response.reactions.find((entry) => entry.side === 'crown');
    if (reaction === undefined || Math.abs(reaction.vertical) <= Math.abs(push)) continue;
    push = reaction.vertical;
    loadCase = response.load.title;
    steady = response.load.sustained;
  }
  // Water that stands at the crown stands on the ridge.
  if (waterAtRest > Math.abs(push)) {
    push = waterAtRest;
    loadCase = 'standing water at the crown';
    steady = true;
  }
  return railUnder(ridge, push / shelter.roof.spacing, loadCase, steady);
}

/** An even load on one bay of a rail, pipe or cable; its own weight is added. */
export function railUnder(rail: Rail, load: number, loadCase: string, steady: boolean): RailDemand {
  const span = rail.span;
  if (rail.member.kind === 'cable') {
    const total = Math.abs(load) + rail.member.massPerLength * gravity;
    const { sag, tension } = cableUnderLoad(rail.member, span, rail.tension ?? 0, total);
    return {
      rail,
      load,
      loadCase,
      steady,
      pull: tension,
      sag,
      perPost: total * span,
    };
  }
  const total = load >= 0 ? load + weightPerLength(rail.member) : load;
  const rigidity = rail.member.material.modulus * sectionOf(rail.member).secondMoment;
  return {
    rail,
    load,
    loadCase,
    steady,
    moment: (Math.abs(total) * span * span) / 8,
    sag: (5 * Math.abs(total) * span ** 4) / (384 * rigidity),
    perPost: Math.abs(total) * span,
  };
}
