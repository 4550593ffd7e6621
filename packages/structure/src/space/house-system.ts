import {
  type Bows,
  type Foot,
  type MemberItem,
  type Rafters,
  railsUnder,
  type Shelter,
} from '@tautline/shelter';
import { arcNear } from '../system/arc-near.ts';
import { bowFrame } from '../system/bow-frame.ts';
import type { Condition } from '../system/condition.ts';
import { type FootGive, footGive, givingFeet } from '../system/foot-hold.ts';
import { rafterFrame } from '../system/rafter-frame.ts';
import { addBracing, bracedPlaces, distinct } from './bracing.ts';
import { addEndWalls, endWallArcs, endWallHeights } from './end-walls.ts';
import { addFrames } from './frames.ts';
import type { HouseSystem } from './house.ts';
import { HouseBuilder } from './house-builder.ts';
import { addSides } from './posts-and-rails.ts';
import { addInner, addPurlins, addRidge } from './runners.ts';

/**
 * Pieces along one bow, and along one rafter: coarser than the plane frame. The shape of a sprung bow comes out right to
 * 0.01 %; its largest bending, between nodes and at the edges of wind zones, up to some 5 % low (cable house, set
 * against four times as many pieces).
 */
export const houseDivisions = { bow: 16, rafter: 8 } as const;

export interface HouseOptions {
  /** Feet in the ground give sideways and in turning by springs of the soil; off unless asked for. */
  readonly soil?: boolean;
  /** Springs along the house at every roof node, for a house that nothing holds along its length. */
  readonly steady?: boolean;
  /** Pieces along one bow or rafter, for showing that finer ones change nothing. */
  readonly divisions?: number;
}

/** The whole house in one condition, ready to be loaded. Only for roofs of bows or rafters. */
export function houseSystem(
  shelter: Shelter,
  roof: Bows | Rafters,
  condition: Condition,
  options: HouseOptions = {},
): HouseSystem {
  const soilSprings = (foot: Foot, member: MemberItem): FootGive | undefined =>
    options.soil === true ? footGive(shelter.site, foot, member) : undefined;
  const braced = bracedPlaces(shelter);
  const { endFrames } = shelter;
  const onEnds = endFrames === undefined ? [] : endWallArcs(endFrames, roof.line, roof.springing);
  const arcs = distinct([...braced.arcs, ...onEnds]);
  const heights =
    endFrames === undefined ? braced.heights : distinct([...braced.heights, ...endWallHeights(endFrames)]);
  const taken = shelter.purlins.flatMap((purlin) =>
    purlin.lines.map((at) => at.s ?? arcNear(roof.line, at.x, at.y)),
  );
  const slice =
    roof.type === 'bows'
      ? bowFrame(shelter, roof, condition, undefined, {
          divisions: options.divisions ?? houseDivisions.bow,
          places: distinct(arcs, [...taken, ...roof.joints.map((joint) => joint.at)]),
          bare: true,
        })
      : rafterFrame(shelter, roof, condition, undefined, {
          divisions: options.divisions ?? houseDivisions.rafter,
          places: [...taken, ...distinct(arcs, taken)],
          bare: true,
        });
  const builder = new HouseBuilder(shelter, condition, slice, soilSprings);
  addFrames(builder);
  addSides(builder, heights);
  addRidge(builder);
  addInner(builder);
  addPurlins(builder);
  addEndWalls(builder);
  addBracing(builder);
  if (shelter.baseboards !== undefined)
    builder.notes.add('Baseboards are left out of the whole-house analysis.');
  if (options.soil === true) builder.notes.add(givingFeet);
  builder.notes.add('Film is not counted on to hold the house along its length.');
  if (shelter.opening.ends === 'clad' && (endFrames?.uprights.length ?? 0) === 0)
    builder.notes.add('No uprights in the ends were said: the end frames take all of the wind on them.');
  return builder.finish(options.steady === true);
}

/** Unknowns of a house before it is built, at least as many as it will have. */
export function unknownsOf(shelter: Shelter): number {
  const { roof, sidePosts, purlins } = shelter;
  const under = railsUnder(shelter);
  const runners =
    purlins.reduce((sum, purlin) => sum + purlin.lines.length, 0) +
    under.reduce((sum, rail) => sum + 2 * rail.lines.length, 0);
  const perFrame =
    (roof.type === 'rafters' ? 2 * houseDivisions.rafter : houseDivisions.bow) + 3 * runners + 4;
  const posts =
    (sidePosts?.stations.length ?? 0) * 14 +
    under.reduce((sum, { lines, posts: row }) => sum + (row?.stations.length ?? 0) * lines.length * 7, 0);
  return 6 * (roof.stations.length * perFrame + posts);
}
