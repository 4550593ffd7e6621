/** From the resolved shelter to everything that has to be bought, cut and dug for it. */
import { type Posts, railsUnder, type Shelter } from '@tautline/shelter';
import {
  countLine,
  cutLine,
  type Gap,
  looseLine,
  merged,
  metres,
  type Takeoff,
  type TakeoffLine,
} from './line.ts';
import { coverLines } from './lines/covers.ts';
import { doorLines, endFrameLines } from './lines/ends.ts';
import { gutterLines } from './lines/gutters.ts';
import { braceLines, postLines, railLines } from './lines/rails.ts';
import { roofLines } from './lines/roof.ts';
import { withCord } from './lines/sundries.ts';

/**
 * Every piece, count, area and volume, from the geometry; what cannot be counted is in `gaps`. Lengths
 * run along centre lines: what a fitting's body takes off a pipe is not deducted. Pure; never throws
 * for a shelter that resolved.
 */
export function takeoff(shelter: Shelter): Takeoff {
  const frames = shelter.roof.stations.length;
  const rails = [shelter.eaveRail, ...railsUnder(shelter), shelter.baseboards, ...shelter.purlins].filter(
    (rail) => rail !== undefined,
  );
  const posts = new Map<string, Posts>();
  for (const row of [shelter.sidePosts, ...rails.map((rail) => rail.posts)]) {
    if (row) posts.set(row.id, row);
  }
  const parts: readonly Takeoff[] = [
    roofLines(shelter.roof),
    ...[...posts.values()].map(postLines),
    ...rails.map((rail) => railLines(rail, shelter.length, frames)),
    ...shelter.braces.map(braceLines),
    ...shelter.covers.map((cover) => coverLines(cover, shelter.roof)),
    { lines: (shelter.gutters ?? []).flatMap((gutter) => gutterLines(gutter, shelter.length)), gaps: [] },
    ...(shelter.endFrames ? [endFrameLines(shelter.endFrames)] : []),
    ...(shelter.doors ?? []).map((door) => doorLines(door, shelter.endFrames)),
    framelessLines(shelter),
  ];
  const unmodelled = shelter.unmodelled
    .filter((one) => one.toBuy === true)
    .map(({ what, origin }) => ({ what: `${what}: in the spec, but not in the model`, origin }));
  const water = shelter.irrigation !== undefined && shelter.irrigation !== 'none';
  const gaps: Gap[] = [
    ...parts.flatMap((part) => part.gaps),
    ...(water ? [{ what: 'what the irrigation takes: only its kind is said', origin: shelter.origin }] : []),
    ...shelter.things.flatMap(({ kind, name, origin }) =>
      kind === 'bench' ? [{ what: `what the ${name} is made of: only its size is said`, origin }] : [],
    ),
    ...unmodelled,
  ];
  return { lines: merged(parts.flatMap((part) => part.lines).flatMap(withCord)), gaps };
}

/** Caps and inflated roofs, where no cover block has counted them. */
function framelessLines(shelter: Shelter): Takeoff {
  const { roof, length } = shelter;
  const covered = shelter.covers.some((cover) => cover.place === 'roof');
  const first = roof.line[0];
  const last = roof.line.at(-1);
  const around = first && last ? last.s - first.s : 0;
  const lines: TakeoffLine[] = [];
  if (roof.type === 'cap' && !covered) {
    if (roof.sheet.kind === 'sheet') {
      const count = Math.ceil(length / roof.sheet.coverWidth - 1e-9);
      const pieces = [{ length: around, count, note: 'cap' }];
      const cut = cutLine('covering', roof.sheet, roof.sheet.stockLengths, pieces, roof, [
        [`${count} sheets along `, metres(length), ', ', metres(around), ' long'],
      ]);
      const width = roof.sheet.coverWidth;
      lines.push({ ...cut, kind: 'area', total: cut.total * width, width, life: roof.sheet.life });
    } else {
      const why = ['the cap, ', metres(around), ' by ', metres(length)] as const;
      const loose = looseLine('covering', roof.sheet.title, 'area', around * length, roof, why);
      lines.push({ ...loose, id: `covering/${roof.sheet.id}`, item: roof.sheet, life: roof.sheet.life });
    }
  }
  if (roof.type === 'inflated' && roof.straps && !shelter.covers.some((cover) => cover.straps)) {
    const { item, spacing } = roof.straps;
    const count = Math.ceil(length / spacing - 1e-9);
    const steps = [[`${count} straps, one in each `, metres(spacing)]];
    const pieces = [{ length: around, count, note: 'strap' }];
    lines.push(
      item.per === 'piece' && (item.form === 'clip' || item.form === 'screw')
        ? countLine('fastening', item, count, roof, steps[0] ?? [])
        : cutLine('fastening', item, item.stockLengths, pieces, roof, steps),
    );
  }
  return { lines, gaps: [] };
}
