import type { Shelter } from '@tautline/shelter';
import { allPosts, allRails, anchorOut, bracePlaces } from './members.ts';

export interface Peg {
  readonly part: string;
  /** L for the left line, R for the right, then the other lines, anchors (A), guys (G) and uprights of the ends (U). */
  readonly name: string;
  /** Along the house and across it from peg L1, m. */
  readonly along: number;
  readonly across: number;
}

/** Every place where something goes into or onto the ground, in walking order. Peg L1 is the origin. */
export function pegsOf(shelter: Shelter): readonly Peg[] {
  const { roof, width } = shelter;
  const rows: { readonly part: string; readonly x: number; readonly stations: readonly number[] }[] = [];
  const first = roof.line[0];
  const last = roof.line[roof.line.length - 1];
  if (!shelter.sidePosts && first && last) {
    const part = roof.type === 'bows' ? (roof.foot?.id ?? roof.id) : roof.id;
    rows.push({ part, x: first.x, stations: roof.stations }, { part, x: last.x, stations: roof.stations });
  }
  for (const row of allPosts(shelter))
    for (const x of row.lines) rows.push({ part: row.foot.id, x, stations: row.stations });
  const [left, right] = [Math.min(...rows.map(({ x }) => x)), Math.max(...rows.map(({ x }) => x))];
  const origin = Math.min(...rows.flatMap(({ stations }) => stations));
  let line = 0;
  const letter = (x: number): string =>
    x === left
      ? 'L'
      : x === right && width > 0
        ? 'R'
        : (['C', 'D', 'E', 'F', 'H', 'J', 'K'][line++] ?? `M${line}`);
  const pegs = rows.flatMap(({ part, x, stations }) => {
    const name = letter(x);
    return stations.map(
      (z, i): Peg => ({ part, name: `${name}${i + 1}`, along: z - origin, across: x - left }),
    );
  });
  let anchor = 0;
  for (const rail of allRails(shelter))
    if (rail.endAnchor)
      for (const { x } of rail.lines)
        for (const z of [-anchorOut(rail), shelter.length + anchorOut(rail)]) {
          anchor++;
          pegs.push({ part: rail.endAnchor.id, name: `A${anchor}`, along: z - origin, across: x - left });
        }
  let guy = 0;
  for (const brace of shelter.braces)
    if (brace.foot)
      for (const ends of bracePlaces(shelter, brace)) {
        const low = brace.from.y < brace.to.y ? ends[0] : ends[1];
        guy++;
        pegs.push({ part: brace.foot.id, name: `G${guy}`, along: low.x - origin, across: low.y - left });
      }
  let upright = 0;
  const ends = shelter.endFrames;
  for (const z of ends ? [0, shelter.length] : [])
    for (const { x } of ends?.uprights ?? []) {
      upright++;
      pegs.push({ part: ends?.foot.id ?? '', name: `U${upright}`, along: z - origin, across: x - left });
    }
  return pegs;
}
