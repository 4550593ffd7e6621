import {
  ballastSliding,
  type Duration,
  type GroundResult,
  postEmbedmentLateral,
  stakeLateral,
} from '@tautline/loads';
import type { Foot, MemberItem, Site } from '@tautline/shelter';
import { depthOf, gravity, sectionOf } from '@tautline/structure';
import type { NoHold } from './ground.ts';
import { given, step } from './judge.ts';
import { memberLimit } from './resistance.ts';

/** Height of the push below which the embedment formula is not asked, m: own choice. */
const lowestPush = 0.05;

export interface Sideways {
  /** Push at the ground, N. */
  readonly push: number;
  /** Bending of the foot at the ground, N·m. */
  readonly moment: number;
  /** Lift at the same time, N; negative where the foot is pressed down. */
  readonly lift: number;
  readonly stay: Duration;
}

/**
 * What the ground holds a foot with against a sideways push. The push counts as acting at the height that
 * gives the foot its bending, e = M / H. Stakes by Broms and by their own bending, posts and concrete by IBC 1807.3,
 * ballast and pads by friction.
 */
export function footSideways(
  foot: Foot,
  member: MemberItem,
  site: Site,
  load: Sideways,
): GroundResult | NoHold {
  const { soil } = site;
  if (soil === 'rock') return { reason: 'stakes and posts in rock are not covered' };
  const height = Math.abs(load.moment) / Math.max(Math.abs(load.push), 1e-9);
  switch (foot.kind) {
    case 'ballast':
    case 'bearing': {
      const mass = (foot.mass ?? 0) + Math.max(0, -load.lift) / gravity;
      if (mass <= 0) return { reason: 'nothing presses the foot to the ground' };
      const across = foot.across ?? depthOf(member);
      return ballastSliding({ soil, mass }, Math.max(0, load.lift), (Math.PI / 4) * across ** 2);
    }
    case 'stub':
    case 'driven':
    case 'poked': {
      if (foot.driven <= 0) return { reason: 'the foot does not go into the ground' };
      const stake = foot.stub ?? member;
      // In the soil it is wet.
      const limit = memberLimit(site, stake, load.stay, true);
      const hold = stakeLateral({
        soil,
        diameter: depthOf(stake),
        depth: foot.driven,
        height,
        allowedMoment: limit.bending * sectionOf(stake).sectionModulus,
        basis: site.basis,
      });
      return { ...hold, steps: [...limit.steps, ...hold.steps] };
    }
    case 'hole':
    case 'concrete': {
      if (foot.driven <= 0) return { reason: 'the foot does not go into the ground' };
      const width = foot.kind === 'concrete' ? foot.across : acrossPost(member);
      if (width === undefined) return { reason: 'the width of the concrete was not said' };
      const embedded = postEmbedmentLateral({
        soil,
        width,
        depth: foot.driven,
        height: Math.max(lowestPush, height),
        constrained: false,
      });
      return load.stay === 'gust' ? inGusts(embedded) : embedded;
    }
    case 'screw':
    case 'deadman':
      return { reason: 'what a screw or a deadman holds sideways is not covered' };
  }
}

/** Width of a post against the soil: the diameter, or the diagonal of a square post (IBC 1807.3.2.1). */
function acrossPost(member: MemberItem): number {
  const { section } = member;
  return section.shape === 'rectangle' ? Math.hypot(section.depth, section.breadth) : section.outside;
}

/** Poles that may move half an inch at the ground in a gust take twice the pressure of the table (IBC 1806.3.4). */
function inGusts(result: GroundResult): GroundResult {
  const value = 2 * result.allowable;
  return {
    ...result,
    capacity: 2 * result.capacity,
    allowable: value,
    steps: [
      ...result.steps,
      step(
        'P_gust',
        'in gusts, where half an inch of movement does no harm',
        'P_gust = 2 P',
        [given('P', 'sideways load the post may take', result.allowable, 'force')],
        value,
        'force',
        'ibc2018:1806.3.4',
      ),
    ],
  };
}
