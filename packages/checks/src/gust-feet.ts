/** Feet by what the frame asks of them at a gust: pulled up, pushed over, pressed in. */
import { groundAllowedAt } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import type { Response } from '@tautline/structure';
import { sidewaysUse } from './checks/lateral-foot.ts';
import { type FrameFoot, postWeight } from './feet.ts';
import { footUplift } from './ground.ts';
import { boardsUnder, footSinking } from './ground-sinking.ts';
import type { Measured } from './gust-order.ts';
import { railInResponse, rowsUnder } from './rails.ts';

/** The three ways the ground may give under a foot of the typical frame, where each is covered. */
export function footMeasures(shelter: Shelter, held: FrameFoot): Measured[] {
  const { site } = shelter;
  const { foot, owner, noun, frames } = held;
  const sacrificial = foot.sacrificial === true || owner.sacrificial === true;
  const uplift = footUplift(foot, owner.member, site);
  const list: Measured[] = [];
  if (!('reason' in uplift)) {
    const allowed = Math.max(groundAllowedAt(uplift, site.basis), 1e-6);
    list.push({
      part: foot,
      what: `the foot of the ${noun} is pulled up`,
      check: 'pull-out',
      sacrificial,
      measure: (response) =>
        largest(response, foot.id, (reaction) => (Math.max(0, -reaction.vertical) * frames) / allowed),
    });
  }
  list.push({
    part: foot,
    what: `the foot of the ${noun} is pushed over`,
    check: 'lateral-foot',
    sacrificial,
    measure: (response) =>
      largest(response, foot.id, (reaction) => sidewaysUse(site, held, reaction, 'gust')),
  });
  const sinking = footSinking(foot, owner.member, site, boardsUnder(shelter));
  if (!('reason' in sinking)) {
    const allowed = Math.max(sinking.allowed, 1e-6);
    list.push({
      part: foot,
      what: `the foot of the ${noun} sinks`,
      check: 'foot-bearing',
      sacrificial,
      measure: (response) =>
        largest(response, foot.id, (reaction) => (Math.max(0, reaction.vertical) * frames) / allowed),
    });
  }
  return list;
}

/** The posts under a ridge or an inner line, which sink under what it brings them. */
export function ridgePostMeasures(shelter: Shelter): Measured[] {
  return rowsUnder(shelter).flatMap(({ posts, rail, noun }): Measured[] => {
    const sinking = footSinking(posts.foot, posts.member, shelter.site, boardsUnder(shelter));
    if ('reason' in sinking) return [];
    const allowed = Math.max(sinking.allowed, 1e-6);
    const weight = postWeight(posts);
    return [
      {
        part: posts.foot,
        what: `the foot of the ${noun} sinks`,
        check: 'foot-bearing',
        sacrificial: posts.sacrificial === true || posts.foot.sacrificial === true,
        measure: (response) => {
          const demand = railInResponse(shelter, rail, response);
          const down = Math.max(demand.post.down, ...(demand.ends ?? []).map((end) => end.down));
          return (down + weight) / allowed;
        },
      },
    ];
  });
}

function largest(
  response: Response,
  foot: string,
  measure: (reaction: Response['reactions'][number]) => number | undefined,
): number | undefined {
  let most: number | undefined;
  for (const reaction of response.reactions) {
    const value = reaction.part === foot ? measure(reaction) : undefined;
    if (value !== undefined && (most === undefined || value > most)) most = value;
  }
  return most;
}
