import { hang, type Line, meanDepth, PARTS, type Pocket } from './pond.ts';

/** Heights within this, m, are level. */
const LEVEL = 1e-9;

/**
 * The pockets of a bent roof line whose skin sags up to `sag` between the frames, that which holds most first: in
 * every hollow and on every crown of the line the half width that holds most is looked for, and of pockets that
 * overlap the larger is kept. An edge of the sag is a point of the line. Water stands level with the lower of the two brims. `within`: only hollows and crowns
 * among these points.
 */
export function pocketsOf(line: Line, sag: number, within?: Pick<Pocket, 'left' | 'right'>): Pocket[] {
  // The search looks at every half member; the pond itself is measured more finely.
  const step = PARTS / 2;
  const coarse: Line = { x: every(line.x, step), y: every(line.y, step) };
  const bottom = new Float64Array(coarse.y.length);
  const found: { middle: number; edge: number; volume: number }[] = [];
  for (const middle of turns(coarse.y)) {
    if (within && (step * middle < within.left || step * middle > within.right)) continue;
    // to the farther end of the line
    const side = 2 * middle < bottom.length ? 1 : -1;
    let best = { middle, edge: middle, volume: 0 };
    for (let edge = middle + side; edge >= 0 && edge < bottom.length; edge += side) {
      const volume = heldBy(coarse, { middle, edge, sag }, bottom);
      if (volume > best.volume) best = { middle, edge, volume };
      if (!(sag > 0)) break;
    }
    if (best.volume > 0) found.push(best);
  }
  const kept: Pocket[] = [];
  for (const { middle, edge } of found.sort((p, q) => q.volume - p.volume)) {
    const shape = { middle: step * middle, edge: step * edge, sag };
    const pocket = { ...shape, ...brims(skin(line, shape), lowOf(line, shape)) };
    if (kept.every(({ left, right }) => pocket.right <= left || pocket.left >= right)) kept.push(pocket);
  }
  return kept;
}

/** Level at which a pocket of a line runs over. */
export function spillOf(line: Line, pocket: Pocket): number {
  const y = skin(line, pocket);
  return Math.min(y[pocket.left]!, y[pocket.right]!);
}

/** Height of the skin half way between two frames at every point of the line. */
export function skin(
  line: Line,
  pocket: Shape,
  out: Float64Array = new Float64Array(line.y.length),
): Float64Array {
  const { x, y } = line;
  const { middle, edge, sag } = pocket;
  const centre = x[middle]!;
  const halfWidth = Math.abs(x[edge]! - centre);
  for (let k = 0; k < out.length; k++) out[k] = y[k]! - hang(x[k]! - centre, halfWidth, sag);
  return out;
}

function every(all: Float64Array, step: number): Float64Array {
  const some = new Float64Array((all.length - 1) / step + 1);
  for (let k = 0; k < some.length; k++) some[k] = all[k * step]!;
  return some;
}

/** Points where a line turns from rising to falling or back, a level run by its middle; beyond its ends it falls. */
function turns(y: Float64Array): number[] {
  const found: number[] = [];
  let rising = true;
  for (let from = 0; from < y.length; ) {
    let to = from;
    while (to + 1 < y.length && Math.abs(y[to + 1]! - y[from]!) < LEVEL) to++;
    const rises = to + 1 < y.length && y[to + 1]! > y[from]!;
    const atEnd = to === 0 || from === y.length - 1;
    if (rises !== rising && !atEnd) found.push((from + to) >> 1);
    rising = rises;
    from = to + 1;
  }
  return found;
}

type Shape = Pick<Pocket, 'middle' | 'edge' | 'sag'>;

/** Lowest of the low places of the skin over the width of a pocket; its middle where it has none. */
function lowOf(line: Line, shape: Shape, y = skin(line, shape)): number {
  const { middle, edge } = shape;
  const { x } = line;
  const halfWidth = Math.abs(x[edge]! - x[middle]!);
  let low = middle;
  let found = false;
  for (let k = 1; k < y.length - 1; k++) {
    if (Math.abs(x[k]! - x[middle]!) > halfWidth || y[k]! > y[k - 1]! || y[k]! > y[k + 1]!) continue;
    if (found && y[k]! >= y[low]!) continue;
    low = k;
    found = true;
  }
  return low;
}

/**
 * The brims of the water over a low: it rises until it runs over the lower of the highest points to either side, and
 * reaches to the first crown on each side that stands out of it.
 */
function brims(y: Float64Array, low: number): Pick<Pocket, 'low' | 'left' | 'right'> {
  const level = Math.min(barrier(y, low, -1), barrier(y, low, 1));
  const crown = (step: 1 | -1): number => {
    let k = low;
    while (y[k]! < level) k += step;
    while (y[k + step]! > y[k]!) k += step;
    return k;
  };
  return { low, left: crown(-1), right: crown(1) };
}

/** Height of the highest point to one side of a low before lower ground or the line's end. */
function barrier(y: Float64Array, low: number, step: 1 | -1): number {
  let top = y[low]!;
  for (let k = low + step; k >= 0 && k < y.length && y[k]! >= y[low]!; k += step) top = Math.max(top, y[k]!);
  return top;
}

/** Water up to the brim per metre of breadth, m2; `bottom` is filled with the skin. */
function heldBy(line: Line, shape: Shape, bottom: Float64Array): number {
  const { x } = line;
  const { middle, edge, sag } = shape;
  const halfWidth = Math.abs(x[edge]! - x[middle]!);
  const y = skin(line, shape, bottom);
  const { left, right } = brims(y, lowOf(line, shape, y));
  const level = Math.min(y[left]!, y[right]!);
  let volume = 0;
  let before = 0;
  for (let k = left; k <= right; k++) {
    const depth = level - y[k]!;
    const here = depth > 0 ? meanDepth(depth, hang(x[k]! - x[middle]!, halfWidth, sag)) : 0;
    if (k > left) volume += ((before + here) / 2) * Math.abs(x[k]! - x[k - 1]!);
    before = here;
  }
  return volume;
}
