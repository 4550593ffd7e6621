/** How much water the film can hold in a pocket at the highest part of a roof line. */

export interface LinePoint {
  readonly x: number;
  readonly y: number;
}

export interface CrownPocket {
  /** Water in the pocket for one frame, m3. */
  readonly volume: number;
  /** Greatest depth, m. */
  readonly depth: number;
  /** Where it lies, m. */
  readonly from: number;
  readonly to: number;
  /** Depth of water at each point of the line, mean along the house, m. */
  readonly depths: readonly number[];
}

const empty = (count: number): CrownPocket => ({
  volume: 0,
  depth: 0,
  from: 0,
  to: 0,
  depths: new Array<number>(count).fill(0),
});

/**
 * The largest pocket on a roof line whose film may sag up to `sag` between the frames.
 *
 * Half way between two frames the film lies lower than the frames by a pocket shape
 * f (1 - ((x - c)/b)²). The half-width b that holds most water is looked for; the water stands level
 * with the lower of its two rims. Along the house the sag is a parabola, so its mean is 2/3 of the
 * middle. Where the frames themselves lie below the water, the water stands over them too.
 */
export function crownPocket(line: readonly LinePoint[], sag: number, breadth: number): CrownPocket {
  if (line.length < 3) return empty(line.length);
  const centre = pocketCentre(line);
  const span = line[line.length - 1]!.x - line[0]!.x;
  let best = empty(line.length);
  for (let k = 1; k <= 24; k++) {
    const b = (span / 2) * (k / 24);
    const bottom = line.map((point) => {
      const t = (point.x - centre) / b;
      return point.y - (Math.abs(t) < 1 ? sag * (1 - t * t) : 0);
    });
    const pocket = fill(line, bottom, breadth);
    if (pocket.volume > best.volume) best = pocket;
  }
  return best;
}

/** Lowest point between the two highest shoulders, or the crown when the line has only one. */
function pocketCentre(line: readonly LinePoint[]): number {
  let top = 0;
  line.forEach((point, index) => {
    if (point.y > line[top]!.y) top = index;
  });
  const middle = line.length >> 1;
  if (Math.abs(top - middle) <= 1) return line[middle]!.x;
  // A dipped crown has a shoulder on each side; the dip is the lowest point between them.
  const mirror = line.length - 1 - top;
  const [from, to] = top < mirror ? [top, mirror] : [mirror, top];
  let low = (from + to) >> 1;
  for (let index = from; index <= to; index++) if (line[index]!.y < line[low]!.y) low = index;
  return line[low]!.x;
}

function fill(line: readonly LinePoint[], bottom: readonly number[], breadth: number): CrownPocket {
  let low = -1;
  for (let index = 1; index + 1 < bottom.length; index++) {
    if (bottom[index]! <= bottom[index - 1]! && bottom[index]! <= bottom[index + 1]!) {
      if (low < 0 || bottom[index]! > bottom[low]!) low = index;
    }
  }
  if (low < 0) return empty(line.length);
  const rim = (step: 1 | -1): number => {
    let highest = bottom[low]!;
    for (let index = low; index >= 0 && index < bottom.length; index += step)
      highest = Math.max(highest, bottom[index]!);
    return highest;
  };
  const level = Math.min(rim(1), rim(-1));
  const depths = new Array<number>(line.length).fill(0);
  let first = low;
  let last = low;
  while (first > 0 && bottom[first - 1]! < level) first--;
  while (last + 1 < bottom.length && bottom[last + 1]! < level) last++;
  let volume = 0;
  let deepest = 0;
  for (let index = first; index <= last; index++) {
    const depth = level - bottom[index]!;
    deepest = Math.max(deepest, depth);
    const onFrame = Math.max(0, level - line[index]!.y);
    depths[index] = onFrame + (2 / 3) * (depth - onFrame);
  }
  for (let index = Math.max(1, first); index <= Math.min(last + 1, line.length - 1); index++) {
    volume += ((depths[index]! + depths[index - 1]!) / 2) * (line[index]!.x - line[index - 1]!.x);
  }
  return {
    volume: volume * breadth,
    depth: deepest,
    from: line[first]!.x,
    to: line[last]!.x,
    depths,
  };
}
