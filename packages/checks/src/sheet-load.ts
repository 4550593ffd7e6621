/** What a gust does to stiff sheets on a roof: the lines that hold them, and the local wind on them. */
import { type CladdingZone, claddingSuction, type Step } from '@tautline/loads';
import { lengthOf, quantityValue, type Shelter } from '@tautline/shelter';
import { windShape } from '@tautline/structure';
import { windFactor } from './basis.ts';
import type { Lever } from './check.ts';

/** Lines that a sheet is screwed to, from eave to eave, m along the frame. */
function sheetLines(shelter: Shelter): readonly number[] {
  const { roof, purlins } = shelter;
  const total = lengthOf(roof.line);
  const lines = purlins.flatMap((rail) =>
    rail.lines.flatMap((line) => (line.s === undefined ? [] : [line.s])),
  );
  return [0, ...lines, total].sort((a, b) => a - b);
}

/** Widest distance between two of them, m. */
export function sheetSpan(shelter: Shelter): number {
  const lines = sheetLines(shelter);
  return Math.max(...lines.slice(1).map((line, index) => line - lines[index]!));
}

export interface SheetWind {
  /** At the level of the combinations, Pa, both positive. */
  readonly suction: number;
  readonly pressure: number;
  readonly steps: readonly Step[];
}

/** Local wind on a roof of sheets in one of its zones. */
export function sheetWind(shelter: Shelter, place: CladdingZone['place']): SheetWind {
  const { zones, steps } = claddingSuction(shelter.site, windShape(shelter));
  const zone = zones.find((one) => one.place === place);
  const factor = windFactor(shelter.site);
  return {
    suction: factor * Math.max(0, -(zone?.suction ?? 0)),
    pressure: factor * (zone?.pressure ?? 0),
    steps,
  };
}

/** More purlins under the sheets, evenly spread. */
export function closerLines({ purlins }: Shelter): Lever[] {
  const first = purlins[0];
  if (first === undefined) return [];
  return [
    {
      type: 'choice',
      options: [1, 2, 3, 4, 6, 8, 10].map((extra) => ({
        title: [`Lay ${first.lines.length + extra} purlins`],
        edits: [
          {
            type: 'replace' as const,
            node: first.origin,
            slots: { count: quantityValue(first.lines.length + extra, 'count', first.origin) },
          },
        ],
      })),
    },
  ];
}
