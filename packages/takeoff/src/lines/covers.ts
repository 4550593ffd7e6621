/** Film, mesh and sheet with what holds them. */
import type { Cover, FilmItem, MeshItem, Roof, SheetItem } from '@tautline/shelter';
import {
  countLine,
  cutLine,
  type Gap,
  metres,
  supplyLine,
  type Takeoff,
  type TakeoffLine,
  type Told,
} from '../line.ts';
import { buttedPieces } from './split.ts';

/** Overlap of two widths of film where one roll is too narrow, m: common practice, no source. */
const LAP = 0.3;
/** Strap beyond the film at each end, for tying down, m: common practice, no source. */
const TAIL = 0.5;
/** Rope or strap that ties the edge of the film down in one place, m: common practice, no source. */
const TIE = 1;
/** Spacing of the screws of a channel or board where none is said, m: common practice, no source. */
const SCREWS = 0.3;

/** How many equal surfaces a cover stands for: two sides, two ends, one roof. */
const surfacesOf = (cover: Cover): number => (cover.place === 'roof' ? 1 : 2);

export function coverLines(cover: Cover, roof: Roof): Takeoff {
  const gaps: Gap[] = [];
  const skin =
    cover.skin.kind === 'sheet' ? sheetLine(cover, cover.skin, roof) : filmLine(cover, cover.skin, gaps);
  return { lines: [skin, ...fasteningLines(cover, gaps), ...strapLines(cover)], gaps };
}

function filmLine(cover: Cover, skin: FilmItem | MeshItem, gaps: Gap[]): TakeoffLine {
  const { developedWidth: across, developedLength: along, layers } = cover;
  const width =
    cover.rollWidth ?? skin.rollWidths.find((roll) => roll >= across - 1e-9) ?? skin.rollWidths.at(-1);
  if (width === undefined) {
    gaps.push({
      what: `the roll widths of ${skin.title}: it is counted by its own area`,
      origin: cover.origin,
    });
  }
  const roll = width ?? across;
  const strips = roll >= across - 1e-9 || roll <= LAP ? 1 : Math.ceil((across - LAP) / (roll - LAP) - 1e-9);
  if (roll <= LAP)
    gaps.push({ what: `${skin.title}: a roll narrower than its lap covers nothing`, origin: cover.origin });
  const count = strips * surfacesOf(cover) * layers;
  const steps: Told[] = [
    [
      `${surfacesOf(cover)} surface(s) of `,
      metres(across),
      ' by ',
      metres(along),
      layers === 2 ? ', in two layers' : '',
      `, out of rolls `,
      metres(roll),
      ' wide',
      ...(strips > 1
        ? [`: ${strips} widths with laps of `, metres(LAP), ' (common practice, no source)']
        : []),
    ],
  ];
  return areaLine(cover, skin, skin.rollLengths, roll, [{ length: along, count }], steps);
}

function sheetLine(cover: Cover, sheet: SheetItem, roof: Roof): TakeoffLine {
  const slopes = cover.place === 'roof' && roof.type === 'rafters' && roof.form === 'gable' ? 2 : 1;
  const length = cover.developedWidth / slopes;
  const across = Math.ceil(cover.developedLength / sheet.coverWidth - 1e-9);
  const count = across * slopes * surfacesOf(cover) * cover.layers;
  const steps: Told[] = [
    [
      `${across} sheets side by side, each covering `,
      metres(sheet.coverWidth),
      ', ',
      metres(length),
      ' long',
    ],
  ];
  return areaLine(cover, sheet, sheet.stockLengths, sheet.coverWidth, [{ length, count }], steps);
}

function areaLine(
  cover: Cover,
  skin: FilmItem | MeshItem | SheetItem,
  stock: readonly number[],
  width: number,
  pieces: readonly { readonly length: number; readonly count: number }[],
  steps: readonly Told[],
): TakeoffLine {
  const cut = cutLine(
    'covering',
    skin,
    stock,
    pieces.map((piece) => ({ ...piece, note: cover.place })),
    cover,
    steps,
  );
  return { ...cut, kind: 'area', total: cut.total * width, width, life: skin.life };
}

/** Edges that are held, m: all four of a roof, top and bottom of a side or an end. */
function edgesOf(cover: Cover): readonly number[] {
  const { developedLength: along, developedWidth: across } = cover;
  return cover.place === 'roof' ? [along, along, across, across] : [along, along, along, along];
}

function fasteningLines(cover: Cover, gaps: Gap[]): readonly TakeoffLine[] {
  const { fastening, fasteningSpacing: every } = cover;
  if (!fastening) return [];
  const edges = edgesOf(cover);
  const whole = edges.reduce((sum, edge) => sum + edge, 0);
  const edgesText = `${cover.place}: ${edges.length} edges, `;
  if (fastening.form === 'channel' || fastening.form === 'board') {
    const pieces = edges.flatMap((edge) => buttedPieces(edge, fastening.stockLengths));
    const counts = new Map<number, number>();
    for (const piece of pieces) counts.set(piece, (counts.get(piece) ?? 0) + 1);
    const cut = [...counts].map(([length, count]) => ({ length, count, note: `${cover.place} edge` }));
    const lines = [
      cutLine('fastening', fastening, fastening.stockLengths, cut, cover, [
        [edgesText, metres(whole), ' in all'],
      ]),
    ];
    const apart = every ?? SCREWS;
    const screws = edges.reduce((sum, edge) => sum + placesAlong(edge, apart), 0);
    const why: Told = [
      edgesText,
      `${screws} screws every `,
      metres(apart),
      every === undefined ? ' (assumed: common practice, no source)' : '',
      ' and one more at each end',
    ];
    lines.push(
      supplyLine('fastening', cover.screws, `Screws for ${fastening.title}`, 'count', screws, cover, why),
    );
    return lines;
  }
  if (every === undefined) {
    gaps.push({ what: `how many of ${fastening.title}: no spacing is said`, origin: cover.origin });
    return [];
  }
  const single = edges.reduce((sum, edge) => sum + placesAlong(edge, every), 0);
  if (fastening.form === 'rope' || fastening.form === 'strap') {
    const pieces = [{ length: TIE, count: single, note: `${cover.place} edge, tied` }];
    return [
      cutLine('fastening', fastening, fastening.stockLengths, pieces, cover, [
        [
          edgesText,
          `${single} ties of `,
          metres(TIE),
          ' (common practice, no source), one every ',
          metres(every),
        ],
      ]),
    ];
  }
  return [
    countLine('fastening', fastening, single, cover, [
      edgesText,
      'one every ',
      metres(every),
      ' and one more at each end',
    ]),
  ];
}

/** How many places lie along an edge at this spacing, both ends included. */
const placesAlong = (edge: number, every: number): number => Math.floor(edge / every + 1e-9) + 1;

function strapLines(cover: Cover): readonly TakeoffLine[] {
  if (!cover.straps) return [];
  const { item, spacing } = cover.straps;
  const count = Math.ceil(cover.developedLength / spacing - 1e-9) * surfacesOf(cover);
  const length = cover.developedWidth + 2 * TAIL;
  const steps: Told[] = [
    [
      `${count} over the film, one in each `,
      metres(spacing),
      ', with ',
      metres(TAIL),
      ' at each end to tie down (common practice, no source)',
    ],
  ];
  return [cutLine('fastening', item, item.stockLengths, [{ length, count, note: 'strap' }], cover, steps)];
}
