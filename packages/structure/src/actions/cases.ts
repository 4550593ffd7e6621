import { snowCases } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import type { FrameSystem } from '../system/frame-system.ts';
import { cropCase, deadCase, middleX } from './dead.ts';
import type { LoadCase } from './load-case.ts';
import { windCaseOnFrame, windOn, windShape } from './wind.ts';

export interface Cases {
  readonly all: readonly LoadCase[];
  readonly notCovered: readonly string[];
}

/** All load cases on one frame. */
export function casesOn(shelter: Shelter, system: FrameSystem): Cases {
  const wind = windOn(shelter);
  const snow = snowCases(shelter.site, windShape(shelter));
  const cases: LoadCase[] = [deadCase(shelter, system)];
  const crop = cropCase(shelter, system);
  if (crop !== undefined) cases.push(crop);
  for (const windCase of wind.cases) cases.push(windCaseOnFrame(shelter, system, windCase));
  for (const snowCase of snow.cases) {
    const lines = system.roof.map((index) => {
      const element = system.elements[index]!;
      const pressure = snowCase.pressureAt(middleX(system, index) / shelter.width);
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
