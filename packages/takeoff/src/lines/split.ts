/** Where a long member falls into pieces, and how long each must be cut. */
import type { CurvePoint, MemberItem } from '@tautline/shelter';

/**
 * Piece lengths from left to right of a member of `length` with in-line joints at `at`, `beyond` longer
 * at each end (into the ground). Half of a joint's lap goes to each of the pieces it joins. All m.
 */
export function splitAt(
  length: number,
  beyond: number,
  joints: readonly { readonly at: number; readonly lap: number }[],
): readonly number[] {
  const inside = joints.filter((joint) => joint.at > 0 && joint.at < length).sort((a, b) => a.at - b.at);
  const ends = [-beyond, ...inside.map((joint) => joint.at), length + beyond];
  const laps = [0, ...inside.map((joint) => joint.lap), 0];
  return ends
    .slice(1)
    .map(
      (end, index) =>
        end - (ends[index] as number) + ((laps[index] as number) + (laps[index + 1] as number)) / 2,
    );
}

/**
 * Pieces of a rail that runs `run` along the house, out of the longest stock length: pipes join where
 * the stock ends, timber and poles over a support. Each piece shares `lap` with the next, or its swage
 * where it has one. Without stock lengths, one piece. All m.
 */
export function runPieces(run: number, member: MemberItem, span: number, lap = 0): readonly number[] {
  const longest = member.stockLengths.at(-1);
  if (longest === undefined || run <= longest + 1e-9) return [run];
  const overSupports = member.kind === 'lumber' || member.kind === 'pole';
  const shared = member.swage ?? lap;
  const bays = Math.floor((longest - shared) / span + 1e-9);
  const step = overSupports && bays >= 1 ? bays * span : longest - shared;
  if (!(step > 0)) return [run];
  const pieces: number[] = [];
  for (let left = run; left > 1e-9; left -= step) {
    const last = left <= step + shared + 1e-9;
    pieces.push(last ? left : step + shared);
    if (last) break;
  }
  return pieces;
}

/** Lap of two lengths of a straight member that is longer than any sold, m: common practice, no source. */
export const SPLICE = 0.5;

/** Equal pieces of a straight member, each lapping the next, where it is longer than any sold. All m. */
export function splicedPieces(length: number, stock: readonly number[]): readonly number[] {
  const longest = stock.at(-1);
  if (longest === undefined || length <= longest + 1e-9 || longest <= SPLICE) return [length];
  const count = Math.ceil((length - SPLICE) / (longest - SPLICE) - 1e-9);
  return Array.from({ length: count }, () => (length + (count - 1) * SPLICE) / count);
}

/** Whole stock lengths butted end to end along a run, and the rest. All m. */
export function buttedPieces(run: number, stock: readonly number[]): readonly number[] {
  const longest = stock.at(-1);
  if (longest === undefined) return [run];
  const pieces: number[] = [];
  for (let left = run; left > 1e-6; left -= longest) pieces.push(Math.min(left, longest));
  return pieces;
}

/** Equal pieces counted together, longest first. */
export function counted(
  lengths: readonly number[],
  times: number,
  note: string,
): readonly { readonly length: number; readonly count: number; readonly note: string }[] {
  const counts = new Map<string, { length: number; count: number }>();
  for (const length of lengths) {
    const key = length.toFixed(6);
    const one = counts.get(key) ?? { length, count: 0 };
    one.count += times;
    counts.set(key, one);
  }
  return [...counts.values()].sort((a, b) => b.length - a.length).map((one) => ({ ...one, note }));
}

/** Length of a centre line that lies at or below a height, both legs together, m. */
export function lengthBelow(line: readonly CurvePoint[], height: number): number {
  let total = 0;
  for (const [index, to] of line.entries()) {
    const from = line[index - 1];
    if (!from) continue;
    const step = to.s - from.s;
    const low = Math.min(from.y, to.y);
    const high = Math.max(from.y, to.y);
    if (high <= height) total += step;
    else if (low < height) total += (step * (height - low)) / (high - low);
  }
  return total;
}

/** m */
const HAIR = 1e-6;

/** Distance between the two places where a line passes a height, m; undefined when it does so not twice. */
export function widthAt(line: readonly CurvePoint[], height: number): number | undefined {
  const crossings: number[] = [];
  // A line drawn stretch by stretch ends a hair above or below the height it is meant to end at.
  const over = ({ y }: CurvePoint): number => (Math.abs(y - height) < HAIR ? 0 : y - height);
  for (const [index, to] of line.entries()) {
    const from = line[index - 1];
    if (!from || over(from) === over(to) || over(from) * over(to) > 0) continue;
    crossings.push(from.x + (over(from) / (over(from) - over(to))) * (to.x - from.x));
  }
  const width = Math.max(...crossings) - Math.min(...crossings);
  return crossings.length >= 2 && width > 0 ? width : undefined;
}
