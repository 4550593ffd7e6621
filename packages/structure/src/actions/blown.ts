/** What two blown-up films bring to the post heads of one frame: the fan, their weight, wind and snow. */
import type { SnowCase, WindCase } from '@tautline/loads';
import type { Inflated, Shelter } from '@tautline/shelter';
import { type EdgeForces, loadOnPlan, onOuterFilm, outerArc, pullOfFan } from '../film/blown-film.ts';
import type { FrameSystem } from '../system/frame-system.ts';
import { coverWeight } from './dead.ts';
import type { LoadCase, PointLoad } from './load-case.ts';
import { snowAt } from './snow-on-plan.ts';
import { averageOver } from './wind.ts';

/** The cases that stand on the posts and walls already, with what the films add to them at the heads. */
export function blownCases(
  shelter: Shelter,
  roof: Inflated,
  system: FrameSystem,
  onPosts: readonly LoadCase[],
  acting: { readonly wind: readonly WindCase[]; readonly snow: readonly SnowCase[] },
): LoadCase[] {
  const heads = headsOf(roof, system);
  const atHeads = (forces: EdgeForces): PointLoad[] =>
    (['left', 'right'] as const).map((side) => ({
      node: heads[side],
      fx: forces[side].x * system.tributary,
      fy: forces[side].y * system.tributary,
    }));
  const blown = onPosts.map((loadCase): LoadCase => {
    const wind = acting.wind.find((entry) => entry.id === loadCase.id);
    if (wind === undefined) return loadCase;
    const forces = onOuterFilm(roof, (from, to) => averageOver(wind, 'roof', from, to));
    return { ...loadCase, points: [...loadCase.points, ...atHeads(forces)] };
  });
  blown.push(fanCase(shelter, roof, atHeads));
  for (const snow of acting.snow)
    blown.push({
      id: snow.id,
      title: snow.title,
      nature: 'snow',
      lines: [],
      points: atHeads(loadOnPlan(roof, (share) => snowAt(snow.zones, share))),
      source: snow.source,
    });
  return blown;
}

/** The fan blows day and night, so its pressure counts among the lasting loads, with the films' own weight. */
function fanCase(shelter: Shelter, roof: Inflated, atHeads: (forces: EdgeForces) => PointLoad[]): LoadCase {
  const inwards = pullOfFan(roof);
  const film = shelter.covers
    .filter((cover) => cover.place === 'roof')
    .reduce((sum, cover) => sum + coverWeight(cover), 0);
  const weight = (film * outerArc(roof).length) / 2;
  return {
    id: 'fan',
    title: 'fan pressure and the films',
    nature: 'dead',
    lines: [],
    points: atHeads({ left: { x: inwards, y: -weight }, right: { x: -inwards, y: -weight } }),
    source: 'derived',
  };
}

/** Nodes at the two rails. */
export function headsOf(
  roof: Inflated,
  system: FrameSystem,
): { readonly left: number; readonly right: number } {
  return {
    left: system.nodes.findIndex((node) => node.part === roof.id && node.at === 0),
    right: system.nodes.findIndex((node) => node.part === roof.id && node.at > 0),
  };
}
