import { type Brace, originOf } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { bendRuns, pegsOf, scene3d, views } from '../src/index.ts';
import { exactLength } from '../src/views/exact.ts';
import { braceRuns } from '../src/views/members.ts';
import { letter } from '../src/views/pipe-bar.ts';
import { cableArch, coldBent, emtGable, shelters, stubArch, timberGable } from './fixtures/shelters.ts';

describe('setting out', () => {
  it('has a peg for every foot, with both lines square to the start', () => {
    const pegs = pegsOf(cableArch);
    expect(pegs.filter(({ name }) => name.startsWith('L'))).toHaveLength(21);
    expect(pegs.filter(({ name }) => name.startsWith('R'))).toHaveLength(21);
    expect(pegs.filter(({ name }) => name.startsWith('C'))).toHaveLength(5);
    expect(pegs.find(({ name }) => name === 'R21')).toMatchObject({ along: 24, across: 6 });
    expect(pegs.filter(({ name }) => name.startsWith('G')).map(({ along }) => along)).toEqual([-2, 26]);
    expect(new Set(pegs.map(({ name }) => name)).size).toBe(pegs.length);
  });
  it('puts pegs at the posts where the frame stands on posts', () => {
    expect(
      pegsOf(timberGable)
        .filter(({ name }) => name.startsWith('L'))
        .map(({ along }) => along),
    ).toEqual([0, 1.5, 3, 4.5, 6]);
  });
  it('has a peg for every upright of both ends', () => {
    const shelter = shelters.find((one) => one.endFrames)!;
    const { endFrames, length } = shelter;
    const left = shelter.sidePosts?.lines[0] ?? shelter.roof.line[0]!.x;
    const pegs = pegsOf(shelter).filter(({ name }) => name.startsWith('U'));
    const places = [0, length].flatMap((along) =>
      endFrames!.uprights.map(({ x }) => ({ part: endFrames!.foot.id, along, across: x - left })),
    );
    expect(pegs.map(({ part, along, across }) => ({ part, along, across }))).toEqual(places);
  });
  it('writes both diagonals as the root of the squares', () => {
    const words = views['setting-out'](emtGable, { system: 'metric' }).shapes.flatMap((shape) =>
      shape.kind === 'text' ? [shape.text] : [],
    );
    expect(
      words.filter((word) => word === `diagonal ${exactLength(Math.hypot(7.2, 3.6), 'metric')}`),
    ).toHaveLength(2);
  });
  it('writes tape lengths to the millimetre and the sixteenth', () => {
    expect(exactLength(12.3756, 'metric')).toBe('12.376 m');
    expect(exactLength(1.2, 'metric')).toBe('1.2 m');
    expect(exactLength(0.4567, 'metric')).toBe('0.457 m');
    expect(exactLength(0.0456, 'metric')).toBe('46 mm');
    expect(exactLength(0, 'us')).toBe('0');
    expect(exactLength(12.3, 'us')).toBe('40 ft 4-1/4 in');
  });
});

describe('bend runs', () => {
  const roof = coldBent.roof;
  if (roof.type !== 'bows') throw new Error('the fixture has bows');
  const runs = bendRuns(roof);
  it('find the straights and arcs the pipe was made of', () => {
    expect(runs.map(({ turn }) => Math.round((turn * 180) / Math.PI))).toEqual([0, 55, 0, 70, 0, 55, 0]);
    expect(runs.flatMap(({ radius }) => (radius === undefined ? [] : [Math.round(radius * 1000)]))).toEqual([
      600, 2400, 600,
    ]);
  });
  it('turn through 180 degrees in all and use the whole pipe with both driven ends', () => {
    expect(runs.reduce((sum, { turn }) => sum + turn, 0)).toBeCloseTo(Math.PI, 6);
    expect(runs[runs.length - 1]!.to).toBeCloseTo(roof.length + 2 * roof.legDriven, 6);
    expect(runs[0]).toMatchObject({ from: 0, turn: 0 });
    expect(runs[0]!.to).toBeCloseTo(1.8, 5);
  });
  it('letters go on after Z', () => {
    expect([0, 25, 26, 27, 52].map(letter)).toEqual(['A', 'Z', 'AA', 'AB', 'BA']);
  });
});

describe('scene in space', () => {
  for (const shelter of shelters)
    it(`of ${shelter.name} holds members and skins as finite numbers with the model's extents`, () => {
      const scene = scene3d(shelter);
      expect(scene.segments.length).toBeGreaterThan(20);
      for (const { positions, triangles } of scene.surfaces) {
        expect(positions.length % 3).toBe(0);
        expect(triangles.length % 3).toBe(0);
        expect(Math.max(...triangles)).toBeLessThan(positions.length / 3);
      }
      const overground = scene.segments.filter(
        ({ underground, part }) => !underground && part === shelter.roof.id,
      );
      expect(Math.max(...overground.map(({ to }) => to[2]))).toBeCloseTo(shelter.length, 6);
      expect(Math.max(...overground.map(({ to }) => to[1]))).toBeCloseTo(
        Math.max(...shelter.roof.line.map(({ y }) => y)),
        6,
      );
      expect(new Set(scene.surfaces.map(({ part }) => part))).toEqual(
        new Set([...shelter.covers, ...(shelter.doors ?? [])].map(({ id }) => id)),
      );
    });
  it('puts a stub at its lean with the driven part below ground', () => {
    const under = scene3d(stubArch).segments.find(
      ({ part, underground }) => part === 'bows/foot' && underground,
    )!;
    expect(under.from[1]).toBeCloseTo(-0.6, 6);
    expect(Math.atan2(under.to[1] - under.from[1], under.to[0] - under.from[0])).toBeCloseTo(
      2 * Math.atan(3.5 / 4.2),
      6,
    );
  });
  it('splits roof and side skins where bows come to the ground', () => {
    const scene = scene3d(stubArch);
    const heights = (part: string) =>
      scene.surfaces
        .filter((surface) => surface.part === part)
        .flatMap(({ positions }) => positions.filter((_, i) => i % 3 === 1));
    expect(Math.min(...heights('cover-roof'))).toBeCloseTo(1, 6);
    expect(Math.max(...heights('cover-sides'))).toBeCloseTo(1, 6);
  });
});

describe('braces and guys', () => {
  const { sidePosts, width, length } = timberGable;
  if (!sidePosts) throw new Error('the fixture has side posts');
  const guy: Brace = {
    id: 'guys',
    origin: originOf('fixture'),
    role: 'guy',
    member: sidePosts.member,
    from: { x: 0, y: 2, z: 0 },
    to: { x: -1.5, y: 0, z: 0 },
    count: 2 * sidePosts.stations.length,
    plane: 'across',
    foot: sidePosts.foot,
  };

  it('at every side post have a peg each, on both sides', () => {
    const pegs = pegsOf({ ...timberGable, braces: [guy] }).filter(({ name }) => name.startsWith('G'));
    expect(pegs).toHaveLength(guy.count);
    for (const across of [-1.5, width + 1.5]) {
      const row = pegs.filter((peg) => Math.abs(peg.across - across) < 1e-9);
      expect(row.map(({ along }) => along)).toEqual(sidePosts.stations);
    }
  });

  it('in every bay run from post to post on both sides, and lean by turns', () => {
    const bays = sidePosts.stations.length - 1;
    const brace = { ...guy, role: 'brace', plane: 'along', count: 2 * bays } as const;
    const runs = braceRuns(timberGable, { ...brace, to: { x: 0, y: 2, z: sidePosts.stations[1]! } });
    expect(runs).toHaveLength(2 * bays);
    for (const [bay, front] of sidePosts.stations.slice(0, -1).entries()) {
      const back = sidePosts.stations[bay + 1]!;
      const [foot, head] = bay % 2 === 0 ? [front, back] : [back, front];
      expect(runs.filter(([a, b]) => a[2] === foot && b[2] === head)).toHaveLength(2);
    }
  });

  it('that tie the sides stand in a row from end to end', () => {
    const tie = {
      ...guy,
      role: 'tie',
      from: { x: 0, y: 2, z: 0 },
      to: { x: width, y: 2, z: 0 },
      count: 4,
    } as const;
    const runs = braceRuns(timberGable, tie);
    expect(runs.map(([from]) => from[2])).toEqual([0, length / 3, (2 * length) / 3, length]);
  });
});
