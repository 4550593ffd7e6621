/**
 * The frames near the ends of a house: they carry less breadth, and wind of their own where the load basis gives an
 * end zone. Only those whose loads are not covered by the typical frame's are looked at.
 */
import { type EndWind, type EndWindCase, endWind, type Step, type WindCase } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import { type FrameSystem, ownWeight } from '../system/frame-system.ts';
import { reaches } from '../system/reaches.ts';
import type { LoadCase } from './load-case.ts';
import { averageOver, windCaseOnFrame, windShape } from './wind.ts';

export interface EndFrameLoads {
  /** Wind on frames near the ends, and weight, crop and snow of those that carry less than the typical breadth. */
  readonly cases: readonly LoadCase[];
  /** Why no frame near an end is looked at by itself, where none is. */
  readonly unseen?: string;
  readonly notCovered: readonly string[];
}

/** A frame near an end under one wind, in the terms of the typical frame's breadth. */
interface Near {
  readonly frame: number;
  readonly breadth: number;
  /** Breadth of it inside the end zone, m. */
  readonly within: number;
  readonly wind: WindCase;
  readonly pressures: readonly number[];
}

/** Places of the roof line at which two winds are compared. */
const places = 40;
/** Pressures that differ by less are the same, as a share of the largest. */
const same = 1e-6;

/** `typical` are the winds on every frame, `standing` weight, crop and snow on the typical one. */
export function endFrameLoads(
  shelter: Shelter,
  system: FrameSystem,
  typical: readonly WindCase[],
  standing: readonly LoadCase[],
): EndFrameLoads {
  const noun = shelter.roof.type === 'bows' ? 'bow' : 'frame';
  const wind = endWind(shelter.site, windShape(shelter));
  const half = `the end ${noun} carries half the breadth`;
  if (wind.none !== undefined)
    return { cases: [], unseen: `${half}: the typical ${noun} stands for it; ${wind.none}`, notCovered: [] };
  const known = typical.map(pressuresOf);
  const kept = worstOf(shelter, system, wind, known);
  const { notCovered } = wind;
  if (kept.length === 0)
    return {
      cases: [],
      unseen: `${half}, and in the end zone the wind is nowhere above what it is on the typical ${noun}, which stands for it`,
      notCovered,
    };
  const cases = kept.flatMap((near): LoadCase[] => {
    const on = nameOf(near.frame, noun);
    const share = near.breadth / system.tributary;
    const lines = windCaseOnFrame(shelter, system, near.wind);
    const blow = { ...lines, id: `${near.wind.id}/${near.frame}`, on, steps: traced(near, wind) };
    if (Math.abs(share - 1) < 1e-6) return [blow];
    return [blow, ...standing.map((one) => narrowed(one, system, share, on))];
  });
  return { cases: distinctById(cases), notCovered };
}

/** The winds of the end zone that are somewhere above those on the typical frame, strip by strip. */
export function endWindsAbove(
  shelter: Shelter,
  system: FrameSystem,
  typical: readonly WindCase[],
): { readonly winds: readonly EndWindCase[]; readonly notCovered: readonly string[] } {
  const wind = endWind(shelter.site, windShape(shelter));
  const kept = worstOf(shelter, system, wind, typical.map(pressuresOf));
  return {
    winds: wind.cases.filter(({ id }) => kept.some((near) => near.wind.id === id)),
    notCovered: [...(wind.none === undefined ? [] : [wind.none]), ...wind.notCovered],
  };
}

/** Of all frames in the zone under each wind, those that neither the typical frame nor another of them covers. */
function worstOf(
  shelter: Shelter,
  system: FrameSystem,
  { cases, width }: EndWind,
  known: readonly (readonly number[])[],
): Near[] {
  const { stations } = shelter.roof;
  const mirrored = stations.map((z) => shelter.length - z).reverse();
  const all = cases.flatMap((one) =>
    [stations, mirrored].flatMap((row) =>
      reaches(row).flatMap(({ from, to }, frame): Near[] => {
        if (from >= width || frame > row.length / 2) return [];
        const wind = onFrame(one, from, to, system.tributary);
        const within = Math.min(to, width) - from;
        return [{ frame, breadth: to - from, within, wind, pressures: pressuresOf(wind) }];
      }),
    ),
  );
  return all.filter(
    (near, k) =>
      !known.some((other) => covers(other, near.pressures)) &&
      !all.some(
        (other, n) =>
          n !== k &&
          covers(other.pressures, near.pressures) &&
          (n < k || !covers(near.pressures, other.pressures)),
      ),
  );
}

/** A wind on what one frame carries of the strips, spread over the typical breadth. */
function onFrame(one: EndWindCase, from: number, to: number, typical: number): WindCase {
  const { strips, ...rest } = one;
  return {
    ...rest,
    zones: strips.flatMap((strip) => {
      const overlap = Math.min(to, strip.to) - Math.max(from, strip.from);
      return overlap <= 0
        ? []
        : strip.zones.map((zone) => ({ ...zone, net: (zone.net * overlap) / typical }));
    }),
  };
}

/** Pressures along the roof line from the low side on, and on the two walls. */
function pressuresOf(wind: WindCase): number[] {
  const roof = Array.from({ length: places }, (_, k) =>
    averageOver(wind, 'roof', k / places, (k + 1) / places),
  );
  const walls = [averageOver(wind, 'windward-wall', 0, 1), averageOver(wind, 'leeward-wall', 0, 1)];
  return wind.from === 'high side' ? [...roof.reverse(), ...walls.reverse()] : [...roof, ...walls];
}

/** Whether a wind presses everywhere the same way as another, and nowhere harder. */
function covers(larger: readonly number[], smaller: readonly number[]): boolean {
  const most = Math.max(...larger.map(Math.abs), ...smaller.map(Math.abs)) * same;
  return smaller.every((p, k) => {
    const q = larger[k]!;
    return Math.abs(p) <= Math.abs(q) + most && (p * q >= 0 || Math.abs(p) <= most);
  });
}

function nameOf(frame: number, noun: string): string {
  const order = ['the end', 'the second', 'the third', 'the fourth', 'the fifth', 'the sixth'];
  return frame === 0 ? `the end ${noun}` : `${order[frame] ?? 'a'} ${noun} from the end`;
}

/** How the zone and what the frame carries of it were found. */
function traced({ breadth, within, wind }: Near, zone: EndWind): Step[] {
  return [
    ...wind.steps,
    {
      symbol: 'b_e',
      meaning: 'breadth that the frame carries inside the end zone',
      formula: 'what of the breadth it carries lies within the reach of the zone',
      prose: true,
      inputs: [
        { symbol: 'b', meaning: 'breadth it carries in all', value: breadth, kind: 'length' },
        { symbol: 'l', meaning: 'reach of the end zone', value: zone.width, kind: 'length' },
      ],
      value: within,
      kind: 'length',
      source: wind.source,
    },
  ];
}

/** Weight, or crop, of a frame that carries only a share of the breadth; its own weight stays. */
function narrowed(one: LoadCase, system: FrameSystem, share: number, on: string): LoadCase {
  return {
    ...one,
    id: `${one.id}/${on}`,
    on,
    lines: one.lines.map((line) => {
      const own = one.nature === 'dead' ? -ownWeight(system.elements[line.element]!) : 0;
      return { ...line, wx: share * line.wx, wy: own + share * (line.wy - own) };
    }),
  };
}

function distinctById(cases: readonly LoadCase[]): LoadCase[] {
  return [...new Map(cases.map((one) => [one.id, one])).values()];
}
