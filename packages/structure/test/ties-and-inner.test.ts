import { lasts } from '@tautline/loads';
import { pinnedBow, roundSolid } from '@tautline/mechanics';
import type { Bows, Brace, CableItem, MemberItem, Posts, Rail, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { analyseFrame, analyseHouse, frameView } from '../src/index.ts';
import { build, respond } from '../src/response/solve.ts';
import { bowFrame } from '../src/system/bow-frame.ts';
import { conditionAt, stateIn } from '../src/system/condition.ts';
import { pipe, postStock, pvcOneInch, sprungHouse, steel } from './fixtures.ts';

const origin = sprungHouse().origin;
const height = 2;
const site = { coldest: 23, hottest: 23 };

/** Posts too limber to hold anything sideways, so that a tie at their heads has it all. */
const limber: MemberItem = pipe('limber', steel, 0.012, 0.001, [6]);

function onPosts(member: MemberItem, braces: readonly Brace[], bow: Partial<Bows> = {}): Shelter {
  const base = sprungHouse({ member: pvcOneInch });
  const { roof } = base;
  if (roof.type !== 'bows') throw new Error('bows');
  const { foot: _, ...seated } = roof;
  const posts: Posts = {
    id: 'side-posts',
    origin,
    member,
    where: 'sides',
    lines: [0, base.width],
    spacing: roof.spacing,
    stations: roof.stations,
    height,
    foot: { id: 'side-posts/foot', origin, kind: 'concrete', driven: 0.6, across: 0.2, fixity: 'clamped' },
  };
  return {
    ...base,
    roof: {
      ...seated,
      springing: height,
      line: roof.line.map((point) => ({ ...point, y: point.y + height })),
      ...bow,
    },
    sidePosts: posts,
    braces,
  };
}

function tie(member: MemberItem | CableItem, y: number, width: number, count = 3): Brace {
  return {
    id: 'ties',
    origin,
    role: 'tie',
    plane: 'across',
    member,
    count,
    from: { x: 0, y, z: 0 },
    to: { x: width, y, z: 0 },
  };
}

const wire: CableItem = {
  kind: 'cable',
  id: 'wire',
  title: 'wire',
  source: 'test',
  origin,
  prices: [],
  diameter: 0.004,
  breakingLoad: 9e3,
  modulus: 190e9,
  area: 12e-6,
  massPerLength: 0.1,
};

const { width } = sprungHouse();

describe('a tie at the eave under a sprung bow', () => {
  const built = (shelter: Shelter) =>
    build(bowFrame(shelter, shelter.roof as Bows, conditionAt(site, 'built'), undefined));

  it.each([
    ['a stiff pipe', pipe('stout', steel, 0.06, 0.004, [6])],
    ['a wire', wire],
  ])('takes the thrust of the elastica where the posts cannot: %s', (_, member) => {
    const state = built(onPosts(limber, [tie(member, height, width)]));
    const index = state.system.elements.findIndex(({ role }) => role === 'tie');
    const bow = pinnedBow({ span: width, rise: 7.5 * 0.3048, points: 129 });
    if (!bow.ok) throw new Error(bow.reason);
    const section = pvcOneInch.section;
    if (section.shape !== 'round-hollow') throw new Error('pipe');
    const EI =
      2.76e9 *
      (roundSolid(section.outside).secondMoment -
        roundSolid(section.outside - 2 * section.wall).secondMoment);
    // Curvature at the crown times EI is the bending there, and that is thrust times rise: statics of the pinned bow.
    const crown = bow.line.reduce((best, point) => (point.y > best.y ? point : best));
    const thrust = (EI * Math.abs(crown.curvature)) / crown.y;
    expect(state.status).toBe('holds');
    expect(state.result.elementForces[index]!.axial / thrust).toBeCloseTo(1, 2);
  });

  it('leaves the posts what it does not take: the fewer ties, the further they bend out', () => {
    const head = (braces: readonly Brace[]): number => {
      const state = built(onPosts(postStock, braces));
      const end = state.system.model.elements[state.system.roof.at(-1)!]!.j;
      return state.result.displacements[end]!.dx;
    };
    const slim = pipe('slim', steel, 0.003, 0.0002, [6]);
    const [none, half, all] = [
      head([]),
      head([tie(slim, height, width, 2)]),
      head([tie(slim, height, width)]),
    ];
    expect(none).toBeGreaterThan(0.001);
    expect(half).toBeLessThan(none);
    expect(all).toBeLessThan(half);
  });
});

describe('a tied arch that is not sprung', () => {
  it('follows the force method: H = ∫ M y ds / EI over ∫ y² ds / EI + ∫ cos² ds / EA + 1 / K', () => {
    const member = pipe('steel-arch', steel, 0.042, 0.003, [6]);
    const rod = pipe('rod', steel, 0.006, 0.0029, [6]);
    const shelter = onPosts(limber, [tie(rod, height, width)], { member, shape: 'arc' });
    const bows = shelter.roof as Bows;
    const state = build(bowFrame(shelter, bows, conditionAt(site, 'gust'), undefined));
    const { system } = state;
    const w = 20;
    // An even load on plan, small enough to leave the shape alone.
    const lines = system.roof.map((element) => {
      const { dx, length } = system.elements[element]!;
      return { element, wx: 0, wy: (-w * dx) / length };
    });
    const load = {
      id: 'w',
      title: 'w',
      source: 'test',
      lines,
      points: [],
      duration: 'gust' as const,
      use: 'strength' as const,
    };
    const response = respond(state, load, 'gust');
    const index = system.elements.findIndex(({ role }) => role === 'tie');
    const got = response.forces.find(({ element }) => element === index)!.axial;
    const { EI, EA } = system.model.elements[system.roof[0]!]!;
    let [top, below] = [0, 0];
    for (let k = 1; k < bows.line.length; k++) {
      const [a, b] = [bows.line[k - 1]!, bows.line[k]!];
      const [ds, x, y] = [b.s - a.s, (a.x + b.x) / 2, (a.y + b.y) / 2 - height];
      const moment = (w * x * (width - x)) / 2;
      top += (moment * y * ds) / EI!;
      below += (y * y * ds) / EI! + (((b.x - a.x) / ds) ** 2 * ds) / EA!;
    }
    const I = roundSolid(0.012).secondMoment - roundSolid(0.01).secondMoment;
    const [tied, posts] = [system.model.elements[index]!.EA / width, (3 * 200e9 * I) / height ** 3 / 2];
    const H = top / (below + 1 / (tied + posts));
    expect((H * tied) / (tied + posts)).toBeGreaterThan(5);
    expect(got / ((H * tied) / (tied + posts))).toBeCloseTo(1, 2);
  });
});

/** Two inner lines with their rails and posts, not far from the crown. */
function withInner(shelter: Shelter, member: MemberItem, spacing: number): Shelter {
  const bows = shelter.roof as Bows;
  const at = [0.42, 0.58].map((share) => {
    const s = share * bows.line.at(-1)!.s;
    const { x, y } = bows.line.reduce((best, p) => (Math.abs(p.s - s) < Math.abs(best.s - s) ? p : best));
    return { x, y, s };
  });
  const stations = shelter.roof.stations.filter(
    (z) => Math.abs(z / spacing - Math.round(z / spacing)) < 1e-9,
  );
  const rail: Rail = {
    id: 'inner-rail',
    origin,
    role: 'grid',
    form: 'rail',
    member,
    lines: at,
    span: spacing,
    tied: true,
    posts: {
      id: 'inner-rail/posts',
      origin,
      member: postStock,
      where: 'line',
      lines: at.map(({ x }) => x),
      spacing,
      stations,
      height: at[0]!.y - 0.1,
      foot: { id: 'inner-rail/posts/foot', origin, kind: 'hole', driven: 0.6, across: 0.2, fixity: 'pinned' },
    },
  };
  return { ...shelter, inner: [rail] };
}

describe('inner lines of a grid', () => {
  const plain = sprungHouse({ member: pipe('stout', steel, 0.05, 0.003, [9]) });
  const straight: Shelter = { ...plain, roof: { ...(plain.roof as Bows), shape: 'arc' } };
  const stiff = pipe('beam', steel, 0.1, 0.006, [6]);
  const propped = withInner(straight, stiff, (straight.roof as Bows).spacing);

  it('carry: what they and the feet push up is all that pushes down', () => {
    const frame = analyseFrame(propped);
    if (!frame.ok) throw new Error(frame.reason);
    const dead = frame.analysis.responses.find(({ load }) => lasts(load.duration))!;
    const [left, right] = dead.reactions.filter(({ part }) => part === 'inner-rail');
    expect(left!.vertical).toBeGreaterThan(0);
    expect(right!.vertical).toBeCloseTo(left!.vertical, 6);
    const down = dead.load.lines.reduce(
      (sum, { element, wy }) => sum - wy * frame.analysis.states.permanent!.system.elements[element]!.length,
      0,
    );
    const up = dead.reactions.reduce((sum, { vertical }) => sum + vertical, 0);
    expect(up / down).toBeCloseTo(1, 2);
    expect(frame.analysis.inner[0]!.post.down).toBeGreaterThan(0);
  });

  it('hold the crown up: it sinks less than a third as far as without them', () => {
    const sinking = (shelter: Shelter): number => {
      const frame = analyseFrame(shelter);
      if (!frame.ok) throw new Error(frame.reason);
      const dead = frame.analysis.responses.find(({ load }) => lasts(load.duration))!;
      return Math.max(...dead.displacements.map(({ dy }) => -dy));
    };
    expect(sinking(propped)).toBeLessThan(sinking(straight) / 3);
  });

  it('bring the same to their posts in the house in space', () => {
    const plane = analyseFrame(propped);
    const house = analyseHouse(propped);
    if (!plane.ok || !house.ok) throw new Error('no answer');
    const dead = house.house.responses.find(({ load }) => lasts(load.duration))!;
    const { system } = stateIn(house.house.states, dead.condition);
    const middle = propped.roof.stations[1]!;
    const pushed = system.supports.flatMap((support, k) =>
      support.part === 'inner-rail/posts/foot' &&
      support.acts === 'y' &&
      system.nodes[support.node]!.z === middle
        ? [dead.result.reactions[k]!]
        : [],
    );
    expect(pushed).toHaveLength(2);
    const own = plane.analysis.inner[0]!;
    const inPlane = plane.analysis.responses
      .find(({ load }) => lasts(load.duration))!
      .reactions.find(({ part }) => part === 'inner-rail')!.vertical;
    const weights =
      postStock.section.shape === 'rectangle' ? 550 * 9.80665 * 0.0889 ** 2 * own.rail.posts!.height : 0;
    // Over three posts the middle one carries 1.25 bays (handbook).
    const rail = 7850 * 9.80665 * ((Math.PI / 4) * (0.1 ** 2 - 0.088 ** 2)) * (propped.roof as Bows).spacing;
    expect(pushed[0]! / (inPlane + weights + 1.25 * rail)).toBeCloseTo(1, 1);
    expect(frameView(propped, plane.analysis, house.house, 1).inner[0]!.post.down).toBeGreaterThan(0);
  });
});
