import { describe, expect, it } from 'vitest';
import { type TakeoffLine, takeoff, tell } from '../src/index.ts';
import {
  board,
  bows,
  cable,
  cover,
  fastening,
  foot,
  joint,
  origin,
  places,
  pvc,
  rafters,
  rail,
  rebar,
  sheet,
  shelter,
} from './fixture.ts';

function line(of: ReturnType<typeof shelter>, id: string): TakeoffLine {
  const found = takeoff(of).lines.find((one) => one.id === id);
  if (!found) throw new Error(`no line ${id} in ${takeoff(of).lines.map((one) => one.id)}`);
  return found;
}
const pieces = (one: TakeoffLine) =>
  one.pieces?.map(({ length, count }) => [Number(length.toFixed(6)), count]);

describe('bows', () => {
  it('whole bows: 11 of 10 m', () => {
    const one = line(shelter(), 'frame/pvc');
    expect(pieces(one)).toEqual([[10, 11]]);
    expect(one.total).toBeCloseTo(110, 9);
    expect(one.parts).toEqual([{ id: 'bows', origin }]);
  });

  it('a socket at 6 m: pieces of 6 m and 4 m meet in its middle, 11 sockets', () => {
    const use = { id: 'bows/joint-1', origin, item: joint('socket', 'socket'), at: 6, assumed: false };
    const of = shelter({ roof: bows({ joints: [use] }) });
    expect(pieces(line(of, 'frame/pvc'))).toEqual([
      [6, 11],
      [4, 11],
    ]);
    expect(line(of, 'joints/socket')).toMatchObject({ kind: 'count', total: 11 });
  });

  it('lashed at 5 m over a lap of 0.3 m: two pieces of 5.15 m, 0.3 m more than the bow in all', () => {
    const use = { id: 'bows/joint-1', origin, item: joint('lash', 'lashing', 0.3), at: 5, assumed: false };
    expect(pieces(line(shelter({ roof: bows({ joints: [use] }) }), 'frame/pvc'))).toEqual([[5.15, 22]]);
  });

  it('a cross at the crown ends the pipe, a clamp lets it pass', () => {
    const at = (form: 'cross' | 'clamp') =>
      shelter({
        roof: bows({
          crownFitting: { id: 'bows/crown', origin, item: joint('top', form), at: 5, assumed: false },
        }),
      });
    expect(pieces(line(at('cross'), 'frame/pvc'))).toEqual([[5, 22]]);
    expect(pieces(line(at('clamp'), 'frame/pvc'))).toEqual([[10, 11]]);
    expect(line(at('clamp'), 'joints/top').total).toBe(11);
  });

  it('legs driven 0.6 m: each bow is 1.2 m longer; the leg is not counted twice with its foot', () => {
    const of = shelter({ roof: bows({ legDriven: 0.6, foot: foot('driven', 0.6) }) });
    expect(pieces(line(of, 'frame/pvc'))).toEqual([[11.2, 11]]);
  });

  it('22 stubs of 1.2 m, and the bow no longer for them', () => {
    const of = shelter({ roof: bows({ foot: foot('stub', 0.6, { stub: rebar, length: 1.2 }) }) });
    expect(pieces(line(of, 'ground/rebar'))).toEqual([[1.2, 22]]);
    expect(pieces(line(of, 'frame/pvc'))).toEqual([[10, 11]]);
  });

  it('stubs of no length said: as long above as below, and the step says so', () => {
    const one = line(shelter({ roof: bows({ foot: foot('stub', 0.5, { stub: rebar }) }) }), 'ground/rebar');
    expect(pieces(one)).toEqual([[1, 22]]);
    expect(tell(one.steps[0] ?? [], 'metric')).toBe('stub as long above the ground as in it: 1 m');
  });

  it('filled up to 2 m: half of either slope, 2.5 m; bore 26 mm; 22 of them', () => {
    const of = shelter({ roof: bows({ filled: { upTo: 2, with: 'concrete' } }) });
    expect(line(of, 'frame/concrete').total).toBeCloseTo(1.1 * (Math.PI / 4) * 0.026 ** 2 * 2.5 * 22, 12);
    const reinforced = shelter({ roof: bows({ filled: { upTo: 2, with: 'rebar', member: rebar } }) });
    expect(pieces(line(reinforced, 'frame/rebar'))).toEqual([[2.5, 22]]);
    // Concrete round a bar of 12 mm: both are bought, and the concrete is less by the bar.
    const both = shelter({ roof: bows({ filled: { upTo: 2, with: 'concrete', member: rebar } }) });
    expect(pieces(line(both, 'frame/rebar'))).toEqual([[2.5, 22]]);
    const ring = (Math.PI / 4) * (0.026 ** 2 - 0.012 ** 2);
    expect(line(both, 'frame/concrete').total).toBeCloseTo(1.1 * ring * 2.5 * 22, 12);
  });

  it('wrapped: 110 m', () => {
    expect(line(shelter({ roof: bows({ wrapped: true }) }), 'sundries/wrapping-against-abrasion').total).toBe(
      110,
    );
  });
});

describe('rafters', () => {
  it('7 frames of 2 rafters; a tie 2 m above the eave is half the span, 3 m', () => {
    const of = shelter({
      roof: rafters({
        tie: { id: 'rafters/tie', member: board, height: 2, origin },
        peakJoint: { id: 'rafters/peak', origin, item: joint('peak', 'peak'), at: 5, assumed: false },
        eaveJoint: { id: 'rafters/eave', origin, item: joint('eave', 'bolt'), at: 0, assumed: false },
      }),
    });
    expect(pieces(line(of, 'frame/board'))).toEqual([
      [5.2, 14],
      [3, 7],
    ]);
    expect(line(of, 'joints/peak').total).toBe(7);
    expect(line(of, 'joints/eave').total).toBe(14);
  });

  it('a tie longer than any board is spliced: 6 m out of boards of up to 4.8 m, two of 3.25 m, 7 splices', () => {
    const of = shelter({ roof: rafters({ tie: { id: 'rafters/tie', member: board, height: 0, origin } }) });
    expect(pieces(line(of, 'frame/board'))).toContainEqual([3.25, 14]);
    expect(line(of, 'joints/in-line-joint-for-board').total).toBe(7);
  });

  it('a tie above the ridge is a gap, not a guess', () => {
    const of = shelter({ roof: rafters({ tie: { id: 'rafters/tie', member: board, height: 9, origin } }) });
    expect(takeoff(of).gaps).toEqual([{ what: 'the ties: they do not meet both rafters', origin }]);
  });
});

describe('rails, posts and braces', () => {
  it('a swaged rail over 12 m out of 6.4 m: 6.4 m (6.3 m of it seen) and 5.7 m', () => {
    expect(pieces(line(shelter({ ridge: rail() }), 'frame/top-rail'))).toEqual([
      [6.4, 1],
      [5.7, 1],
    ]);
  });

  it('boards join over posts 2 m apart: 4 m, 4 m, 4 m out of 4.8 m, and two joints nobody named', () => {
    const of = shelter({ ridge: rail({ member: board, span: 2 }) });
    expect(pieces(line(of, 'frame/board'))).toEqual([[4, 3]]);
    expect(line(of, 'joints/in-line-joint-for-board').total).toBe(2);
  });

  it('two purlins tied to 11 bows take 22 clamps', () => {
    const purlin = rail({
      id: 'purlins',
      role: 'purlin',
      lines: [
        { x: 1, y: 1 },
        { x: 5, y: 1 },
      ],
      joint: joint('tie', 'clamp'),
    });
    expect(line(shelter({ purlins: [purlin] }), 'joints/tie').total).toBe(22);
  });

  it('2 lines of 7 posts, 2 m high and 0.6 m in 0.3 m holes of concrete', () => {
    const posts = {
      id: 'posts',
      origin,
      member: board,
      where: 'sides' as const,
      lines: [0, 6],
      spacing: 2,
      stations: places(12, 6),
      height: 2,
      foot: foot('concrete', 0.6, { across: 0.3 }),
      topJoint: joint('cap', 'plate'),
    };
    const of = shelter({ sidePosts: posts, eaveRail: rail({ id: 'eave', role: 'eave', posts }) });
    expect(pieces(line(of, 'frame/board'))).toEqual([[2.6, 14]]);
    expect(line(of, 'joints/cap').total).toBe(14);
    expect(line(of, 'ground/concrete').total).toBeCloseTo(
      1.1 * 14 * (Math.PI * 0.15 ** 2 - 0.09 * 0.045) * 0.6,
      12,
    );
  });

  it('14 posts filled up to 1.2 m of their 2 m, and the 0.6 m in the ground', () => {
    const posts = {
      id: 'posts',
      origin,
      member: pvc,
      where: 'sides' as const,
      lines: [0, 6],
      spacing: 2,
      stations: places(12, 6),
      height: 2,
      foot: foot('concrete', 0.6, { across: 0.3 }),
      filled: { upTo: 1.2, with: 'concrete' as const, member: rebar },
    };
    const of = shelter({ sidePosts: posts });
    expect(pieces(line(of, 'frame/rebar'))).toEqual([[1.8, 14]]);
    const ring = (Math.PI / 4) * (0.026 ** 2 - 0.012 ** 2);
    expect(line(of, 'frame/concrete').total).toBeCloseTo(1.1 * ring * 1.8 * 14, 12);
  });

  it('ends: 2 uprights and a rail each, a door in both, 0.9 m by 2 m, its leaf of what the ends are of', () => {
    const endFrames = {
      id: 'end-frames',
      origin,
      member: board,
      uprights: [
        { x: 2, height: 2.5 },
        { x: 4, height: 2.5 },
      ],
      foot: foot('hole', 0.5),
      rail: { member: board, height: 2.2, from: 0.5, to: 5.5, origin },
    };
    const door = { id: 'door', origin, width: 0.9, height: 2, left: 2, end: 'both' as const };
    const of = shelter({ endFrames, doors: [door] });
    // Uprights 2.5 + 0.5; rails 5; heads 0.9; stiles 2; ledges 0.9; braces over half the height: sqrt(0.9² + 1²).
    expect(pieces(line(of, 'frame/board'))).toEqual([
      [3, 4],
      [5, 2],
      [0.9, 2],
      [2, 4],
      [0.9, 6],
      [1.345362, 2],
    ]);
    expect(line(of, 'sundries/hinges').total).toBe(4);
    // A rail level with the door's top is its head.
    const level = shelter({
      endFrames: { ...endFrames, rail: { ...endFrames.rail, height: 2 } },
      doors: [door],
    });
    expect(line(level, 'frame/board').pieces?.some(({ note }) => note === 'door head')).toBe(false);
    expect(
      takeoff(shelter({ doors: [door] }))
        .gaps.map(({ what }) => what)
        .join(),
    ).toContain('door is framed of');
  });

  it('a ridge cable 3 m up over 12 m: 12 + 2·3·√2 + 2·0.5, six clips, two anchors', () => {
    const anchor = {
      id: 'screw',
      title: 'screw',
      source: 'made up',
      origin,
      prices: [],
      kind: 'anchor' as const,
      form: 'screw' as const,
    };
    const of = shelter({
      ridge: rail({
        member: cable,
        form: 'cable',
        lines: [{ x: 3, y: 3 }],
        endAnchor: foot('screw', 0.8, { anchor }),
      }),
    });
    expect(pieces(line(of, 'bracing/cable'))).toEqual([[Number((13 + 6 * Math.SQRT2).toFixed(6)), 1]]);
    expect(line(of, 'bracing/wire-rope-clips').total).toBe(6);
    expect(line(of, 'ground/screw').total).toBe(2);
  });

  it('four wire braces over 3-4-12: 13 m and two loops each', () => {
    const brace = {
      id: 'brace',
      origin,
      role: 'brace' as const,
      member: cable,
      from: { x: 0, y: 0, z: 0 },
      to: { x: 3, y: 4, z: 12 },
      count: 4,
      plane: 'along' as const,
    };
    expect(pieces(line(shelter({ braces: [brace] }), 'bracing/cable'))).toEqual([[14, 4]]);
    expect(line(shelter({ braces: [brace] }), 'bracing/wire-rope-clips').total).toBe(24);
  });

  it('names what the feet leave open', () => {
    const gaps = (kind: Parameters<typeof foot>[0]) =>
      takeoff(shelter({ roof: bows({ foot: foot(kind, 0.5) }) })).gaps.map((gap) => gap.what);
    expect(gaps('concrete')).toEqual(['the concrete: neither the width of the hole nor the mass is said']);
    expect(gaps('ballast')).toEqual(['the mass of the ballast']);
    expect(gaps('stub')).toEqual(['the stubs: nothing says what they are made of']);
    expect(gaps('screw')).toHaveLength(1);
    expect(gaps('driven')).toEqual([]);
  });
});

describe('coverings', () => {
  it('one width of 7 m over 6.5 m: 13 m off the roll, 91 m2', () => {
    const one = line(shelter({ covers: [cover()] }), 'covering/film');
    expect(pieces(one)).toEqual([[13, 1]]);
    expect(one).toMatchObject({ kind: 'area', total: 91, width: 7 });
  });

  it('two layers of 10 m out of 7 m rolls: two widths with a lap each', () => {
    const one = line(shelter({ covers: [cover({ developedWidth: 10, layers: 2 })] }), 'covering/film');
    expect(pieces(one)).toEqual([[13, 4]]);
    expect(one.total).toBe(4 * 13 * 7);
  });

  it('sides count twice, and take the named roll', () => {
    const side = cover({ id: 'cover-sides', place: 'sides', developedWidth: 1.2, rollWidth: 4 });
    expect(pieces(line(shelter({ covers: [side] }), 'covering/film'))).toEqual([[13, 2]]);
  });

  it('sheet on a gable: 17 across 13 m at 0.8 m, on two slopes of 3.25 m', () => {
    const of = shelter({ roof: rafters(), covers: [cover({ skin: sheet })] });
    expect(pieces(line(of, 'covering/sheet'))).toEqual([[3.25, 34]]);
  });

  it('channel along all four edges in 2 m lengths; screws every 0.5 m', () => {
    const channel = fastening('channel', 'channel', [2]);
    const of = shelter({ covers: [cover({ fastening: channel, fasteningSpacing: 0.5 })] });
    // 13 m is 6 x 2 m and 1 m, twice; 6.5 m is 3 x 2 m and 0.5 m, twice.
    expect(pieces(line(of, 'fastening/channel'))).toEqual([
      [2, 18],
      [1, 2],
      [0.5, 2],
    ]);
    expect(line(of, 'fastening/screws-for-channel').total).toBe(2 * 27 + 2 * 14);
  });

  it('clips without a spacing are a gap', () => {
    const of = shelter({ covers: [cover({ fastening: fastening('clip', 'clip', []) })] });
    expect(takeoff(of).gaps.map((gap) => gap.what)).toEqual(['how many of clip: no spacing is said']);
  });

  it('a strap in each of 11 bays of 1.2 m over 13 m, 0.5 m longer at each end', () => {
    const of = shelter({
      covers: [cover({ straps: { item: fastening('strap', 'strap', []), spacing: 1.2 } })],
    });
    expect(pieces(line(of, 'fastening/strap'))).toEqual([[7.5, 11]]);
  });
});

it('does not count what is not there, and repeats itself exactly', () => {
  const of = shelter({ covers: [cover()], ridge: rail() });
  expect(JSON.stringify(takeoff(of))).toBe(JSON.stringify(takeoff(of)));
  for (const one of takeoff(of).lines) expect(one.total).toBeGreaterThan(0);
});

describe('gutters and water', () => {
  const gutter = { id: 'gutter', origin, where: 'sides' as const, across: 0.1 };
  const total = (title: string, made: ReturnType<typeof takeoff>) =>
    made.lines.find((line) => line.title === title)?.total;

  it('two eaves of 12 m: 24 m, 2 x 21 brackets every 0.6 m, 4 stop ends', () => {
    const made = takeoff(shelter({ gutters: [gutter] }));
    expect(total('Gutter', made)).toBe(24);
    expect(total('Gutter brackets', made)).toBe(42);
    expect(total('Gutter stop ends', made)).toBe(4);
  });

  it('one run between two houses', () => {
    const made = takeoff(shelter({ gutters: [{ ...gutter, where: 'between' }] }));
    expect(total('Gutter', made)).toBe(12);
    expect(total('Gutter stop ends', made)).toBe(2);
  });

  it('says that irrigation is not counted, and only what has to be bought of what is not in the model', () => {
    const { gaps } = takeoff(
      shelter({
        irrigation: 'drip',
        unmodelled: [
          { what: 'a door', origin, toBuy: true },
          { what: 'the season it stands in', origin },
        ],
      }),
    );
    expect(gaps.map((gap) => gap.what)).toEqual([
      'what the irrigation takes: only its kind is said',
      'a door: in the spec, but not in the model',
    ]);
  });
});

describe('a laminated bow', () => {
  it('takes its layers of boards: 11 bows x 4 layers of 10 m out of boards of 4.8 m: 88 whole and 44 of 0.4 m', () => {
    const lath = {
      ...board,
      section: { shape: 'rectangle' as const, depth: 0.08, breadth: 0.06, laminations: 4 },
    };
    const { lines, gaps } = takeoff(shelter({ roof: bows({ member: lath, shape: 'laminated' }) }));
    const line = lines.find((one) => one.item?.id === 'board');
    expect(line?.pieces?.map(({ length, count }) => [count, length])).toEqual([
      [88, 4.8],
      [44, expect.closeTo(0.4, 9)],
    ]);
    expect(gaps).toEqual([]);
    // 3 joints in each of 11 bows, 10 m by 60 mm; a screw every 0.3 m and one at the end: 34.
    expect(lines.find((one) => one.id === 'frame/glue-of-the-laminated-bows')?.total).toBeCloseTo(19.8, 9);
    expect(lines.find((one) => one.id === 'frame/screws-of-the-laminated-bows')?.total).toBe(33 * 34);
  });
});
