/** Everything for several shelters side by side: each as often as it stands, and the ties between them. */
import type { Range, Shelter } from '@tautline/shelter';
import { cutLine, type Gap, metres, type Takeoff, type TakeoffLine } from './line.ts';
import { groundOf } from './materials.ts';
import { takeoff } from './takeoff.ts';

/** What something takes, and the ground that it keeps the rain off, m2. */
export interface Taken {
  readonly takeoff: Takeoff;
  readonly ground: number;
}

/** Of a shelter, or of shelters side by side. */
export const takenBy = (what: Shelter | Range): Taken =>
  'places' in what
    ? { takeoff: rangeTakeoff(what), ground: rangeGround(what) }
    : { takeoff: takeoff(what), ground: groundOf(what) };

/** Ground under cover of all its shelters, m2. */
const rangeGround = ({ places }: Range): number =>
  places.reduce((sum, { shelter }) => sum + groundOf(shelter), 0);

/** What a range takes. Shelters that stand several times are counted once and multiplied. */
export function rangeTakeoff(range: Range): Takeoff {
  const standing = new Map<Shelter, number>();
  for (const { shelter } of range.places) standing.set(shelter, (standing.get(shelter) ?? 0) + 1);
  const lines: TakeoffLine[] = [];
  const gaps: Gap[] = [];
  for (const [shelter, count] of standing) {
    const one = takeoff(shelter);
    lines.push(...one.lines.map((line) => times(line, count, shelter.name)));
    gaps.push(...one.gaps);
  }
  lines.push(...tieLines(range));
  return { lines, gaps };
}

function times(line: TakeoffLine, count: number, name: string): TakeoffLine {
  if (count === 1) return line;
  return {
    ...line,
    total: line.total * count,
    ...(line.pieces === undefined
      ? {}
      : { pieces: line.pieces.map((piece) => ({ ...piece, count: piece.count * count })) }),
    steps: [...line.steps, [`all of it ${count} times, once for each ${name}`]],
  };
}

/** A tie reaches this far over the frame at both ends, to be fixed to it, m: common practice, no source. */
const reach = 0.15;

/** Ties between neighbours, over the length that both have. */
function tieLines({ places, tie, gap, origin }: Range): TakeoffLine[] {
  if (tie === undefined) return [];
  const { member, spacing } = tie;
  const counts = places.slice(1).map(({ shelter }, index) => {
    const shared = Math.min(shelter.length, places[index]!.shelter.length);
    return Math.floor(shared / spacing + 1e-9) + 1;
  });
  const count = counts.reduce((sum, one) => sum + one, 0);
  const length = gap + 2 * reach;
  const stock = member.kind === 'cable' ? [] : member.stockLengths;
  return [
    cutLine('bracing', member, stock, [{ length, count, note: 'tie to the next' }], { id: 'range', origin }, [
      [
        `${count} ties, one each `,
        metres(spacing),
        ' in each of the gaps, ',
        metres(gap),
        ' wide, and ',
        metres(reach),
        ' over the frame at both ends (common practice, no source)',
      ],
    ]),
  ];
}
