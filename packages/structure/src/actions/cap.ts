/**
 * Loads on a rigid cap that stands on the ground by its two rims: a body that keeps its shape, so that what its
 * rims get follows from balance alone. For one cap.
 */
import type { Cap, Shelter } from '@tautline/shelter';
import { onOuterFilm } from '../film/blown-film.ts';
import { combinedLoads } from '../response/combinations.ts';
import { gravity } from '../system/member.ts';
import type { CombinedLoad, LoadCase } from './load-case.ts';
import { averageOver, windOn } from './wind.ts';

/** The two rims stand for nodes in `points` of the loads. */
export const capRims = { left: 0, right: 1 } as const;

export interface CapLoads {
  /** Weight of one cap, N. */
  readonly weight: number;
  /** Length of one cap along the bed, m. */
  readonly length: number;
  /** Combinations with wind, as forces on the two rims (N): fx along +x, fy upwards. */
  readonly loads: readonly CombinedLoad[];
}

/** What the wind of a gust (m/s, the site's unless said) does to one cap, by the combinations of the load basis. */
export function capLoads(shelter: Shelter, cap: Cap, gust = shelter.site.gust): CapLoads {
  const { sheet, spacing: length } = cap;
  const around = cap.line.at(-1)!.s - cap.line[0]!.s;
  const mass = sheet.kind === 'sheet' ? sheet.massPerArea : sheet.thickness * sheet.density;
  const weight = mass * gravity * around * length;
  const wind = windOn(shelter, gust);
  const cases: LoadCase[] = [
    {
      id: 'dead',
      title: 'own weight',
      nature: 'dead',
      lines: [],
      points: [
        { node: capRims.left, fx: 0, fy: -weight / 2 },
        { node: capRims.right, fx: 0, fy: -weight / 2 },
      ],
      source: 'derived',
    },
    ...wind.cases.map((one): LoadCase => {
      const { left, right } = onOuterFilm(cap, (from, to) => averageOver(one, 'roof', from, to));
      return {
        id: one.id,
        title: one.title,
        nature: 'wind',
        lines: [],
        points: [
          { node: capRims.left, fx: left.x * length, fy: left.y * length },
          { node: capRims.right, fx: right.x * length, fy: right.y * length },
        ],
        source: one.source,
      };
    }),
  ];
  const loads = combinedLoads(shelter, cases).filter(
    (load) => load.wind !== undefined && load.use !== 'service',
  );
  return { weight, length, loads };
}
