import { type SnowCase, snowActions } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import type { FrameSystem } from '../system/frame-system.ts';
import { blownCases } from './blown.ts';
import { cropCase, deadCase, middleX } from './dead.ts';
import { type EndFrameLoads, endFrameLoads } from './end-frames.ts';
import type { LoadCase } from './load-case.ts';
import { personCases } from './person.ts';
import { snowAt } from './snow-on-plan.ts';
import { bothWays, windCaseOnFrame, windOn, windShape } from './wind.ts';

export interface Cases {
  readonly all: readonly LoadCase[];
  readonly notCovered: readonly string[];
  /** Why no frame near an end is looked at by itself, where that was asked for and none is. */
  readonly endsUnseen?: string;
}

export interface CaseOptions {
  /** Also a person on or against the frame. */
  readonly person?: boolean;
  /** Also the frames near the ends, where their loads are not covered by the typical frame's. */
  readonly ends?: boolean;
}

/** All load cases on the typical frame, and what was asked for besides. */
export function casesOn(shelter: Shelter, system: FrameSystem, options: CaseOptions = {}): Cases {
  const wind = windOn(shelter);
  const snow =
    shelter.site.groundSnow > 0
      ? snowActions(shelter.site, windShape(shelter))
      : { cases: [], notCovered: [] };
  const weight = deadCase(shelter, system);
  const crop = cropCase(shelter, system);
  const standing = crop === undefined ? [weight] : [weight, crop];
  const winds = bothWays(shelter, wind.cases);
  const blows = winds.map((one) => windCaseOnFrame(shelter, system, one));
  if (shelter.roof.type === 'inflated') {
    const onPosts = [...standing, ...blows];
    const blown = blownCases(shelter, shelter.roof, system, onPosts, { wind: wind.cases, snow: snow.cases });
    return { all: blown, notCovered: [...wind.notCovered, ...snow.notCovered, ...notOnFilms] };
  }
  const persons = options.person === true ? personCases(shelter, system) : [];
  const snows = snow.cases.map((one) => snowCaseOnFrame(shelter, system, one));
  const near: EndFrameLoads =
    options.ends === true
      ? endFrameLoads(shelter, system, winds, [...standing, ...snows])
      : { cases: [], notCovered: [] };
  return {
    all: [...standing, ...blows, ...persons, ...snows, ...near.cases],
    notCovered: [...wind.notCovered, ...snow.notCovered, ...near.notCovered],
    ...(near.unseen === undefined ? {} : { endsUnseen: near.unseen }),
  };
}

function snowCaseOnFrame(shelter: Shelter, system: FrameSystem, snow: SnowCase): LoadCase {
  const lines = system.roof.map((index) => {
    const element = system.elements[index]!;
    const pressure = snowAt(snow.zones, middleX(system, index) / shelter.width);
    return {
      element: index,
      wx: 0,
      wy: (-pressure * system.tributary * Math.abs(element.dx)) / element.length,
    };
  });
  return { id: snow.id, title: snow.title, nature: 'snow', lines, points: [], source: snow.source };
}

const notOnFilms: readonly string[] = [
  'a crop hung from a blown-up roof, and anybody on it, are not in the load cases',
];
