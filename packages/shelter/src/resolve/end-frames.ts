/** The two ends: uprights and rails in the end frames, and the doors in them. */
import { format } from '@tautline/quantity';
import { clearHeightAt, type Overhead, undersideAt } from '../geometry/headroom.ts';
import { crossingsAt } from '../geometry/line.ts';
import type { MemberItem } from '../model/items.ts';
import { postRows } from '../model/rails-under.ts';
import type { Door, EndFrames, Posts, Rail, Roof } from '../model/shelter.ts';
import { factNode, factNodes, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, memberOf } from './context.ts';
import { readFoot } from './foot.ts';
import { itemOf } from './items.ts';
import { assume, numberFact, problem, someLength, within } from './notes.ts';
import { unitsOf } from './project.ts';
import { supplyOf } from './supplies.ts';

/** What the ends are set between. */
export interface Between extends Overhead {
  readonly sidePosts?: Posts | undefined;
  readonly ridge?: Rail | undefined;
  readonly inner?: readonly Rail[];
}

const members = ['pipe', 'rod', 'pole', 'lumber'];

export function readDoors(between: Between, context: Context): readonly Door[] {
  const ends = factNode(context.shelter, 'ends');
  return factNodes(ends, 'door').flatMap((fact, index) => readDoor(fact, index, between, context) ?? []);
}

function readDoor(fact: SpecNode, index: number, between: Between, context: Context): Door | undefined {
  const { notes } = context;
  const [wide, high] = [numberIn(fact, 'width'), numberIn(fact, 'height')];
  if (wide === undefined || high === undefined) return undefined;
  const width = within(notes, wide, 'the width of the door', { above: 0, most: context.width }, fact);
  const height = within(notes, high, 'the height of the door', someLength, fact);
  if (width === undefined || height === undefined) return undefined;
  const id = index === 0 ? 'door' : `door-${index + 1}`;
  const left =
    numberFact(notes, fact, 'from', { least: 0, most: 1000 }) ??
    assume(notes, id, 'from', (context.width - width) / 2, 'length', 'in the middle', fact.origin);
  const at =
    wordIn(factNode(fact, 'at')) ??
    assume(notes, id, 'at', 'front', 'word', 'one end needs a door', fact.origin);
  const end = at === 'both-ends' ? 'both' : at === 'back' ? 'back' : 'front';
  const said = factNode(fact, 'of');
  const leaf = said && (itemOf(said, members, context.world, notes) as MemberItem | undefined);
  const hinges = supplyOf(fact, { form: 'hinge', part: id, word: 'hinged' }, context);
  const latch = supplyOf(fact, { form: 'latch', part: id, word: 'latched' }, context);
  const door: Door = {
    id,
    origin: fact.origin,
    width,
    height,
    left,
    end,
    ...(leaf ? { leaf } : {}),
    ...(hinges ? { hinges } : {}),
    ...(latch ? { latch } : {}),
  };
  fits(door, between, context);
  return door;
}

/** Whether the opening is free: inside the house, under the roof, and no post in it. */
function fits(door: Door, between: Between, context: Context): void {
  const say = (si: number): string => format(si, 'length', unitsOf(context.world));
  const warn = (words: string) => problem(context.notes, 'door-place', words, door.origin, 'warning');
  const right = door.left + door.width;
  if (right > context.width + 1e-6) {
    warn(`the door reaches ${say(right - context.width)} beyond the side: move it in`);
    return;
  }
  const [a, b] = [clearHeightAt(between, door.left), clearHeightAt(between, right)];
  const least = Math.min(a ?? Number.POSITIVE_INFINITY, b ?? Number.POSITIVE_INFINITY);
  if (Number.isFinite(least) && door.height > least + 1e-6) {
    warn(
      `the door is ${say(door.height)} high, but the roof or a tie over its corner is ${say(least)} up: make it lower or narrower, or move it to the middle`,
    );
  }
  const posts = postRows(between).flatMap(({ lines }) => lines);
  const inWay = posts.find((x) => x > door.left + 1e-6 && x < right - 1e-6);
  if (inWay !== undefined) {
    warn(
      `a post stands in the door, ${say(inWay)} from the left side: put the door beside it, as in \`from side ${say(inWay + 0.1)}\``,
    );
  }
}

export function readEndFrames(
  block: SpecNode,
  doors: readonly Door[],
  { roof }: Between,
  context: Context,
): EndFrames | undefined {
  const { notes, width } = context;
  const member = memberOf(block, ['shelter', 'end-frames'], context);
  if (!member) return undefined;
  const count =
    numberFact(notes, block, 'uprights', { least: 0, most: 50 }) ??
    assume(notes, 'end-frames', 'uprights', 2, 'count', 'one at each side of a door', block.origin);
  const uprights = uprightPlaces(Math.round(count), width, doors).flatMap((x) => {
    const height = undersideAt(roof, x);
    return height === undefined ? [] : [{ x, height }];
  });
  const railFact = factNode(block, 'rail');
  const rail = railFact && readEndRail(railFact, roof, context);
  return {
    id: 'end-frames',
    origin: block.origin,
    member,
    uprights,
    foot: readFoot(block, 'end-frames/foot', 'hole', context),
    ...(rail ? { rail } : {}),
  };
}

/** x of the uprights of each end, m: at both sides of the doors as far as they go round, the rest spread between. */
function uprightPlaces(count: number, width: number, doors: readonly Door[]): readonly number[] {
  const jambs = doors.flatMap(({ left, width: wide }) => [left, left + wide]).slice(0, count);
  const places = [...new Set(jambs)].sort((a, b) => a - b);
  while (places.length < count) {
    // Each further one halves the widest gap that no door stands in.
    const ends = [0, ...places, width];
    const gaps = ends.slice(1).map((to, n) => ({ from: ends[n] ?? 0, to }));
    const free = gaps.filter(
      ({ from, to }) => !doors.some((door) => door.left < to - 1e-6 && door.left + door.width > from + 1e-6),
    );
    const widest = (free.length > 0 ? free : gaps).reduce((a, b) =>
      b.to - b.from > a.to - a.from + 1e-9 ? b : a,
    );
    if (places.length === 0 && doors.length === 0)
      return Array.from({ length: count }, (_, n) => (width * (n + 1)) / (count + 1));
    places.push((widest.from + widest.to) / 2);
    places.sort((a, b) => a - b);
  }
  return places;
}

function readEndRail(fact: SpecNode, roof: Roof, context: Context): EndFrames['rail'] | undefined {
  const { notes, width } = context;
  const member = itemOf(fact, members, context.world, notes) as MemberItem | undefined;
  if (!member) return undefined;
  const usual = roof.springing > 0 ? roof.springing : 0.7 * roof.rise;
  const height =
    numberIn(fact, 'height') ??
    assume(notes, 'end-frames', 'rail', usual, 'length', 'level with the eave', fact.origin);
  if (height <= roof.springing) return { member, height, from: 0, to: width, origin: fact.origin };
  const crossed = crossingsAt(roof.line, height);
  const [from, to] = [Math.min(...crossed), Math.max(...crossed)];
  if (crossed.length < 2) {
    return problem(
      notes,
      'out-of-range',
      `the rail of the end frames lies above the roof, which is ${format(roof.springing + roof.rise, 'length', unitsOf(context.world))} up`,
      fact.origin,
    );
  }
  return { member, height, from, to, origin: fact.origin };
}
