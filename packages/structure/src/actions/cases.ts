import { snowActions } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import type { FrameSystem } from '../system/frame-system.ts';
import { blownCases } from './blown.ts';
import { cropCase, deadCase, middleX } from './dead.ts';
import type { LoadCase } from './load-case.ts';
import { personCases } from './person.ts';
import { snowAt } from './snow-on-plan.ts';
import { bothWays, windCaseOnFrame, windOn, windShape } from './wind.ts';

export interface Cases {
  readonly all: readonly LoadCase[];
  readonly notCovered: readonly string[];
}

/** All load cases on one frame; a person on or against it only when asked for. */
export function casesOn(
  shelter: Shelter,
  system: FrameSystem,
  options: { readonly person?: boolean } = {},
): Cases {
  const wind = windOn(shelter);
  const snow =
    shelter.site.groundSnow > 0
      ? snowActions(shelter.site, windShape(shelter))
      : { cases: [], notCovered: [] };
  const cases: LoadCase[] = [deadCase(shelter, system)];
  const crop = cropCase(shelter, system);
  if (crop !== undefined) cases.push(crop);
  for (const windCase of bothWays(shelter, wind.cases))
    cases.push(windCaseOnFrame(shelter, system, windCase));
  if (shelter.roof.type === 'inflated') {
    const blown = blownCases(shelter, shelter.roof, system, cases, { wind: wind.cases, snow: snow.cases });
    return { all: blown, notCovered: [...wind.notCovered, ...snow.notCovered, ...notOnFilms] };
  }
  if (options.person === true) cases.push(...personCases(shelter, system));
  for (const snowCase of snow.cases) {
    const lines = system.roof.map((index) => {
      const element = system.elements[index]!;
      const pressure = snowAt(snowCase.zones, middleX(system, index) / shelter.width);
      return {
        element: index,
        wx: 0,
        wy: (-pressure * system.tributary * Math.abs(element.dx)) / element.length,
      };
    });
    cases.push({
      id: snowCase.id,
      title: snowCase.title,
      nature: 'snow',
      lines,
      points: [],
      source: snowCase.source,
    });
  }
  return { all: cases, notCovered: [...wind.notCovered, ...snow.notCovered] };
}

const notOnFilms: readonly string[] = [
  'a crop hung from a blown-up roof, and anybody on it, are not in the load cases',
];
